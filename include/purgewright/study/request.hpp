// What the program that builds the solids is asked, as one message, and what it answers, line by line.
//
// The message is CBOR and holds the bytes of the job and of the files it names, never a path to read them
// from. The answer's lines on stdout are
//   clash FIRST SECOND VOLUME   two parts that share so many cubic metres of metal; all of them come before
//   `view` made SHA256 PATH            a file it wrote, relative to the folder, with the hash of its bytes
//   view                        assembly, gas spaces, setup sheet and plots stand in the folder and have been
//   named fault TEXT                  what is wrong with the job, a file or the solids, for people; it ends
//   without `of` of SHA256                   last of all: the hash of the message it worked on
// and whatever else it says is a step that begins.
//
// Units: SI. Frame: none. Errors: BadMessage for a text that is no message or no answer.
// Guarantee: what is read back is what was written. Source: RFC 8949 (CBOR), through nlohmann-json.
#pragma once

#include "purgewright/checks/design.hpp"
#include "purgewright/checks/remedy.hpp"
#include "purgewright/job/sources.hpp"

#include <map>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace purgewright::study {

struct BadMessage : std::runtime_error {
  using std::runtime_error::runtime_error;
};

// What is made of a job: a folder to keep, or what its page shows.
enum class Extent { folder, page };

struct Request {
  job::Sources sources;
  std::vector<checks::Change> chosen; // for what the job leaves open
  std::string version;                // of the program that asks
  Extent extent = Extent::folder;
};

std::string to_message(const Request &);
Request read_message(std::string_view);

enum class Said { step, view, other }; // a step to show; `view`; whatever else

struct Answer {
  std::vector<checks::Clash> clashes;
  std::map<std::string, std::string> made; // SHA-256 by path
  std::string of;                          // SHA-256 of the message; empty until the last line
  std::string faults;                      // a line each
  std::string last_step;

  // Takes one line in.
  Said take(std::string_view line);
};

std::string clash_line(const checks::Clash &);
std::string made_line(std::string_view path, std::string_view sha256);
std::string of_line(std::string_view sha256);
std::string fault_line(std::string_view text);
inline constexpr std::string_view view_line = "view";

} // namespace purgewright::study
