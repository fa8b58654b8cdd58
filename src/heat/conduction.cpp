#include "heat/conduction.hpp"

namespace purgewright::heat::detail {

namespace {

using Eigen::Index;

} // namespace

Geometry::Geometry(const Chain &chain)
    : angles(chain.angles), rings(static_cast<Index>(chain.rings.size())), along_near(rings),
      along_far(rings), round(rings) {
  const auto n = double(angles);
  for (Index j = 0; j < rings; ++j) {
    const Ring &ring = chain.rings[std::size_t(j)];
    const bool linked = ring.face > 0.0;
    along_near(j) = linked ? n * ring.to_face / ring.face : 0.0;
    along_far(j) = linked ? n * ring.from_face / ring.far_face : 0.0;
    round(j) = ring.section * n / (2.0 * units::pi * ring.radius);
  }
}

Conduction::Conduction(const Chain &chain) : geometry_(chain) {
  const Index n = geometry_.angles, rings = geometry_.rings;
  for (Field *field : {&along_, &round_, &resistance_, &flow_, &inverse_along_, &lower_along_}) {
    field->setZero(n, rings);
  }
  for (Field *field : {&capacity_, &inverse_round_, &lower_round_, &last_round_, &turned_}) {
    field->setZero(rings, n);
  }
}

void Conduction::set_conductivity(const Field &k) {
  const Index n = geometry_.angles, last = geometry_.rings - 1;
  resistance_ = k.inverse();
  for (Index j = 0; j < last; ++j) {
    along_.col(j) =
        (geometry_.along_near(j) * resistance_.col(j) + geometry_.along_far(j) * resistance_.col(j + 1))
            .inverse();
  }
  for (Index j = 0; j <= last; ++j) {
    const double half = 0.5 * geometry_.round(j);
    round_.col(j).head(n - 1) = half * (k.col(j).head(n - 1) + k.col(j).tail(n - 1));
    round_(n - 1, j) = half * (k(n - 1, j) + k(0, j));
  }
}

void Conduction::outflow(const Field &field, Field &out) const {
  const Index n = geometry_.angles, rings = geometry_.rings;
  out.resize(n, rings);
  // flow_: from each cell to the next one round; then to the next one along.
  for (Index j = 0; j < rings; ++j) {
    auto flow = flow_.col(j), to = out.col(j);
    const auto from = field.col(j), conductance = round_.col(j);
    flow.head(n - 1) = conductance.head(n - 1) * (from.head(n - 1) - from.tail(n - 1));
    flow(n - 1) = conductance(n - 1) * (from(n - 1) - from(0));
    to = flow;
    to.tail(n - 1) -= flow.head(n - 1);
    to(0) -= flow(n - 1);
  }
  for (Index j = 0; j + 1 < rings; ++j) {
    flow_.col(j) = along_.col(j) * (field.col(j) - field.col(j + 1));
    out.col(j) += flow_.col(j);
    out.col(j + 1) -= flow_.col(j);
  }
}

void Conduction::set_system(const Field &capacity, const Field &leak, double scale) {
  set_along(capacity, leak, scale);
  capacity_ = capacity.transpose();
  set_round(scale);
}

void Conduction::set_along(const Field &capacity, const Field &leak, double scale) {
  const Index last = geometry_.rings - 1;
  for (Index j = 0; j <= last; ++j) {
    auto pivot = inverse_along_.col(j);
    pivot = capacity.col(j) + scale * leak.col(j);
    if (j > 0) {
      pivot += scale * along_.col(j - 1) * (1.0 + lower_along_.col(j - 1));
    }
    if (j < last) {
      pivot += scale * along_.col(j);
    }
    pivot = pivot.inverse();
    lower_along_.col(j) = -scale * along_.col(j) * pivot; // along_ of the last ring stays 0
  }
}

void Conduction::set_round(double scale) {
  const Index last = geometry_.angles - 1;
  turned_ = scale * round_.transpose(); // column i: angle i to i + 1
  inverse_round_.col(last) = capacity_.col(last) + turned_.col(last - 1) + turned_.col(last);
  fill_ = -turned_.col(last); // entry of the last angle with angle i
  for (Index i = 0; i < last; ++i) {
    auto pivot = inverse_round_.col(i);
    pivot = capacity_.col(i) + turned_.col(i) + turned_.col(i == 0 ? last : i - 1);
    if (i > 0) {
      pivot += lower_round_.col(i - 1) * turned_.col(i - 1);
    }
    pivot = pivot.inverse();
    if (i + 1 < last) {
      lower_round_.col(i) = -turned_.col(i) * pivot;
    } else {
      fill_ -= turned_.col(i); // the last but one is a neighbour of the last
    }
    last_round_.col(i) = fill_ * pivot;
    inverse_round_.col(last) -= fill_ * last_round_.col(i);
    fill_ = -fill_ * lower_round_.col(i);
  }
  inverse_round_.col(last) = inverse_round_.col(last).inverse();
}

void Conduction::solve_along(const Field &b, Field &y) const {
  const Index last = geometry_.rings - 1;
  y.col(0) = b.col(0);
  for (Index j = 1; j <= last; ++j) {
    y.col(j) = b.col(j) - lower_along_.col(j - 1) * y.col(j - 1);
  }
  y.col(last) *= inverse_along_.col(last);
  for (Index j = last - 1; j >= 0; --j) {
    y.col(j) = y.col(j) * inverse_along_.col(j) - lower_along_.col(j) * y.col(j + 1);
  }
}

// turned_ in, turned_ out.
void Conduction::solve_round() {
  const Index last = geometry_.angles - 1;
  Field &x = turned_;
  for (Index i = 0; i < last; ++i) {
    if (i + 1 < last) {
      x.col(i + 1) -= lower_round_.col(i) * x.col(i);
    }
    x.col(last) -= last_round_.col(i) * x.col(i);
  }
  x.col(last) *= inverse_round_.col(last);
  for (Index i = last - 1; i >= 0; --i) {
    x.col(i) = x.col(i) * inverse_round_.col(i) - last_round_.col(i) * x.col(last);
    if (i + 1 < last) {
      x.col(i) -= lower_round_.col(i) * x.col(i + 1);
    }
  }
}

void Conduction::solve(const Field &b, Field &y, Field &z) {
  y.resize(geometry_.angles, geometry_.rings);
  solve_along(b, y);
  turned_ = capacity_ * y.transpose();
  solve_round();
  z = turned_.transpose();
}

} // namespace purgewright::heat::detail
