#include "purgewright/flow/stage.hpp"

#include <algorithm>

namespace purgewright::flow {

std::string_view to_text(Stage stage) {
  switch (stage) {
  case Stage::bore:
    return "bore";
  case Stage::bore_outlet_below:
    return "bore-outlet-below";
  case Stage::prepurge:
    return "prepurge";
  case Stage::open:
    return "open";
  case Stage::away:
    return "away";
  case Stage::torch:
    return "torch";
  }
  return {};
}

std::optional<Stage> stage_named(std::string_view name) {
  const auto *found = std::ranges::find(all_stages, name, [](Stage stage) { return to_text(stage); });
  return found == all_stages.end() ? std::nullopt : std::optional(*found);
}

bool is_hot(Stage stage) {
  return stage == Stage::away;
}

bool is_bore(Stage stage) {
  return stage == Stage::bore || stage == Stage::bore_outlet_below;
}

bool is_prepurge(Stage stage) {
  return is_bore(stage) || stage == Stage::prepurge;
}

} // namespace purgewright::flow
