// What the work touches in the fixture: chamber bore, plug, backing pin, rollers. Private to the heat floor.
//
// Model: the tube lies concentric in the chamber's bore and on the plug, with a film of purge gas in the gap:
// the least conductance there is, so that temperatures come out high. O-ring and cap contact of the grooves
// are left out. The chamber counts as its block less cavity and tube bore, the plug as its solid cylinders,
// the pin as a bar held at the end plate.
#pragma once

#include "purgewright/heat/chain.hpp"

namespace purgewright::heat {

void add_contacts(const job::Job &, const fixture::Layout &, const ContactWishes &, Chain &);

} // namespace purgewright::heat
