// Fluxes and the factored solution against assembled matrices and Eigen's direct solver.
#if __has_include(<Eigen/SparseCholesky>)

#include "heat/arc_heat.hpp"
#include "heat/conduction.hpp"
#include "heat/enthalpy_table.hpp"

#include <Eigen/SparseCholesky>
#include <catch2/catch.hpp>

#include <cmath>
#include <vector>

using namespace purgewright;
using namespace purgewright::heat;
using namespace purgewright::heat::detail;
using Eigen::Index;

namespace {

constexpr double scale = 2.5;

Chain wall() {
  return plain_wall(*thermal_metal("titanium-grade-2"), units::millimetres(12.0), units::millimetres(1.0),
                    units::millimetres(50.0), 7, 10, 1.5);
}

// A field without symmetry.
Field uneven(const Geometry &g, double least, double most) {
  Field field(g.angles, g.rings);
  for (Index j = 0; j < g.rings; ++j) {
    for (Index i = 0; i < g.angles; ++i) {
      field(i, j) = least + (most - least) * (0.5 + 0.5 * std::sin(1.7 * double(i * i) + 2.3 * double(j)));
    }
  }
  return field;
}

struct System {
  explicit System(const Chain &chain)
      : conduction(chain), capacity(uneven(conduction.geometry(), 0.05, 0.1)),
        leak(uneven(conduction.geometry(), 0.0, 0.01)) {
    conduction.set_conductivity(uneven(conduction.geometry(), 15.0, 60.0));
    conduction.set_system(capacity, leak, scale);
  }
  Conduction conduction;
  Field capacity, leak;
};

using Matrix = Eigen::SparseMatrix<double>;
enum class Way { both, along, round };

// Column by column from the operator that the fluxes use: the conductances one way or both.
Matrix assembled(const System &system, Way way) {
  const auto &g = system.conduction.geometry();
  const Index n = g.angles * g.rings;
  std::vector<Eigen::Triplet<double>> entries;
  for (Index c = 0; c < n; ++c) {
    Field unit = Field::Zero(g.angles, g.rings), out;
    unit(c % g.angles, c / g.angles) = 1.0;
    system.conduction.outflow(unit, out);
    double own = 0.0;
    for (Index r = 0; r < n; ++r) {
      const bool wanted = way == Way::both || (way == Way::along) == (r % g.angles == c % g.angles);
      if (r != c && wanted && out.data()[r] != 0.0) {
        entries.emplace_back(int(r), int(c), out.data()[r]);
        own -= out.data()[r];
      }
    }
    entries.emplace_back(int(c), int(c), own);
  }
  Matrix matrix(n, n);
  matrix.setFromTriplets(entries.begin(), entries.end());
  return matrix;
}

Eigen::VectorXd flat(const Field &field) {
  return Eigen::Map<const Eigen::VectorXd>(field.data(), field.size());
}

Matrix diagonal(const Field &field) {
  return Matrix(flat(field).asDiagonal());
}

} // namespace

TEST_CASE("Conduction is symmetric, keeps heat and leaves an even field alone", "[unit][heat]") {
  const System system(wall());
  const Matrix matrix = assembled(system, Way::both);
  const Matrix difference = matrix - Matrix(matrix.transpose());
  CHECK(difference.norm() < 1e-12 * matrix.norm());
  const auto &g = system.conduction.geometry();
  Field out;
  system.conduction.outflow(uneven(g, 300.0, 900.0), out);
  CHECK(out.sum() == Approx(0.0).margin(1e-9 * out.abs().sum()));
  CHECK(out.abs().maxCoeff() > 1.0);
  system.conduction.outflow(Field::Constant(g.angles, g.rings, 500.0), out);
  CHECK(out.abs().maxCoeff() < 1e-9);
}

TEST_CASE("Neighbours conduct as laid out by hand", "[unit][heat]") {
  const Chain chain = wall();
  Conduction conduction(chain);
  const auto &g = conduction.geometry();
  conduction.set_conductivity(Field::Constant(g.angles, g.rings, 20.0));
  Field unit = Field::Zero(g.angles, g.rings), out;
  unit(3, 2) = 1.0;
  conduction.outflow(unit, out);
  const Ring &ring = chain.rings[2], &next = chain.rings[3];
  const double along = 20.0 * 1e-3 * (2.0 * units::pi * 12e-3 / 10.0) / (0.5 * (ring.length + next.length));
  const double round = 20.0 * 1e-3 * ring.length / (2.0 * units::pi * 12e-3 / 10.0);
  CHECK(-out(3, 3) == Approx(along));
  CHECK(-out(4, 2) == Approx(round));
  CHECK(-out(2, 2) == Approx(round));
}

