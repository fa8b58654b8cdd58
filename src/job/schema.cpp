#include "purgewright/job/schema.hpp"

#include "job/defaults.hpp"
#include "job/limits.hpp"
#include "purgewright/job/keys.hpp"
#include "purgewright/job/nearest.hpp"
#include "purgewright/standards/tables.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace purgewright::job {
namespace {

using Json = nlohmann::ordered_json;
using units::Dimension;

// Decimal number, fraction or mixed number; a sign stands before it and a unit behind.
constexpr std::string_view number_pattern =
    R"((?:(?:[0-9]+[ -])?[0-9]+/[0-9]+|(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?))";

// The pattern only catches a missing unit and the commonest mix-ups: the program knows far more units than an
// editor should, and its own message is better.
std::string_view unit_pattern(Dimension dimension) {
  switch (dimension) {
  case Dimension::flow:
    return R"((?:[^0-9\s/+.,-].*(?:/|-1| per ).*|[sS]?(?:[cC][fF][hHmM]|[lL][pP][mM]|[cC][cC][mM])))";
  case Dimension::velocity:
    return R"((?:[^0-9\s/+.,-].*(?:/|-1| per ).*|[iI][pP][mM]))";
  case Dimension::price:
    return R"([A-Z]{3} ?/ ?\S.*)";
  case Dimension::pressure:
    return R"([^0-9\s/+.,-].*)";
  default:
    return R"([^0-9\s/+.,-][^/]*)";
  }
}

Json quantity_schema(const FieldInfo &info) {
  const std::string_view sign = info.least < 0.0 ? "[+-]?" : R"(\+?)";
  Json schema;
  if (info.dimension == Dimension::ratio) {
    schema["type"] = {"number", "string"};
    schema["minimum"] = info.least;
    schema["maximum"] = info.most;
    schema["pattern"] =
        fmt::format(R"(^\s*{}{}\s*(?:{})?$)", sign, number_pattern, unit_pattern(info.dimension));
    return schema;
  }
  schema["type"] = "string";
  schema["pattern"] = fmt::format(R"(^\s*{}{}\s*{}$)", sign, number_pattern, unit_pattern(info.dimension));
  return schema;
}

// YAML reads "revision: 2" as a number; the program takes it as text.
Json text_schema(const FieldInfo &info) {
  Json schema;
  if (info.key == Key::job_name) {
    schema["type"] = {"string", "integer"};
    schema["pattern"] = "^[A-Za-z0-9_][A-Za-z0-9_-]{0,63}$";
    return schema;
  }
  schema["type"] = {"string", "number"};
  schema["maxLength"] = static_cast<int>(info.most);
  return schema;
}

Json list_schema() {
  Json schema;
  schema["type"] = "array";
  schema["maxItems"] = 200;
  schema["items"]["type"] = {"string", "number"};
  schema["items"]["maxLength"] = 200;
  return schema;
}

// A plain name in any case, with blanks and dashes wherever they may stand.
std::string any_spelling(std::string_view plain) {
  constexpr std::string_view blanks = "[ _-]*";
  std::string pattern(blanks);
  for (const char c : plain) {
    if (c >= 'a' && c <= 'z') {
      pattern += fmt::format("[{}{}]", c, static_cast<char>(c - 'a' + 'A'));
    } else {
      pattern += c == '.' ? std::string("[.]") : std::string(1, c);
    }
    pattern += blanks;
  }
  return pattern;
}

// The table's names, which editors offer, or a usual name; YAML reads "3.7165" and "304" as numbers.
Json metal_schema(const FieldInfo &info) {
  Json names, numbers, schema;
  std::vector<std::string> spellings;
  for (const auto metal : info.choices) {
    names["enum"].push_back(metal);
    for (const auto name : standards::metal_names(metal)) {
      spellings.push_back(any_spelling(name));
      if (name.find_first_not_of("0123456789.") == std::string_view::npos) {
        numbers["enum"].push_back(Json::parse(name));
      }
    }
  }
  Json other;
  other["type"] = "string";
  other["pattern"] = fmt::format("^(?:{})$", fmt::join(spellings, "|"));
  schema["anyOf"] = {names, other, numbers};
  return schema;
}

Json choice_schema(const FieldInfo &info) {
  if (names_metal(info)) {
    return metal_schema(info);
  }
  Json schema;
  for (const auto choice : info.choices) {
    schema["enum"].push_back(choice);
  }
  return schema;
}

Json count_schema(const FieldInfo &info) {
  Json schema;
  schema["type"] = "integer";
  schema["minimum"] = static_cast<int>(info.least);
  schema["maximum"] = static_cast<int>(info.most);
  return schema;
}

Json value_schema(const FieldInfo &info) {
  switch (info.kind) {
  case FieldKind::quantity:
    return quantity_schema(info);
  case FieldKind::count:
    return count_schema(info);
  case FieldKind::choice:
    return choice_schema(info);
  case FieldKind::text_list:
    return list_schema();
  case FieldKind::text:
    break;
  }
  return text_schema(info);
}

std::string description(const FieldInfo &info) {
  std::string text{info.meaning};
  if (info.kind != FieldKind::choice) {
    text += fmt::format(" Allowed: {}.", allowed_values(info));
  }
  if (const Fallback &f = fallback(info.key); f.set) {
    text += fmt::format(" Default: {}.", f.reason);
  }
  return text;
}

Json field_schema(const FieldInfo &info) {
  Json schema;
  schema["description"] = description(info);
  schema.update(value_schema(info));
  return schema;
}

Json empty_section() {
  Json schema;
  schema["type"] = "object";
  schema["additionalProperties"] = false;
  return schema;
}

// The section that holds the path's last name, made with its parents when it is not there yet.
Json &section_of(Json &root, std::string_view path, bool required) {
  Json *section = &root;
  for (auto dot = path.find('.'); dot != std::string_view::npos; dot = path.find('.')) {
    const std::string name(path.substr(0, dot));
    path.remove_prefix(dot + 1);
    if (!(*section)["properties"].contains(name)) {
      (*section)["properties"][name] = empty_section();
      if (required) {
        (*section)["required"].push_back(name);
      }
    }
    section = &(*section)["properties"][name];
  }
  return *section;
}

void require_one_of(Json &section, std::string_view first, std::string_view second) {
  for (const auto name : {first, second}) {
    Json one;
    one["required"].push_back(name);
    section["oneOf"].push_back(one);
  }
}

} // namespace

std::string job_schema_json() {
  Json root;
  root["$schema"] = "https://json-schema.org/draft/2020-12/schema";
  root["title"] = "purgewright job";
  root["description"] = "An argon weld-purge fixture for one tube and cap. Every quantity takes a unit.";
  root.update(empty_section());
  for (const auto &info : fields()) {
    const std::string name(info.path.substr(info.path.rfind('.') + 1));
    Json &section = section_of(root, info.path, info.required);
    section["properties"][name] = field_schema(info);
    if (info.required) {
      section["required"].push_back(name);
    }
  }
  require_one_of(root["properties"]["tube"], "wall", "inside_diameter");
  return root.dump(2) + "\n";
}

} // namespace purgewright::job
