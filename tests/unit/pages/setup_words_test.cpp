#include "pages/setup_words.hpp"
#include "support/examples.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace purgewright;

TEST_CASE("a slot mask is taken off for the cap and laid on once it is in") {
  for (const std::string name : {"well-114", "logger-25"}) {
    INFO(name);
    const auto steps = pages::loading_steps(report::find(checks::evaluate(test::example(name))));
    const auto step = [&](std::string_view words) {
      return std::ranges::find_if(steps, [&](const std::string &text) { return text.starts_with(words); });
    };
    const bool masked = name == "well-114";
    CHECK((step("Cover and slot mask aside") != steps.end()) == masked);
    CHECK((step("Cover aside") != steps.end()) != masked);
    CHECK((step("Slot mask on") != steps.end()) == masked);
    CHECK((!masked || step("Cover and slot mask aside") < step("Slot mask on")));
  }
}
