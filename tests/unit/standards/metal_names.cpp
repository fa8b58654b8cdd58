// A shop's names of a metal. Grades and UNS numbers: ASTM B348/B348M, section 1.1 (seen); material numbers of
// DIN 17850 and 17851, EN 573-3, EN 10088-1 and EN 1412 from memory.
#include "purgewright/standards/tables.hpp"

#include <catch2/catch.hpp>

#include <map>
#include <set>
#include <string>

using namespace purgewright::standards;

TEST_CASE("the usual names of a metal are its name, whatever the case, blanks and dashes",
          "[unit][standards]") {
  for (const auto &[metal, names] : std::map<std::string, std::set<std::string>>{
           {"titanium-grade-2",
            {"Grade 2", "grade-2", "GRADE2", "CP2", "cp 2", "R50400", "r 50400", "3.7035", "Titanium Grade 2",
             "titanium-grade-2"}},
           {"titanium-6al-4v",
            {"Grade 5", "Ti-6Al-4V", "ti 6al 4v", "TI6AL4V", "6-4", "6 4", "Ti 6-4", "R56400", "3.7165",
             "titanium-6al-4v", "titanium-grade-5"}},
           {"titanium-grade-9",
            {"Grade 9", "Ti-3Al-2.5V", "ti3al2.5v", "3-2.5", "R56320", "3.7195", "titanium-grade-9"}},
           {"aluminium-6082", {"EN AW-6082", "6082-T6", "aluminum 6082", "3.2315"}},
           {"aluminium-6061", {"6061", "6061-T6", "aluminum-6061", "A96061"}},
           {"stainless-304", {"304", "AISI 304", "1.4301", "S30400", "stainless-304"}},
           {"copper-c110", {"C110", "C11000", "Cu-ETP", "CW004A"}}}) {
    for (const auto &name : names) {
      CAPTURE(name);
      CHECK(metal_called(name) == metal);
    }
  }
}

TEST_CASE("another metal's name is none of the table's", "[unit][standards]") {
  for (const char *name :
       {"",          "-",        "titanium", "Grade 1",  "Grade 3",       "Grade 4",    "Grade 7",
        "Grade 12",  "Grade 23", "Grade 25", "Grade 52", "Ti-6Al-4V ELI", "Ti-6Al-7Nb", "Ti-6Al-2Sn-4Zr-2Mo",
        "CP1",       "CP4",      "R56401",   "R50250",   "3.7025",        "3.7055",     "3.7235",
        "zirconium", "R60702",   "tantalum", "niobium",  "6083",          "316",        "C10200"}) {
    CAPTURE(name);
    CHECK(metal_called(name).empty());
  }
}

TEST_CASE("every metal of the table is called by its own name and title's grade, and no name means two",
          "[unit][standards]") {
  std::set<std::string_view> all;
  for (const Metal &row : metals()) {
    CAPTURE(row.name);
    CHECK(metal_called(row.name) == row.name);
    for (const auto name : metal_names(row.name)) {
      CAPTURE(name);
      CHECK(all.insert(name).second);
      CHECK(plain_metal_name(name) == name);
      CHECK(metal_called(name) == row.name);
    }
  }
  CHECK(metal_names("unobtainium").empty());
}
