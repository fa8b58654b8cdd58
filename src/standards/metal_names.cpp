#include "purgewright/standards/tables.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <string>

namespace purgewright::standards {
namespace {

using Names = std::span<const std::string_view>;

constexpr auto grade_2 = std::to_array<std::string_view>(
    {"titaniumgrade2", "grade2", "gr2", "tigrade2", "tigr2", "titaniumgr2", "cp2", "cpgrade2", "ticp2",
     "cptitaniumgrade2", "titaniumcp2", "r50400", "3.7035"});
constexpr auto grade_9 = std::to_array<std::string_view>(
    {"titaniumgrade9", "grade9", "gr9", "tigrade9", "tigr9", "titaniumgr9", "ti3al2.5v", "titanium3al2.5v",
     "3al2.5v", "ti32.5", "32.5", "r56320", "3.7195"});
constexpr auto grade_5 = std::to_array<std::string_view>(
    {"titanium6al4v", "titaniumgrade5", "grade5", "gr5", "tigrade5", "tigr5", "titaniumgr5", "ti6al4v",
     "6al4v", "ti64", "64", "r56400", "3.7165", "3.7164"});
constexpr auto al_6082 =
    std::to_array<std::string_view>({"aluminium6082", "aluminum6082", "al6082", "6082", "6082t6", "aw6082",
                                     "enaw6082", "enaw6082t6", "alsi1mgmn", "3.2315"});
constexpr auto al_6061 =
    std::to_array<std::string_view>({"aluminium6061", "aluminum6061", "al6061", "6061", "6061t6", "aw6061",
                                     "enaw6061", "enaw6061t6", "a96061", "3.3211"});
constexpr auto steel_304 = std::to_array<std::string_view>(
    {"stainless304", "304", "ss304", "aisi304", "stainlesssteel304", "s30400", "x5crni1810", "1.4301"});
constexpr auto copper_c110 = std::to_array<std::string_view>(
    {"copperc110", "c110", "c11000", "copperc11000", "cuetp", "copperetp", "cw004a"});

struct Row {
  std::string_view metal;
  Names names;
};
const std::array<Row, 7> rows{{{"titanium-grade-2", grade_2},
                               {"titanium-grade-9", grade_9},
                               {"titanium-6al-4v", grade_5},
                               {"aluminium-6082", al_6082},
                               {"aluminium-6061", al_6061},
                               {"stainless-304", steel_304},
                               {"copper-c110", copper_c110}}};

} // namespace

std::string plain_metal_name(std::string_view name) {
  std::string plain;
  for (const char c : name) {
    if (c != ' ' && c != '-' && c != '_') {
      plain += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    }
  }
  return plain;
}

std::string_view metal_called(std::string_view name) {
  const std::string plain = plain_metal_name(name);
  for (const Row &row : rows) {
    if (std::ranges::find(row.names, plain) != row.names.end()) {
      return row.metal;
    }
  }
  return {};
}

std::span<const std::string_view> metal_names(std::string_view metal) {
  const auto *row = std::ranges::find(rows, metal, &Row::metal);
  return row == rows.end() ? Names{} : row->names;
}

} // namespace purgewright::standards