TEST_CASE("The factored system is solved as the direct solver does, fluxes and all", "[unit][heat]") {
  System system(wall());
  const auto &g = system.conduction.geometry();
  const Field b = uneven(g, -20.0, 80.0);
  const Matrix along = assembled(system, Way::along), round = assembled(system, Way::round);
  Field y, z;
  system.conduction.solve(b, y, z);
  const Matrix leaking = diagonal(system.leak);
  const Matrix first = diagonal(system.capacity) + scale * (along + leaking);
  const Matrix second = diagonal(system.capacity) + scale * round;
  const Eigen::VectorXd exact_y = Eigen::SimplicialLDLT<Matrix>(first).solve(flat(b));
  const Eigen::VectorXd exact_z =
      Eigen::SimplicialLDLT<Matrix>(second).solve(diagonal(system.capacity) * exact_y);
  CHECK((flat(y) - exact_y).norm() < 1e-12 * exact_y.norm());
  CHECK((flat(z) - exact_z).norm() < 1e-12 * exact_z.norm());
  // What the header promises: C z = b - s (A y + R z).
  const Eigen::VectorXd kept = flat(b) - scale * ((along + leaking) * flat(y) + round * flat(z));
  CHECK((flat(system.capacity * z) - kept).norm() < 1e-12 * flat(b).norm());
}

TEST_CASE("A turned or mirrored field gives the same, turned or mirrored", "[unit][heat]") {
  const Chain chain = wall();
  Conduction straight(chain), changed(chain);
  const auto &g = straight.geometry();
  const Field k = uneven(g, 15.0, 60.0), capacity = uneven(g, 0.05, 0.1), leak = uneven(g, 0.0, 0.01),
              b = uneven(g, -20.0, 80.0);
  const auto solved = [](Conduction &conduction, const Field &conductivity, const Field &c, const Field &l,
                         const Field &right) {
    Field y, z;
    conduction.set_conductivity(conductivity);
    conduction.set_system(c, l, scale);
    conduction.solve(right, y, z);
    return z;
  };
  const Field z = solved(straight, k, capacity, leak, b);
  const auto mirrored = [](const Field &field) { return Field(field.colwise().reverse()); };
  const auto turned = [&](const Field &field) { // by three cells
    Field out(g.angles, g.rings);
    for (Index i = 0; i < g.angles; ++i) {
      out.row((i + 3) % g.angles) = field.row(i);
    }
    return out;
  };
  const Field back = mirrored(solved(changed, mirrored(k), mirrored(capacity), mirrored(leak), mirrored(b)));
  CHECK((back - z).abs().maxCoeff() < 1e-12 * z.abs().maxCoeff());
  const Field round = solved(changed, turned(k), turned(capacity), turned(leak), turned(b));
  CHECK((round - turned(z)).abs().maxCoeff() < 1e-12 * z.abs().maxCoeff());
}

TEST_CASE("The table of enthalpy follows the metal", "[unit][heat]") {
  for (const char *name : {"titanium-grade-2", "titanium-grade-9", "titanium-6al-4v"}) {
    const Metal &metal = *thermal_metal(name);
    const EnthalpyTable table(metal);
    double before = 0.0;
    for (double t = 200.0; t < 4000.0; t += 3.1) {
      const Properties p = table.at(metal.enthalpy_at(units::kelvins(t)));
      const bool corner =
          std::abs(t - metal.solidus.value()) < 8.0 || std::abs(t - metal.liquidus.value()) < 8.0;
      CAPTURE(name, t);
      CHECK(p.temperature == Approx(t).margin(corner ? 2.0 : 0.02).epsilon(0.0));
      CHECK(p.temperature > before);
      before = p.temperature;
      if (!corner) {
        CHECK(p.conductivity == Approx(metal.conductivity_at(units::kelvins(t))).epsilon(5e-3));
        CHECK(p.least_heat <= metal.specific_heat_at(units::kelvins(t)) * 1.005);
        CHECK(p.least_heat > 500.0); // the least of any titanium at any temperature
        CHECK(p.least_heat < 900.0); // no peak
      }
      CHECK(table.enthalpy_at(p.temperature) == Approx(metal.enthalpy_at(units::kelvins(t))).margin(0.1));
    }
  }
}

TEST_CASE("Shares of the arc add up and follow it round", "[unit][heat]") {
  const Chain chain = wall();
  CHECK(shares_along(chain, 0.0, 1.5e-3).sum() == Approx(1.0));
  Eigen::ArrayXd shares(10);
  for (const double from : {0.0, 1.0, -7.3, 12.0}) {
    for (const double travel : {0.0, 0.05, 0.9, -0.4, 8.0}) {
      shares_round(from, from + travel, 0.2, shares);
      CHECK(shares.sum() == Approx(1.0));
      CHECK(shares.minCoeff() >= -1e-15);
    }
  }
  const double middle = 2.0 * units::pi * 4.5 / 10.0;
  shares_round(middle, middle, 0.05, shares);
  CHECK(shares(4) > 0.999);
  shares_round(middle - 0.3, middle + 0.3, 0.1, shares);
  CHECK(shares(3) == Approx(shares(5)));
  // Averaged over a full turn every cell has the same.
  shares_round(0.3, 0.3 + 2.0 * units::pi, 0.2, shares);
  CHECK(shares.maxCoeff() == Approx(0.1));
}

#endif
