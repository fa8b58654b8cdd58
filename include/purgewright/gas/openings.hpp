// What an opening lets in against the gas that leaves through it: diffusion, buoyancy, and the room's
// draught.
//
// Units: quantity types; reduced gravity is m/s2. A "conductance" is a volume flow G such that G (c_room -
// c_inside) of oxygen comes in; it enters a network as the exchange of an edge. Oxygen levels are volume
// fractions. Errors: std::domain_error with the function's name and the value; sizes and diffusivities above
// 0, flows and speeds not negative, unless said. Guarantee: pure functions, finite for any Peclet number.
#pragma once

#include "purgewright/units/quantity.hpp"

namespace purgewright::gas {

// Share of the outer difference that diffuses upstream past a channel of Peclet number u L / D >= 0:
// exp(-Pe). Source: steady one-dimensional convection and diffusion without net flux of the trace gas, Bird,
// Stewart, Lightfoot, 2nd ed., ch. 18 (Stefan flow in the dilute limit).
double counterflow_ratio(double peclet);
double channel_peclet(units::Velocity speed, units::Length length, units::Diffusivity diffusivity);

// Oxygen at the inner end of such a channel: supply + (outside - supply) exp(-Pe). Fractions 0 to 1.
double counterflow_fraction(double peclet, double outside, double supply = 0.0);

// Peclet number that holds the inner end at `limit`: ln((outside - supply)/(limit - supply)).
double counterflow_peclet(double limit, double outside, double supply = 0.0);

// Diffusive shape length S of a thin hole between two large spaces, conductance D S: 2 a for a circle of
// radius a; for a slot, the ellipse of its area and aspect, pi a / K(k), k^2 = 1 - (b/a)^2. Length >= width >
// 0. Sources: circle, Rayleigh (1878) conductivity of an aperture, and the limit Sh -> 2 of
// advection-modulated diffusion through an orifice (Sanchez Sanz & Sanchez, 2026); ellipse, Landau &
// Lifshitz, Electrodynamics of Continuous Media, section 4 (capacity of an elliptic disc); a slot by its
// ellipse: common practice, no source.
units::Length circle_shape_length(units::Length diameter);
units::Length slot_shape_length(units::Length length, units::Length width);

// Conductance of an opening without flow: its depth and its two ends in series, D / (depth/area + 1/S). Depth
// >= 0.
units::VolumeFlow diffusive_conductance(units::Diffusivity diffusivity, units::Area area, units::Length depth,
                                        units::Length shape_length);

// Conductance left when a flow leaves through the opening, Q / (exp(Q/G) - 1): G without flow, G - Q/2 for a
// little, gone exponentially for much. A well-mixed space behind it then settles at exp(-Q/G), the channel's
// own result. Conductance >= 0. Source: derived here from counterflow_ratio; its first two terms are those
// published for the orifice at small flow (Sh = 2 - Pe/2 against the flow, Sanchez Sanz & Sanchez, 2026); an
// estimate for a thin hole at large Q/G.
units::VolumeFlow opposed_conductance(units::VolumeFlow conductance, units::VolumeFlow outflow);

// Outflow that holds a space at `limit` against one opening: G ln((outside - supply)/(limit - supply)).
units::VolumeFlow outflow_for_limit(units::VolumeFlow conductance, double limit, double outside,
                                    double supply = 0.0);

// Flow each way through an opening in a vertical wall between a dense and a light gas, (Cd/3) W H^1.5
// sqrt(g'), g' by the mean density. Cd in (0, 1]. Source: Brown & Solvason, Int. J. Heat Mass Transfer 5, 859
// (1962).
struct VerticalOpening {
  units::Length width{};
  units::Length height{};
  double reduced_gravity = 0.0; // m/s2, magnitude, >= 0
  double discharge = 0.6;
};
units::VolumeFlow vertical_exchange(const VerticalOpening &opening);

// Share of a two-way exchange that is left when a net flow of `net` times the exchange leaves: the neutral
// level moves until inflow and outflow differ by it; 1 without net flow, 0 from 2 sqrt(2) on. Net >= 0.
// Source: the integral of sqrt(2 g' z) over a vertical opening, net flow added as in Shaw & Whyte, Building
// Services Engineer 42, 69 (1974); for a horizontal opening by analogy: common practice, no source.
double exchange_left(double net);

// What still comes in when a net flow leaves: exchange times exchange_left.
units::VolumeFlow vertical_inflow(const VerticalOpening &opening, units::VolumeFlow net_outflow);

// Flow each way through an opening in a horizontal wall with the dense gas above, D^2.5 sqrt(g') f(L/D), L/D
// in 0 to 10 (0.055 at 0); with the dense gas below it is stable and only diffuses. Source: Epstein, J. Heat
// Transfer 110, 885 (1988), eq. 13.
units::VolumeFlow horizontal_exchange(units::Length diameter, units::Length depth, double reduced_gravity);

// Bulk Richardson number g' H / U^2 of a space of height H, open at the top, under a draught U > 0.
double bulk_richardson(double reduced_gravity, units::Length height, units::Velocity draught);

// Draught over an open slot that the dense gas in the space still lies under: below `lying` the eddy is
// stopped, above `flushed` the space is swept; between, partly. Source: Uehara et al., Atmospheric
// Environment 34, 1553 (2000): the cavity eddy stops between Rb 0.4 and 0.8 (temperature form turned into
// density here). g' above 0.
inline constexpr double lying_richardson = 0.8, flushed_richardson = 0.4;
struct DraughtBand {
  units::Velocity lying{};
  units::Velocity flushed{};
};
DraughtBand critical_draught(double reduced_gravity, units::Length height);

// Share of flushing, 0 at Rb >= 0.8, 1 at Rb <= 0.4, smooth in log Rb between. g' <= 0 (light gas under the
// slot) is flushed by any draught.
double flushed_share(double reduced_gravity, units::Length height, units::Velocity draught);

// Conductance of the slot under the draught: beta U A times the share, beta the exchange velocity of an
// unstratified open-topped cavity over the wind, published 0.01 to 0.03. `beta` in 0 to 1. Source: dead-zone
// models of street canyons, Perret et al., Sustainable Cities and Society 30, 49 (2017).
inline constexpr double cavity_exchange_low = 0.01, cavity_exchange = 0.02, cavity_exchange_high = 0.03;
struct OpenSlot {
  units::Area area{};
  units::Length space_height{};
  double reduced_gravity = 0.0; // m/s2, signed, gas in the space against the room by the room's density
};
units::VolumeFlow draught_conductance(const OpenSlot &slot, units::Velocity draught,
                                      double beta = cavity_exchange);

} // namespace purgewright::gas
