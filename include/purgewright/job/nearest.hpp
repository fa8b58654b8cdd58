// Nearest right word for a wrong one, by edits: letters added, dropped, changed or two neighbours swapped.
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>

namespace purgewright::job {

// Edits between two words, case ignored; swapped neighbours count once (optimal string alignment).
std::size_t edits(std::string_view a, std::string_view b);

// The choice a typing slip away from the word, empty when none is near. Other digits are another choice.
std::string_view nearest_choice(std::string_view word, std::span<const std::string_view> choices);

// The metal among the choices that the word misspells, empty when it may be the name of another: symbols and
// numbers must be right, in the words two letters may be wrong.
std::string_view nearest_metal(std::string_view word, std::span<const std::string_view> metals);

// Full path of the key meant by a wrong key in a section ("" for the top): a near name in that section, or
// the same name in another section. Empty when none is near.
std::string nearest_key(std::string_view section, std::string_view wrong);

// The key meant by a whole path, "fixtur.wall"; empty when none is near.
std::string nearest_path(std::string_view wrong);

// What a message ends with: "; did you mean 'fixture.wall'?", nothing where nothing is near.
std::string did_you_mean(std::string_view nearest);

// Whether keys stand below this path, "tube" or "gas.hose".
bool is_section(std::string_view path);

// Names that may stand directly in a section, "material, outside_diameter, ...".
std::string names_in(std::string_view section);

} // namespace purgewright::job
