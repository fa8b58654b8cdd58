#include "html/markup.hpp"

#include <catch2/catch.hpp>

#include <stdexcept>
#include <string>

using namespace purgewright::html;

TEST_CASE("text becomes safe in an element and in a quoted attribute") {
  CHECK(safe("plug & <b>\"bore\"</b> 'x'") == "plug &amp; &lt;b&gt;&quot;bore&quot;&lt;/b&gt; &#39;x&#39;");
  CHECK(safe("12 µm ≤ 3/8 in") == "12 µm ≤ 3/8 in");
}

TEST_CASE("JSON within a script cannot end it") {
  CHECK(safe_json(R"({"a":"</script><!--"})") == R"({"a":"\u003c/script>\u003c!--"})");
}

TEST_CASE("base64 as RFC 4648, section 10, gives it") {
  CHECK(base64("").empty());
  CHECK(base64("f") == "Zg==");
  CHECK(base64("fo") == "Zm8=");
  CHECK(base64("foo") == "Zm9v");
  CHECK(base64("foob") == "Zm9vYg==");
  CHECK(base64("foobar") == "Zm9vYmFy");
}

// SHA-256 of "abc" is FIPS 180-4's example, ba7816bf...15ad; here in base64.
TEST_CASE("a script is allowed by its hash") {
  CHECK(policy_hash("abc") == "'sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0='");
}

TEST_CASE("a template takes its values as they are, and none may be missing") {
  CHECK(filled("<p>{{a}} {{b}}</p>", {{"a", "{{b}}"}, {"b", "x"}}) == "<p>{{b}} x</p>");
  CHECK_THROWS_AS(filled("{{c}}", {}), std::logic_error);
  CHECK_THROWS_AS(filled("{{c", {{"c", "x"}}), std::logic_error);
}

TEST_CASE("packed bytes are gzip's, and the same each time") {
  const std::string text(100'000, 'a');
  CHECK(packed(text) == packed(text));
  CHECK(packed(text).size() < 1000);
  CHECK(packed("x").starts_with("H4sI")); // 1f 8b 08, as RFC 1952 has it
}
