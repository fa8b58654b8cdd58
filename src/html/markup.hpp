// Pieces of a page: text made safe, bytes carried in it, the template filled in.
//
// Units, frame: none. Errors: std::runtime_error from packed(); std::logic_error where a template asks for
// what is not given. Guarantee: safe() leaves nothing that a browser reads as markup, in an element's text or
// in a quoted attribute. Source: HTML Living Standard, 13.1; RFC 1952 (gzip), RFC 4648 (base64). Private to
// html.
#pragma once

#include <map>
#include <string>
#include <string_view>

namespace purgewright::html {

std::string safe(std::string_view text);

// JSON that may stand within a script element.
std::string safe_json(std::string json);

std::string base64(std::string_view bytes);

// Compressed, then as base64, for the page's own `unpacked`.
std::string packed(std::string_view bytes);

// A template with each {{name}} replaced by its value; what stands in a value is left as it is.
std::string filled(std::string_view text, const std::map<std::string_view, std::string> &values);

// What a policy calls a script or a style of exactly this text: 'sha256-...'.
std::string policy_hash(std::string_view text);

} // namespace purgewright::html
