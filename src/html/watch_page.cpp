#include "purgewright/html/watch_page.hpp"

#include "html/fault_box.hpp"
#include "html/markup.hpp"
#include "html/report_parts.hpp"
#include "html/sections.hpp"
#include "html/web.hpp"

#include "purgewright/report/compare.hpp"
#include "purgewright/report/lines.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

namespace purgewright::html {
namespace {

using checks::Status;
using report::Findings;

std::string part(std::string_view name, std::string_view markup) {
  return fmt::format("<div data-part=\"{}\">{}</div>\n", name, markup);
}

// ---- of which save it is

bool faulty(const Watched &w) {
  return job::has_errors(w.problems);
}

std::string of_save(const Watched &w, std::optional<SaveTime> saved) {
  if (!saved || *saved == SaveTime{}) {
    return "none yet";
  }
  return *saved == w.saved ? std::string("of this save")
                           : fmt::format("of the save at {}", clock_time(*saved));
}

std::string making(const Watched &w) {
  return w.building.empty() ? std::string() : fmt::format(", now {}", safe(w.building));
}

bool clashes(const Watched &w) {
  return w.judged != nullptr && w.judged != w.numbers;
}

std::string state_line(std::string_view what, std::string_view words) {
  return fmt::format("<div><dt>{}</dt><dd>{}</dd></div>\n", what, words);
}

std::string state(const Watched &w) {
  const bool renewed = w.view_saved == w.numbers_saved;
  const bool all = renewed && w.sheets_saved == w.numbers_saved;
  std::string text =
      "<dl class=\"watched\">\n" +
      state_line("Watched file",
                 fmt::format("<code>{}</code>, saved at {}", safe(w.file), clock_time(w.saved))) +
      state_line("Numbers", of_save(w, w.numbers != nullptr ? std::optional(w.numbers_saved) : std::nullopt) +
                                (w.coarse && !faulty(w) ? "; first ones, exact ones follow" : "")) +
      state_line("3D view and plots", of_save(w, w.view_saved) + (renewed ? "" : making(w))) +
      state_line("Drawings", of_save(w, w.sheets_saved) + (renewed && !all ? making(w) : "")) + "</dl>\n";
  if (!w.build_fault.empty()) {
    text +=
        fmt::format("<div class=\"answer fail\"><h2>The solids could not be made</h2><pre>{}</pre></div>\n",
                    safe(w.build_fault));
  }
  return text;
}

// Of what is made of the solids, which come later than the numbers.
std::string made_note(const Watched &w, std::optional<SaveTime> saved) {
  if (saved == w.saved) {
    return {};
  }
  const std::string words =
      !saved      ? fmt::format("Not built yet{}", making(w))
      : faulty(w) ? fmt::format("From before the fault, of the save at {}", clock_time(*saved))
                  : fmt::format("Of the save at {}; the new one follows{}", clock_time(*saved), making(w));
  return fmt::format("<p class=\"tag\">{}</p>\n", words);
}

std::string verdict_word(const Watched &w) {
  if (faulty(w)) {
    return "Fault";
  }
  if (w.judged == nullptr) {
    return "Not judged yet";
  }
  const Status worst = checks::worst(w.judged->rules);
  return worst == Status::fail ? "No" : worst == Status::caution ? "Yes, with care" : "Yes";
}

std::string title_of(const Watched &w) {
  const std::string name = w.judged != nullptr ? w.judged->design.job.identity.name : w.file;
  return fmt::format("{}: {}", verdict_word(w), name);
}

// What stands below it is not what it seems.
std::string tagged(const Watched &w, std::string markup, bool of_numbers) {
  std::string tag;
  if (faulty(w)) {
    tag = fmt::format("From before the fault, saved at {}", clock_time(w.numbers_saved));
  } else if (of_numbers && clashes(w)) {
    tag = fmt::format("From before the dimensions clashed, saved at {}", clock_time(w.numbers_saved));
  } else if (w.coarse) {
    return fmt::format(
        "<div class=\"of-coarse\"><p class=\"tag\">First numbers, heat by its coarse plan; exact "
        "ones follow</p>\n{}</div>\n",
        markup);
  } else {
    return markup;
  }
  return fmt::format("<div class=\"of-before\"><p class=\"tag\">{}</p>\n{}</div>\n", tag, markup);
}

// ---- what a save changed

std::string changed_lines(const report::Comparison &c) {
  std::string text;
  const auto &before = c.designs.front(), &now = c.designs.back();
  const report::Overview all = report::overview(c);
  for (std::size_t m = 0; m < report::metric_count; ++m) {
    const std::string was = report::metric_text(c, all, before, m), is = report::metric_text(c, all, now, m);
    if (all.is_known(m) && was != is) {
      text += fmt::format("<tr><th scope=\"row\">{}</th><td>{}</td><td>{}</td></tr>\n",
                          safe(report::metrics()[m].title), safe(was), safe(is));
    }
  }
  return text;
}

std::string status_mark(Status status) {
  return fmt::format("<span class=\"mark {0}\">{0}</span>", checks::to_text(status));
}

std::string changed_rules(const report::Comparison &c) {
  std::string text;
  const auto &before = c.designs.front().of_each_rule, &now = c.designs.back().of_each_rule;
  for (std::size_t r = 0; r < std::min(before.size(), now.size()); ++r) {
    if (before[r] && now[r] && before[r] != now[r]) { // of solids not yet built nothing is known
      text += fmt::format("<tr><th scope=\"row\">{}</th><td>{}</td><td>{}</td></tr>\n",
                          safe(checks::rules()[r].title), status_mark(*before[r]), status_mark(*now[r]));
    }
  }
  return text;
}

std::string changes(const Watched &w) {
  if (w.before == nullptr || w.numbers == nullptr || w.coarse || faulty(w) || clashes(w)) {
    return {};
  }
  report::Comparison c;
  c.unit_system = w.numbers->design.job.shop.unit_system;
  c.designs = {report::compared(w.before->design), report::compared(w.numbers->design)};
  const std::string lines = changed_rules(c) + changed_lines(c);
  const std::string words =
      lines.empty()
          ? std::string("<p>None of the numbers that designs are compared by.</p>\n")
          : "<table>\n<thead><tr><th scope=\"col\">Number or rule</th><th scope=\"col\">Before</th><th "
            "scope=\"col\">Now</th></tr></thead>\n<tbody>\n" +
                lines + "</tbody>\n</table>\n";
  return fmt::format("<details class=\"changes\" id=\"changes\"><summary>What this save changed</summary>\n{}"
                     "</details>\n",
                     words);
}

// ---- several jobs

std::string column_head(const Watched &w, std::size_t n) {
  const std::string name = w.judged != nullptr ? w.judged->design.job.identity.name : w.file;
  return fmt::format("<th scope=\"col\"><a href=\"{}/\">{}</a><small>{}</small></th>", n, safe(name),
                     safe(w.file));
}

template <class Cell> std::string row(std::string_view what, std::span<const Watched> jobs, Cell &&cell) {
  std::string text = fmt::format("<tr><th scope=\"row\">{}</th>", what);
  for (std::size_t i = 0; i < jobs.size(); ++i) {
    text += fmt::format("<td>{}</td>", cell(i));
  }
  return text + "</tr>\n";
}

std::string verdict_cell(const Watched &w) {
  const bool stale = faulty(w);
  const Status worst = stale || w.judged == nullptr ? Status::fail : checks::worst(w.judged->rules);
  return fmt::format("<span class=\"mark {}\">{}</span>", checks::to_text(worst),
                     stale ? std::string("not judged: a fault") : verdict_word(w));
}

std::string rules_cell(const Watched &w, Status status) {
  if (w.judged == nullptr) {
    return "-";
  }
  std::string text;
  for (const auto &rule : w.judged->rules) {
    if (rule.status == status) {
      const std::string amount = report::against_limit(*w.judged, rule);
      text += fmt::format("<li>{}{}</li>\n", safe(rule.title),
                          amount.empty() ? std::string() : fmt::format(": <b>{}</b>", safe(amount)));
    }
  }
  const std::string tag = faulty(w) ? "<span class=\"tag\">from before the fault</span> " : "";
  return tag + (text.empty() ? "none" : "<ul>" + text + "</ul>");
}

report::Comparison compared(std::span<const Watched> jobs) {
  report::Comparison c;
  for (const Watched &w : jobs) {
    c.designs.push_back(w.numbers != nullptr ? report::compared(w.numbers->design)
                                             : report::ComparedDesign{});
    c.unit_system = w.numbers != nullptr ? w.numbers->design.job.shop.unit_system : c.unit_system;
  }
  return c;
}

// What decides at the bench; `compare` has them all.
constexpr std::array<std::string_view, 12> listed{"purge.wait",
                                                  "purge.bore.welding.flow",
                                                  "purge.chamber.welding.flow",
                                                  "purge.bore.oxygen_floor",
                                                  "purge.chamber.oxygen_floor",
                                                  "purge.chamber.torch_away.oxygen_floor",
                                                  "heat.hold.total",
                                                  "cycle.time",
                                                  "gas.used.per_part",
                                                  "gas.cost.per_part",
                                                  "heat.pin_contact.peak",
                                                  "mass.total"};

std::string number_rows(std::span<const Watched> jobs) {
  const report::Comparison c = compared(jobs);
  const report::Overview all = report::overview(c);
  const auto known = [&](std::size_t i) { return jobs[i].numbers != nullptr; };
  std::string text;
  for (std::size_t m = 0; m < report::metric_count; ++m) {
    if (std::ranges::find(listed, report::metrics()[m].id) == listed.end() || !all.is_known(m)) {
      continue;
    }
    text += row(safe(report::metrics()[m].title), jobs, [&](std::size_t i) {
      const bool star = all.wins(c.designs[i], m);
      return known(i)
                 ? fmt::format("{}{}", safe(report::metric_text(c, all, c.designs[i], m)),
                               star ? "<span class=\"star\" role=\"img\" aria-label=\"best\"> \u2605</span>"
                                    : "")
                 : std::string("-");
    });
  }
  return text;
}

std::string numbers_cell(const Watched &w) {
  const std::string of = of_save(w, w.numbers != nullptr ? std::optional(w.numbers_saved) : std::nullopt);
  const bool old = w.numbers != nullptr && w.numbers_saved != w.saved;
  return old ? fmt::format("<span class=\"tag\">from before the {}, {}</span>", faulty(w) ? "fault" : "clash",
                           of)
             : of + (w.coarse ? "; first ones, exact ones follow" : "");
}

std::string faults_cell(const Watched &w) {
  return w.problems.empty() ? std::string("none") : fault_list(w.problems, w.sources);
}

// The templates' part that tells up to which version this page is; an answer of the server replaces it.
std::string version_mark(std::uint64_t version) {
  return fmt::format(
      "<p id=\"lost\" class=\"answer fail\" role=\"status\" data-version=\"{}\" "
      "hidden>This page is no longer renewed: purgewright watch has ended. What stands here is "
      "what it showed last.</p>\n",
      version);
}

Frame frame_of_watched() {
  return {.name = "Job under watch",
          .kept = "nothing is kept: <code>purgewright design</code> writes these files and the solids.",
          .own_script = std::string(web::watch_js),
          .sources = "'self'"};
}

const std::string &at(const Parts &parts, const char *name) {
  static const std::string none;
  const auto found = parts.find(name);
  return found == parts.end() ? none : found->second;
}

} // namespace

Parts state_parts(const Watched &w) {
  Parts parts{{"state", fmt::format("<div data-title=\"{}\">{}</div>", safe(title_of(w)), state(w))},
              {"faults", fault_box(w.problems, w.sources,
                                   w.numbers != nullptr ? std::optional(w.numbers_saved) : std::nullopt)},
              {"fixture-note", made_note(w, w.view_saved)},
              {"plots-note", w.view_saved ? made_note(w, w.view_saved) : ""},
              {"sheets-note", w.sheets_saved ? made_note(w, w.sheets_saved) : ""}};
  if (w.judged == nullptr) {
    parts["head"] = fmt::format("<h1>{}</h1>", safe(w.file));
  }
  return parts;
}

Parts watched_numbers(const Watched &w, std::string_view version) {
  Parts parts;
  if (w.judged == nullptr) {
    return parts;
  }
  parts["head"] = head(*w.judged, version);
  parts["answer"] = tagged(w, answer(*w.judged), false);
  if (w.numbers == nullptr) {
    return parts;
  }
  for (auto &[name, markup] : number_parts(*w.numbers)) {
    const bool top = name != "numbers" && name != "parts";
    if (name != "answer" && (top || !w.coarse)) {
      parts[name] = tagged(w, std::move(markup), true);
    }
  }
  parts["changes"] = changes(w);
  return parts;
}

Parts watched_view(const Findings &of, const Shown &shown) {
  return view_parts(of, shown);
}

Parts watched_sheets(const Shown &shown) {
  return {{"sheets", sheets(shown)}};
}

std::string watched_page(const Parts &parts, std::uint64_t version) {
  Parts places;
  for (const char *name :
       {"answer", "bench", "fixture-note", "settings", "plots", "rules", "sheets", "parts", "numbers"}) {
    places[name] = part(name, at(parts, name));
  }
  for (const char *name : {"viewer-data", "assembly", "gas-spaces"}) {
    places[name] = at(parts, name);
  }
  for (const auto &[name, note] : {std::pair("plots", "plots-note"), std::pair("sheets", "sheets-note")}) {
    places[name] = part(note, at(parts, note)) + places[name];
  }
  places["head"] = part("head", parts.contains("head") ? at(parts, "head") : std::string("<h1>Reading</h1>"));
  places["watched"] = version_mark(version) + part("state", at(parts, "state")) +
                      part("faults", at(parts, "faults")) + part("changes", at(parts, "changes"));
  return framed(frame_of_watched(), std::move(places));
}

Parts list_parts(std::span<const Watched> jobs) {
  std::string heads = "<th scope=\"col\">Job</th>";
  for (std::size_t i = 0; i < jobs.size(); ++i) {
    heads += column_head(jobs[i], i + 1);
  }
  const auto each = [&](auto &&cell) { return [&jobs, cell](std::size_t i) { return cell(jobs[i]); }; };
  const std::string rows =
      row("Saved at", jobs, each([](const Watched &w) { return clock_time(w.saved); })) +
      row("Faults of the file", jobs, each(faults_cell)) + row("May I weld?", jobs, each(verdict_cell)) +
      row("Numbers", jobs, each(numbers_cell)) +
      row("Rules that fail", jobs, each([](const Watched &w) { return rules_cell(w, Status::fail); })) +
      row("Cautions to weigh", jobs, each([](const Watched &w) { return rules_cell(w, Status::caution); })) +
      number_rows(jobs);
  return {
      {"table", "<div class=\"wide-table still\" tabindex=\"0\" role=\"region\" aria-label=\"Jobs\">\n<table "
                "class=\"side-by-side\">\n<thead><tr>" +
                    heads + "</tr></thead>\n<tbody>\n" + rows + "</tbody>\n</table>\n</div>\n"}};
}

std::string list_page(const Parts &parts, std::uint64_t version, std::string_view program_version) {
  return filled(web::watch_html, {{"policy", watch_policy()},
                                  {"style", std::string(web::page_css)},
                                  {"by", fmt::format("purgewright {}", safe(program_version))},
                                  {"watched", version_mark(version)},
                                  {"table", part("table", at(parts, "table"))},
                                  {"page_js", std::string(web::page_js)},
                                  {"watch_js", std::string(web::watch_js)}});
}

std::string watch_policy() {
  return report_policy(frame_of_watched());
}

} // namespace purgewright::html
