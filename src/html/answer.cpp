#include "html/markup.hpp"
#include "html/sections.hpp"

#include "purgewright/report/bench_numbers.hpp"
#include "purgewright/report/lines.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace purgewright::html {
namespace {

using checks::Status;
using report::Findings;

std::string point(const Findings &f, const checks::RuleResult &rule) {
  const std::string amount = report::against_limit(f, rule);
  return fmt::format("<li class=\"{}\"><b>{}</b>{}{}{}</li>\n", checks::to_text(rule.status),
                     safe(rule.title), amount.empty() ? "" : ": ", number(f, amount, rule.id),
                     rule.remedy.empty() ? "" : fmt::format("<p>To do: {}</p>", safe(rule.remedy)));
}

// Failing rules first, then cautions.
std::string points(const Findings &f) {
  std::string text;
  for (const Status status : {Status::fail, Status::caution}) {
    for (const auto &rule : f.rules) {
      text += rule.status == status ? point(f, rule) : "";
    }
  }
  return text.empty() ? text : "<ol class=\"points\">\n" + text + "</ol>\n";
}

std::string verdict(const Findings &f) {
  const auto count = [&](Status status) {
    return std::ranges::count(f.rules, status, &checks::RuleResult::status);
  };
  const auto failing = count(Status::fail), cautions = count(Status::caution);
  if (failing > 0) {
    return fmt::format(
        "<strong>No.</strong> {} of {} rules {}. Put right what stands here, then design again.", failing,
        f.rules.size(), failing == 1 ? "fails" : "fail");
  }
  if (cautions > 0) {
    return fmt::format(
        "<strong>Yes, with care.</strong> No rule fails, but {} of {} {} you to weigh something "
        "first.",
        cautions, f.rules.size(), cautions == 1 ? "asks" : "ask");
  }
  return fmt::format("<strong>Yes,</strong> as far as it can be calculated: all {} rules pass.",
                     f.rules.size());
}

std::string not_judged(const Findings &f) {
  std::string text;
  for (const auto &[rule, why] : f.not_judged) {
    text += fmt::format("<li>Not judged: {}, {}</li>\n", safe(rule), safe(why));
  }
  return text.empty() ? text : "<ul>\n" + text + "</ul>\n";
}

std::string dangers() {
  std::string text;
  for (const std::string_view danger : report::dangers()) {
    text += fmt::format("<li>{}</li>\n", safe(danger));
  }
  return "<section class=\"dangers\" aria-labelledby=\"dangers-head\">\n<h2 id=\"dangers-head\">Before "
         "anything "
         "else</h2>\n<ul>\n" +
         text + "</ul>\n</section>\n";
}

std::string flow(const Findings &f, units::VolumeFlow q, std::string_view id) {
  return number(f, report::litres_per_minute(q) + " L/min", id) +
         fmt::format("<small>{} ft3/h</small>", report::cubic_feet_per_hour(q));
}

std::string stage(const Findings &f, std::string_view name, std::string_view words, units::VolumeFlow bore,
                  std::string_view bore_id, units::VolumeFlow chamber, std::string_view chamber_id) {
  return fmt::format("<tr><th scope=\"row\">{}<small>{}</small></th><td>{}</td><td>{}</td></tr>\n", name,
                     words, flow(f, bore, bore_id), flow(f, chamber, chamber_id));
}

std::string flows(const Findings &f) {
  const auto &purge = f.design.purge;
  return "<table>\n<thead><tr><th scope=\"col\">Flow of argon</th><th scope=\"col\">Bore</th><th "
         "scope=\"col\">Chamber</th></tr></thead>\n<tbody>\n" +
         stage(f, "Purge first", "both on, cover closed", purge.bore.prepurge, ids::bore_prepurge_flow,
               purge.chamber.prepurge, ids::chamber_prepurge_flow) +
         stage(f, "Then weld", "turn down before the arc", purge.bore.welding, "purge.bore.welding.flow",
               purge.chamber.welding, "purge.chamber.welding.flow") +
         "</tbody>\n</table>\n";
}

} // namespace

std::string answer(const Findings &f) {
  const Status worst = checks::worst(f.rules);
  return fmt::format("<section id=\"answer\" class=\"answer {}\" aria-labelledby=\"answer-head\">\n<h2 "
                     "id=\"answer-head\">May I weld?</h2>\n<p class=\"verdict\">{}</p>\n{}{}</section>\n",
                     checks::to_text(worst), verdict(f), points(f), not_judged(f)) +
         dangers();
}

std::string at_bench(const Findings &f) {
  const auto &purge = f.design.purge;
  const bool reached = purge.bore.reached && purge.chamber.reached;
  return fmt::format(
      "<section id=\"bench\" class=\"bench\" aria-labelledby=\"bench-head\">\n<h2 id=\"bench-head\">At the "
      "bench</h2>\n<div class=\"cards\">\n<div class=\"card\"><h3>Wait</h3><div class=\"large\">{}</div>"
      "<p>cover closed, before the first arc</p></div>\n<div class=\"card wide\">{}</div>\n"
      "<div class=\"card\"><h3>Torch</h3><div class=\"large\">{}</div><p>over the joint before every arc, at "
      "{} "
      "L/min; postflow {}</p></div>\n</div>\n</section>\n",
      number(f, reached ? report::bench_time(purge.wait()) : "no use", ids::prepurge_wait), flows(f),
      number(f, report::bench_time(purge.torch.preflow), "purge.torch_preflow"),
      report::litres_per_minute(f.design.job.torch.gas_flow), safe(report::postflow_text(f)));
}

} // namespace purgewright::html
