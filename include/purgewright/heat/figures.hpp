// The plan of heat as figures, with formulas and the ids they are made of.
//
// Ids: heat.shielding_temperature, heat.power, purge.postflow.time (longest hold and torch
// move), heat.arc_time, heat.mean_power, heat.cycle, heat.o_ring.peak and .limit, heat.cap_centre.peak and
// .limit, heat.pin.peak, heat.pin_contact.peak, heat.pool_width,
// heat.pool_wanted, heat.pedal.low and .high, heat.hot_zone, heat.cavity, heat.covered; for every tack
// heat.tack.N.angle, .time, .hold, .peak, .pool, .peak_cap, .peak_tube; for every run heat.run.N.start_angle,
// .end_angle, .dwell, .taper, .run_out, .time, .hold, .uncovered_hold, .peak, .start_peak and .start_pool of
// runs, .end_peak, .o_ring_peak, .cap_centre_peak, .bottom_peak, .pool_width, .pool_length, .bottom_length of
// spots, .least_current, .end_current, .pin_contact_peak, .start_temperature, .joint_before, .hot_zone, and
// .roller_peak with rollers, .interpass_wait with an interpass temperature. With advice: heat.runs.fewest,
// heat.longest_run; heat.order.consecutive.rim_shift, .cycle, and the same of alternating. N counts from 1 in
// welding order. Of parts one after another: heat.series.power, .time_constant, .settled,
// .settled_on_plastic, and with its warm plan heat.series.tack.N.hold, heat.series.run.N.hold, .postflow,
// .hand_warm, and .peak of o_ring, wiper, rollers, cap_centre and pin_contact. Angles are on the index
// collar; an end angle may lie beyond a full turn.
#pragma once

#include "purgewright/heat/series.hpp"
#include "purgewright/heat/shrinkage.hpp"
#include "purgewright/units/figure.hpp"

namespace purgewright::heat {

units::Figures figures(const HeatPlan &);
units::Figures figures(const RunAdvice &);
units::Figures figures(const Series &, fixture::ChamberKind);
units::Figures figures(const OrderAdvice &);

} // namespace purgewright::heat
