#include "purgewright/job/nearest.hpp"

#include "purgewright/job/keys.hpp"
#include "purgewright/standards/tables.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <iterator>
#include <limits>
#include <vector>

namespace purgewright::job {
namespace {

constexpr std::size_t none = std::numeric_limits<std::size_t>::max();

// Longer words are compared no further: a wrong key may be as long as the file.
constexpr std::size_t word_length_most = 64;

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

bool is_letter(char c) {
  return std::isalpha(static_cast<unsigned char>(c)) != 0;
}

char lower(char c) {
  return static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
}

// A third of the letters wrong is still a slip; more is another word.
std::size_t edits_allowed(std::string_view word) {
  return std::max<std::size_t>(1, (word.size() + 1) / 3);
}

std::string_view leaf(std::string_view path) {
  const auto dot = path.rfind('.');
  return dot == std::string_view::npos ? path : path.substr(dot + 1);
}

std::string join(std::string_view section, std::string_view name) {
  return section.empty() ? std::string(name) : std::string(section) + "." + std::string(name);
}

// Keys and subsections directly in a section, in file order.
std::vector<std::string_view> members(std::string_view section) {
  const std::string prefix = section.empty() ? "" : std::string(section) + ".";
  std::vector<std::string_view> found;
  for (const auto &info : fields()) {
    if (!info.path.starts_with(prefix)) {
      continue;
    }
    const auto rest = info.path.substr(prefix.size());
    const auto name = rest.substr(0, rest.find('.'));
    if (std::ranges::find(found, name) == found.end()) {
      found.push_back(name);
    }
  }
  return found;
}

struct Match {
  std::size_t distance = none;
  std::string path;
};

Match best_inside(std::string_view section, std::string_view wrong) {
  Match best;
  for (const auto name : members(section)) {
    if (const auto distance = edits(wrong, name); distance < best.distance) {
      best = {distance, join(section, name)};
    }
  }
  return best;
}

// A name of another section is meant with one slip at most.
constexpr std::size_t slips_elsewhere_most = 1;

// Every letter that one word is longer is an edit.
bool may_be_within(std::size_t most, std::string_view a, std::string_view b) {
  return std::max(a.size(), b.size()) - std::min(a.size(), b.size()) <= most;
}

Match best_elsewhere(std::string_view wrong) {
  Match best{.distance = slips_elsewhere_most + 1, .path = {}};
  for (const auto &info : fields()) {
    for (const auto name : {leaf(info.path), info.path}) {
      if (may_be_within(slips_elsewhere_most, wrong, name) && edits(wrong, name) < best.distance) {
        best = {edits(wrong, name), std::string(info.path)};
      }
    }
  }
  return best;
}

std::string digits_of(std::string_view word) {
  std::string digits;
  std::ranges::copy_if(word, std::back_inserter(digits), is_digit);
  return digits;
}

// Runs of letters and runs of other characters in turn: "titaniumgrade", "2".
std::vector<std::string_view> runs_of(std::string_view word) {
  std::vector<std::string_view> runs;
  for (std::size_t start = 0, end = 0; start < word.size(); start = end) {
    while (end < word.size() && is_letter(word[end]) == is_letter(word[start])) {
      ++end;
    }
    runs.push_back(word.substr(start, end - start));
  }
  return runs;
}

// A metal's symbols and numbers name it, so slips count in its long words alone; `none` for another metal.
std::size_t slips_in_words(std::string_view a, std::string_view b) {
  constexpr std::size_t long_word = 5; // letters
  const auto first = runs_of(a), second = runs_of(b);
  if (first.size() != second.size()) {
    return none;
  }
  std::size_t slips = 0;
  for (std::size_t i = 0; i < first.size(); ++i) {
    if (is_letter(first[i].front()) && first[i].size() >= long_word && second[i].size() >= long_word) {
      slips += edits(first[i], second[i]);
    } else if (first[i] != second[i]) {
      return none;
    }
  }
  return slips;
}

// Zirconium is three letters changed and one added from titanium.
constexpr std::size_t slips_in_metal_most = 2;

} // namespace

std::size_t edits(std::string_view a, std::string_view b) {
  if (a.size() > word_length_most || b.size() > word_length_most) {
    return none;
  }
  std::array<std::array<std::size_t, word_length_most + 1>, word_length_most + 1> d;
  for (std::size_t i = 0; i <= a.size(); ++i) {
    for (std::size_t j = 0; j <= b.size(); ++j) {
      if (i == 0 || j == 0) {
        d[i][j] = i + j;
        continue;
      }
      const bool same = lower(a[i - 1]) == lower(b[j - 1]);
      d[i][j] = std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, d[i - 1][j - 1] + (same ? 0 : 1)});
      if (i > 1 && j > 1 && lower(a[i - 1]) == lower(b[j - 2]) && lower(a[i - 2]) == lower(b[j - 1])) {
        d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
      }
    }
  }
  return d[a.size()][b.size()];
}

std::string_view nearest_choice(std::string_view word, std::span<const std::string_view> choices) {
  std::string_view best;
  std::size_t least = edits_allowed(word) + 1;
  for (const auto choice : choices) {
    if (digits_of(word) != digits_of(choice)) {
      continue;
    }
    if (const auto distance = edits(word, choice); distance < least) {
      least = distance;
      best = choice;
    }
  }
  return best;
}

std::string_view nearest_metal(std::string_view word, std::span<const std::string_view> choices) {
  const std::string plain = standards::plain_metal_name(word);
  std::string_view best;
  std::size_t least = slips_in_metal_most + 1;
  for (const auto metal : choices) {
    for (const auto name : standards::metal_names(metal)) {
      if (const auto distance = slips_in_words(plain, name); distance < least) {
        least = distance;
        best = metal;
      }
    }
  }
  return best;
}

std::string nearest_key(std::string_view section, std::string_view wrong) {
  const Match inside = best_inside(section, wrong);
  const Match elsewhere = best_elsewhere(wrong);
  // The very name in another section outweighs a vague likeness in this one.
  if (elsewhere.distance == 0 && inside.distance > 1) {
    return elsewhere.path;
  }
  if (inside.distance <= edits_allowed(wrong)) {
    return inside.path;
  }
  return elsewhere.path;
}

std::string nearest_path(std::string_view wrong) {
  const auto dot = wrong.rfind('.');
  const std::string_view section = dot == std::string_view::npos ? "" : wrong.substr(0, dot);
  std::string near =
      section.empty() || is_section(section) ? nearest_key(section, leaf(wrong)) : std::string();
  if (field(near) != nullptr) {
    return near;
  }
  std::vector<std::string_view> paths;
  std::ranges::transform(fields(), std::back_inserter(paths), &FieldInfo::path);
  return std::string(nearest_choice(wrong, paths));
}

std::string did_you_mean(std::string_view nearest) {
  return nearest.empty() ? std::string() : fmt::format("; did you mean '{}'?", nearest);
}

bool is_section(std::string_view path) {
  return std::ranges::any_of(fields(), [&](const FieldInfo &info) {
    return info.path.size() > path.size() && info.path.starts_with(path) && info.path[path.size()] == '.';
  });
}

std::string names_in(std::string_view section) {
  std::string text;
  for (const auto name : members(section)) {
    text += (text.empty() ? "" : ", ") + std::string(name);
  }
  return text;
}

} // namespace purgewright::job
