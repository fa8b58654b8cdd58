#include "purgewright/flow/reading.hpp"

#include "purgewright/gas/properties.hpp"
#include "unit/gas/design_of.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

using namespace purgewright;
using namespace purgewright::flow;
using Catch::Contains;
using Catch::StartsWith;
using gas::test::example_job;

namespace {

job::Job clean_job() {
  job::Job job = example_job("logger-25");
  job.gas.oxygen_in_supply = 0.0;
  return job;
}

Case case_of(Stage stage) {
  Case written;
  written.choice.stage = stage;
  written.places = {"joint_top", "joint_bottom", "outlet"};
  return written;
}

Record record_of(const std::vector<std::string> &texts, const job::Job &job, const Case &written) {
  std::vector<ProbesFile> probes;
  for (const std::string &text : texts) {
    probes.push_back({"probes/air", text});
  }
  return read_record(probes, job, written);
}

const std::string head = "# Probe 0 (0 0 0)\n# Time\n";
const std::string first_run = head + "0.1 1 1 1\n0.2 0.5 0.25 1\n0.3 0.001 0.01 1\n";

} // namespace

TEST_CASE("the probes' air is read as oxygen, by volume cold and by mass hot") {
  const auto cold = record_of({head + "0.5 0.5 0 1\n"}, clean_job(), case_of(Stage::bore));
  REQUIRE(cold.times == std::vector{0.5});
  CHECK(cold.oxygen[0][0] == Approx(0.5 * gas::air_oxygen));
  CHECK(cold.oxygen[0][1] == 0.0);
  CHECK(cold.oxygen[0][2] == Approx(gas::air_oxygen));
  const double argon = gas::molar_mass(gas::Species::argon), air = gas::molar_mass(gas::Species::air);
  const auto hot =
      record_of({fmt::format("0.5 {:.9g} 0 1\n", air / (air + argon))}, clean_job(), case_of(Stage::away));
  CHECK(hot.oxygen[0][0] == Approx(0.5 * gas::air_oxygen)); // as many molecules of each
}

TEST_CASE("what the supply brings is counted with the argon") {
  job::Job job = clean_job();
  job.gas.oxygen_in_supply = 5e-6;
  const auto record = record_of({"0.5 0 0 0\n"}, job, case_of(Stage::bore));
  CHECK(record.oxygen[0][0] == Approx(5e-6));
}

TEST_CASE("a run that went on repeats nothing, and a line being written is left out") {
  const auto record =
      record_of({first_run, "0.2 0.4 0.2 1\n0.4 0 0.1 1\n0.5 0 0"}, clean_job(), case_of(Stage::bore));
  CHECK(record.times == std::vector{0.1, 0.2, 0.4});
  CHECK(record.oxygen[1][0] == Approx(0.4 * gas::air_oxygen));
}

TEST_CASE("the joint is under its limit once its worst place stays there") {
  const auto job = clean_job();
  const auto record =
      record_of({first_run + "0.4 0 0.0001 1\n0.5 0 0.01 1\n0.6 0 0.00002 1\n"}, job, case_of(Stage::bore));
  const Solved solved = judge(record, 50e-6);
  REQUIRE(solved.reached);
  CHECK(solved.reached->value() == 0.6); // at 0.4 s it was under, but did not stay
  CHECK(solved.most == Approx(gas::air_oxygen));
  CHECK(solved.most_at.value() == 0.1);
  CHECK(solved.at_end == Approx(0.00002 * gas::air_oxygen));
  CHECK_FALSE(judge(record_of({first_run}, job, case_of(Stage::bore)), 50e-6).reached);
}

TEST_CASE("a bracket holds, does not hold, or cannot be judged yet") {
  const Bracket bracket{2.0, 3.0, 5.0};
  Solved solved;
  solved.end = units::seconds(4.0);
  CHECK_FALSE(holds(bracket, solved, Stage::bore).has_value());
  solved.end = units::seconds(6.0);
  CHECK(holds(bracket, solved, Stage::bore) == false);
  solved.reached = units::seconds(4.5);
  CHECK(holds(bracket, solved, Stage::bore) == true);
  solved.reached = units::seconds(1.0);
  CHECK(holds(bracket, solved, Stage::bore) == false);
  solved.most = 2.5;
  CHECK(holds(bracket, solved, Stage::away) == true);
  solved.most = 6.0;
  CHECK(holds(bracket, solved, Stage::away) == false);
}

TEST_CASE("what is no record of probes is refused with what is wrong") {
  const auto read = [](const std::string &text) {
    return record_of({text}, clean_job(), case_of(Stage::bore));
  };
  CHECK_THROWS_WITH(read("0.1 0 0\n"), Contains("3 numbers") && Contains("4 belong"));
  CHECK_THROWS_WITH(read("0.1 0 nan? 0\n"), Contains("no number"));
  CHECK_THROWS_AS(judge(read(head), 50e-6), BadRecord);
}

TEST_CASE("a solution that ran away is refused with file, line and place, not judged") {
  const auto read = [](const std::string &lines) {
    return record_of({head + "0.1 1 1 1\n" + lines}, clean_job(), case_of(Stage::bore));
  };
  for (const std::string wild : {"nan", "-nan", "inf", "-inf", "1.02", "-0.02", "1e30"}) {
    INFO(wild);
    CHECK_THROWS_WITH(read("0.2 0.5 " + wild + " 1\n"),
                      StartsWith("probes/air:4: ") && Contains("joint_bottom") && Contains("ran away"));
  }
  CHECK_THROWS_WITH(read("nan 0 0 0\n"), StartsWith("probes/air:4: ") && Contains("no time"));
  CHECK_THROWS_WITH(read("0.1 0 0 0\n"), Contains("0.1 s comes after 0.1 s"));
  CHECK_THROWS_WITH(read("0.05 0 0 0\n"), Contains("0.05 s comes after 0.1 s"));
  CHECK(read("0.2 1.005 -0.005 0\n").oxygen[1][1] == 0.0); // rounding of the solver's
}

TEST_CASE("network and flow stand side by side, and what lies outside the bracket is said") {
  const gas::test::PurgeDesign d(clean_job());
  const auto purge = d.purge();
  const Case written = case_of(Stage::away);
  const auto text = [&](double air) {
    return comparison_text(d.job, purge, written,
                           record_of({fmt::format("1 {:.9g} 0 0\n", air)}, d.job, written));
  };
  CHECK_THAT(text(1.0), Contains("OUTSIDE THE BRACKET"));
  CHECK_THAT(text(purge.torch.away.best / gas::air_oxygen * 0.725), Contains("within the bracket"));
  CHECK_THAT(text(1.0), Contains("not measured"));
  CHECK_THAT(comparison_csv(d.job, purge, written, record_of({"1 1 0 0\n"}, d.job, written)),
             Contains("away,oxygen,") && Contains(",no,"));
}
