// Finds places for dimensions and callouts so that no text meets a line, another text, a reserved box or the
// frame.
//
// Units: millimetres on paper. Frame: sheet. Range and errors: when no free place is left the least bad one
// is taken and counted as a clash. Guarantee: same input, same places. Source: ISO 129-1 (first line 10 mm
// from the outline, next 7 mm or more).
#pragma once

#include "view.hpp"

#include <map>

namespace purgewright::drawing {

// Where a view stands on the sheet.
struct Stand {
  const ViewPlan *plan = nullptr;
  Point origin; // of the plane on paper
  double scale = 1.0;
  Box box; // outline on paper
  bool moved = false;
  Point paper(Point plane) const { return origin + scale * plane; }
  Point paper(Vec v) const { return paper(plan->looking(v)); }
};

// Lines already on the sheet, found by place.
class Ink {
 public:
  void add(const Segment &);
  bool touches(const Box &) const;
  int crossings(const Segment &) const;
  // Lines beside which the segment runs so close that the two read as one.
  int alongside(const Segment &) const;

 private:
  static constexpr double cell = 6.0;
  static long key(int x, int y) { return static_cast<long>(x) * 100003L + y; }
  template <class Visit> void visit(const Box &, Visit &&) const;
  std::vector<Segment> segments_;
  std::map<long, std::vector<std::size_t>> cells_;
};

// What stands over a view.
struct Caption {
  std::string content;
  double height;
  Point middle; // of its foot, where it stands if nothing is in its way
};

class Placer {
 public:
  explicit Placer(Box area) : area_(area) {}
  void add_ink(const Stroke &);
  void reserve(const Box &box) { taken_.push_back(box); }
  void add_view(const Box &box) { views_.push_back(box); }
  // Extension lines that are to come, for texts that have a choice.
  void expect(const Segment &line) { expected_.add(line); }
  Dimension place(const Linear &, const Stand &);
  Dimension place(const Callout &, const Stand &);
  // Where the callout would go now; nothing is kept.
  Dimension best_place(const Callout &, const Stand &) const;
  // One that has its place already.
  void keep(const Dimension &);
  Text place(const Caption &, const Stand &);
  const std::vector<std::string> &clashes() const { return clashes_; }

 private:
  struct Trial {
    Dimension dimension;
    double cost = 0.0;
    Segment line{}; // the dimension line, for its distance from parallel ones
    bool linear = false;
  };
  double text_cost(const Box &, const Box &own_view) const;
  int close_texts(const Box &) const;
  double stroke_cost(const Segment &, const Box &own_view) const;
  int features_crossed(const Segment &) const;
  double parallel_cost(const Segment &) const;
  void judge(Trial &, const Box &own_view) const;
  Trial best(const Callout &, const Stand &) const;
  Dimension keep(Trial &&);

  Box area_;
  Ink outlines_, dimension_ink_, leaders_, expected_;
  std::vector<Box> taken_, views_;
  std::vector<Segment> dimension_lines_;
  std::vector<Arc> features_; // round ones, which no leader of another crosses
  std::vector<std::string> clashes_;
};

} // namespace purgewright::drawing
