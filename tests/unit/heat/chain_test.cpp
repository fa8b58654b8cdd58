#include "heat_jobs.hpp"

#include "purgewright/fixture/volumes.hpp"
#include "purgewright/heat/chain.hpp"

using namespace purgewright;
using namespace purgewright::heat;
using heat::test::example;

namespace {

constexpr Mesh mesh{.tube = 30, .cap = 40, .angles = 16, .grading = 3.0};

double sum(const Chain &chain, std::size_t first, std::size_t last, double Ring::*what) {
  double total = 0.0;
  for (std::size_t i = first; i < last; ++i) {
    total += chain.rings[i].*what;
  }
  return total;
}

double contact(const Chain &chain, Body body) {
  double total = 0.0;
  for (const Contact &c : chain.contacts) {
    total += c.body == body ? c.area : 0.0;
  }
  return total;
}

} // namespace

TEST_CASE("The chain holds the metal of tube and cap", "[unit][heat]") {
  for (const std::string name : {"logger-25", "logger-38", "logger-51"}) {
    const auto [job, layout] = example(name);
    const Chain chain = chain_of(job, layout, mesh, {});
    const double mid = 0.5 * (job.tube.outside_diameter - job.tube.wall).value();
    const double tube = 2.0 * units::pi * mid * job.tube.wall.value() * job.tube.length.value();
    CAPTURE(name);
    REQUIRE(chain.rings.size() == 71);
    CHECK(sum(chain, 0, chain.joint, &Ring::volume) == Approx(tube).epsilon(1e-12));
    // Dome cut square to its shell at the rim, spigot without its clearance.
    const double cap = fixture::cap_metal(job.cap).value();
    const double tolerance = job.cap.shape == job::CapShape::flat ? 1e-12 : 0.01;
    CHECK(sum(chain, chain.joint, chain.rings.size(), &Ring::volume) == Approx(cap).epsilon(tolerance));
  }
}

TEST_CASE("Rings join without gap and end in a closed centre", "[unit][heat]") {
  for (const std::string name : {"logger-25", "logger-38", "logger-51"}) {
    const auto [job, layout] = example(name);
    const Chain chain = chain_of(job, layout, mesh, {});
    CHECK(chain.rings.front().position - 0.5 * chain.rings.front().length ==
          Approx(-job.tube.length.value()).epsilon(1e-12));
    for (std::size_t i = 0; i + 1 < chain.rings.size(); ++i) {
      const Ring &ring = chain.rings[i], &next = chain.rings[i + 1];
      CHECK(ring.position + 0.5 * ring.length == Approx(next.position - 0.5 * next.length).margin(1e-12));
      CHECK(ring.to_face + ring.from_face == Approx(next.position - ring.position).epsilon(1e-9));
      CHECK(ring.face > 0.0);
      CHECK(ring.volume > 0.0);
    }
    CHECK(chain.rings.back().face == 0.0);
    CHECK(chain.rings.back().radius < 0.6 * chain.rings.back().length);
  }
}

TEST_CASE("What a body touches is no longer open to the gas", "[unit][heat]") {
  const auto [job, layout] = example("logger-25");
  const Chain chain = chain_of(job, layout, mesh, {});
  const double round = units::pi * job.tube.outside_diameter.value();
  const double guide = round * (layout.body.cavity_start - layout.body.x_min).value();
  CHECK(contact(chain, Body::chamber) == Approx(guide).epsilon(1e-9));
  CHECK(sum(chain, 0, chain.joint, &Ring::outside) ==
        Approx(round * job.tube.length.value() - guide).epsilon(1e-9));
  const double bore = units::pi * job.tube.inside_diameter.value();
  const double spigot = bore * layout.plug.spigot_length.value();
  CHECK(contact(chain, Body::plug) == Approx(spigot).epsilon(1e-9));
  CHECK(sum(chain, 0, chain.joint, &Ring::inside) ==
        Approx(bore * job.tube.length.value() - spigot).epsilon(1e-9));
  const double outer = layout.pin.contact_outer_radius.value(),
               inner = layout.pin.contact_inner_radius.value();
  const double ring = units::pi * (outer * outer - inner * inner);
  CHECK(contact(chain, Body::pin) < ring);
  CHECK(contact(chain, Body::pin) > 0.5 * ring);
  CHECK(contact(chain, Body::roller) == 0.0);
}

TEST_CASE("Rollers touch the ring they stand under", "[unit][heat]") {
  const auto [job, layout] = example("logger-25");
  ContactWishes wishes;
  wishes.rollers = Rollers{.from_joint = units::millimetres(60.0), .conductance = 0.05};
  const Chain chain = chain_of(job, layout, mesh, wishes);
  const Contact &last = chain.contacts.back();
  CHECK(last.body == Body::roller);
  CHECK(last.area * last.coefficient == Approx(0.05));
  const Ring &ring = chain.rings[last.ring];
  CHECK(std::abs(ring.position + 0.06) <= 0.5 * ring.length);
}

TEST_CASE("Meshes that cannot work are refused", "[unit][heat]") {
  const auto [job, layout] = example("logger-25");
  for (const Mesh bad : {Mesh{2, 8, 16, 1.0}, Mesh{8, 2, 16, 1.0}, Mesh{8, 8, 6, 1.0}, Mesh{8, 8, 17, 1.0},
                         Mesh{8, 8, 16, -1.0}}) {
    CHECK_THROWS_AS(chain_of(job, layout, bad, {}), std::domain_error);
  }
}

TEST_CASE("Mesh sizes follow from the wanted cells", "[unit][heat]") {
  const auto [job, layout] = example("logger-25");
  const Mesh wanted =
      mesh_for(job, units::millimetres(1.0), 1.2, units::millimetres(1.0), units::millimetres(2.0), 16, 64);
  const Chain chain = chain_of(job, layout, wanted, {});
  CHECK(chain.rings[chain.joint - 1].length == Approx(1e-3).epsilon(0.2));
  CHECK(chain.rings[chain.joint - 2].length / chain.rings[chain.joint - 1].length ==
        Approx(1.2).epsilon(0.01));
  CHECK(wanted.cap == 12);
  CHECK(wanted.angles == 40);
}
