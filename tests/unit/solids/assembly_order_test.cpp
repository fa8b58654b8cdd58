// Each step of the order of assembly on the solids: what is in place by then leaves its keys their room.
#include "purgewright/fixture/assembly_order.hpp"
#include "purgewright/solids/clearances.hpp"
#include "support/paths.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace purgewright;

TEST_CASE("order of assembly: every key finds room among the parts that stand by then", "[unit]") {
  for (const std::string name : {"logger-25", "logger-51"}) {
    const auto resolution = job::read_job(test::example_job(name));
    REQUIRE(resolution.job);
    const job::Job &job = *resolution.job;
    const auto layout = fixture::lay_out(job);
    const auto assembly = solids::build_assembly(job, layout);
    const auto standing = solids::stand(assembly);
    const auto tools = fixture::access_tools(job, layout);
    std::set<std::string> placed;
    std::size_t driven = 0;
    for (const std::string &step : fixture::assembly_order(job, layout)) {
      const auto now = fixture::items_of(step);
      placed.insert(now.begin(), now.end());
      std::vector<solids::Standing> parts;
      std::ranges::copy_if(standing, std::back_inserter(parts), [&](const auto &part) {
        return part.kind == solids::PartKind::made && placed.contains(std::string(part.name));
      });
      for (const auto &tool : tools.keys) {
        if (std::ranges::find(now, tool.item) != now.end()) {
          INFO(name << ": " << tool.item << ": " << step);
          CHECK(solids::tool_room(tool, parts) > units::Length{});
          ++driven;
        }
      }
    }
    CHECK(driven == tools.keys.size());
  }
}
