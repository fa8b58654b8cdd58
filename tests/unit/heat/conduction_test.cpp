// The matrix-free solver against an assembled matrix and Eigen's direct solver.
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

// Column by column from the operator that the fluxes use.
Eigen::SparseMatrix<double> assembled(const System &system) {
  const auto &g = system.conduction.geometry();
  const Index n = g.angles * g.rings;
  std::vector<Eigen::Triplet<double>> entries;
  for (Index c = 0; c < n; ++c) {
    Field unit = Field::Zero(g.angles, g.rings), out;
    unit(c % g.angles, c / g.angles) = 1.0;
    system.conduction.outflow(unit, out);
    const Field column = (system.capacity + scale * system.leak) * unit + scale * out;
    for (Index r = 0; r < n; ++r) {
      if (column.data()[r] != 0.0) {
        entries.emplace_back(int(r), int(c), column.data()[r]);
      }
    }
  }
  Eigen::SparseMatrix<double> matrix(n, n);
  matrix.setFromTriplets(entries.begin(), entries.end());
  return matrix;
}

} // namespace

TEST_CASE("Conduction is symmetric, keeps heat and leaves an even field alone", "[unit][heat]") {
  const System system(wall());
  const Eigen::SparseMatrix<double> matrix = assembled(system);
  const Eigen::SparseMatrix<double> difference = matrix - Eigen::SparseMatrix<double>(matrix.transpose());
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

TEST_CASE("Conjugate gradients agree with the direct solver", "[unit][heat]") {
  const System system(wall());
  const auto &g = system.conduction.geometry();
  const Field b = uneven(g, -20.0, 80.0);
  Field x = Field::Zero(g.angles, g.rings);
  const int iterations = system.conduction.solve(b, 1e-12, x);
  const Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> direct(assembled(system));
  const Eigen::VectorXd exact = direct.solve(Eigen::Map<const Eigen::VectorXd>(b.data(), b.size()));
  CHECK((Eigen::Map<const Eigen::VectorXd>(x.data(), x.size()) - exact).norm() < 1e-9 * exact.norm());
  CHECK(iterations > 1);
  CHECK(iterations < 40);
}

TEST_CASE("With even properties round the axis the preconditioner is exact", "[unit][heat]") {
  const Chain chain = wall();
  Conduction conduction(chain);
  const auto &g = conduction.geometry();
  conduction.set_conductivity(Field::Constant(g.angles, g.rings, 20.0));
  conduction.set_system(Field::Constant(g.angles, g.rings, 0.05), Field::Constant(g.angles, g.rings, 0.001),
                        scale);
  Field x = Field::Zero(g.angles, g.rings);
  CHECK(conduction.solve(uneven(g, -20.0, 80.0), 1e-10, x) <= 1);
}

TEST_CASE("Transform round the axis: back and forth, lengths kept, curvature as said", "[unit][heat]") {
  constexpr Index n = 12, rings = 3;
  const RoundTransform transform(n, rings);
  Field field(n, rings), modes(n, rings), back(n, rings);
  for (Index i = 0; i < field.size(); ++i) {
    field.data()[i] = std::sin(double(i * i + 1));
  }
  transform.forward(View(field.data(), n, rings), modes);
  CHECK(modes.matrix().norm() == Approx(field.matrix().norm()));
  transform.backward(modes, Target(back.data(), n, rings));
  CHECK((back - field).abs().maxCoeff() < 1e-13);
  // Second difference round the ring, in modes.
  Field second = 2.0 * field;
  for (Index i = 0; i < n; ++i) {
    second.row(i) -= field.row((i + 1) % n) + field.row((i + n - 1) % n);
  }
  Field second_modes(n, rings);
  transform.forward(View(second.data(), n, rings), second_modes);
  for (Index j = 0; j < rings; ++j) {
    CHECK((second_modes.col(j) - transform.curvature() * modes.col(j)).abs().maxCoeff() < 1e-12);
  }
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
        CHECK(p.specific_heat == Approx(metal.specific_heat_at(units::kelvins(t))).epsilon(5e-3));
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
