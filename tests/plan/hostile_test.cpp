// Input that nobody who means well would write: each gives a clear error. How soon: tests/bench/bench_plan.
#include <random>

#include <fmt/format.h>

#include "plan/plan_writer.h"
#include "sample_plan.h"

using namespace laywright;

namespace {

std::string repeated(std::string_view piece, std::size_t times) {
  std::string text;
  text.reserve(piece.size() * times);
  for (std::size_t i = 0; i < times; ++i) text += piece;
  return text;
}

std::string in_quotes(const std::string& text) { return fmt::format("\"{}\"", text); }

// The issues, none of them overlong or with bytes that a terminal would act on.
Issues survived(std::string_view text) {
  const Issues issues = sample::issues_in(text);
  CHECK(issues.size() <= 101);
  for (const Issue& issue : issues) {
    const std::string line = to_text(issue);
    CHECK(line.size() < 1200);
    const bool clean = std::none_of(line.begin(), line.end(),
                                    [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; });
    CHECK(clean);
  }
  return issues;
}

void refused(std::string_view text, std::string_view says) {
  const Issues issues = survived(text);
  INFO(sample::all_text(issues));
  REQUIRE(has_error(issues));
  CHECK(sample::all_text(issues).find(says) != std::string::npos);
}

const std::string head = "format = \"lay-plan 1\"\n";

}  // namespace

TEST_CASE("files that are too large or no text") {
  refused(repeated("# comment\n", 1'000'000), "is larger than 1 MB");
  refused(std::string(10'000'000, '['), "is larger than 1 MB");
  refused(std::string("\x7f"
                      "ELF\x02\x01\x01\0\0\0",
                      10),
          "is not a text file");
  refused(sample::with("Every key", std::string("a\0b", 3)), "is not a text file");
  refused(std::string(1000, '\xff'), "UTF-8");
  refused(
      "\xff\xfe"
      "f\x01",
      "UTF-8");
  refused("", "is missing; begin the plan with");
  refused("\n\n\n", "is missing; begin the plan with");
  refused("\xef\xbb\xbf", "is missing; begin the plan with");
}

TEST_CASE("deep nesting is refused before it can overflow the stack") {
  refused(head + "a = " + std::string(900'000, '['), "nests brackets or dotted keys deeper than 16");
  refused(head + "a = " + repeated("{a=", 300'000), "nests brackets or dotted keys deeper than 16");
  refused(head + std::string(900'000, '['), "nests brackets or dotted keys deeper than 16");
  refused(head + repeated("a.", 400'000) + "a = 1", "nests brackets or dotted keys deeper than 16");
  refused(head + "[" + repeated("a.", 400'000) + "a]", "nests brackets or dotted keys deeper than 16");
  refused(head + "a = [\n" + repeated("[\n", 400'000), "nests brackets or dotted keys deeper than 16");
  CHECK(survived(head + "a = " + std::string(900'000, '[')).at(0).line == 2);
  // In texts and comments brackets and dots mean nothing.
  CHECK(survived(sample::with("\"none\"", in_quotes(std::string(100, '[') + std::string(100, '.')))).empty());
  CHECK(survived(sample::with("\"none\"", in_quotes(in_quotes(in_quotes(repeated("a.b[\n", 100)))))).empty());
  CHECK(survived(sample::with("\"none\"", fmt::format("'''\\{}'''", std::string(100, '[')))).empty());
  CHECK(survived(sample::with("# between", std::string(100, '#') + std::string(100, '['))).empty());
}

TEST_CASE("very many mistakes are told in part and counted") {
  std::string text(sample::full);
  for (int i = 0; i < 40'000; ++i) text += "unknown_" + std::to_string(i) + " = 1\n";
  const Issues issues = survived(text);
  REQUIRE(issues.size() == 101);
  CHECK(issues.back().what == "has 39900 more issues, not listed here");
}

TEST_CASE("very many tables, steps, keys") {
  std::string tables(sample::full), steps(sample::full);
  for (int i = 0; i < 40'000; ++i) tables += "[t" + std::to_string(i) + "]\n";
  CHECK(survived(tables).size() == 101);
  const std::size_t tail = steps.find("[takeup]");
  std::string many;
  for (int i = 0; i < 9'000; ++i)
    many += "[[wind.step]]\nfrom_layer = " + std::to_string(21 + i) + "\npitch = \"0.26 mm\"\n";
  steps.insert(tail, many);
  CHECK_FALSE(has_error(survived(steps)));
  const std::string none = repeated("[[wind.step]]\n", 60'000);
  CHECK(survived(std::string(sample::full) + none).size() == 101);
}

TEST_CASE("very long keys and values") {
  const std::string is_long(400'000, 'a');
  refused(head + is_long + " = 1\n", "is not a key of a lay plan");
  refused(sample::with("\"0.26 mm\"", in_quotes(is_long)), "is longer than 100 characters");
  refused(sample::with("\"0.26 mm\"", in_quotes(std::string(90, '9') + " mm")), "is out of range");
  refused(sample::with("\"0.26 mm\"", in_quotes(std::string(99'000, '9') + " mm")), "is longer than 100 characters");
  refused(sample::with("friction = 0.5", "friction = " + std::string(400'000, '9')), "");
  refused(sample::with("friction = 0.5", "friction = 0." + std::string(400'000, '9')), "");
  refused(sample::with("\"stepped\"", in_quotes(is_long)), "is not one of the choices");
  refused(sample::with("\"lay-plan 1\"", in_quotes(is_long)), "does not say that this is a lay plan");
  refused(sample::with("\"Every key\"", in_quotes(is_long)), "is too long, 400000 characters");
  CHECK(survived(sample::with("\"Every key\"", in_quotes(repeated("\xc3\xa9", longest_title)))).empty());
}

TEST_CASE("characters that a terminal would act on are shown as codes") {
  refused(sample::with("\"0.26 mm\"", "\"\\u001b[2J mm\""), "\\x1b[2J mm");
  refused(head + "\"\\u001b[2J\" = 1\n", "\\x1b[2J");
  refused(head + "\"\\u0000\" = 1\n", "\\x00");
  refused(sample::with("title = ", "ti\x1btle = "), "");
}

TEST_CASE("numbers at and beyond the edge") {
  for (const char* number : {"nan", "-nan", "+inf", "-inf", "1e400", "-1e400", "9223372036854775808",
                             "0x7fffffffffffffff", "1e308", "-0.0"}) {
    for (const char* key : {"friction = 0.5", "turns = 0.5", "gap = 0.6", "from_layer = 20", "taper = 0.3"}) {
      const std::string text(key);
      const std::string line = text.substr(0, text.find('=') + 2) + number;
      INFO(line);
      const Issues issues = survived(sample::with(key, line));
      if (std::string_view(number) != "-0.0" || text.find("from_layer") == 0) CHECK(has_error(issues));
    }
  }
}

namespace {

// One random change to a text: bytes changed, put in, taken out, doubled, or words of the language strewn in.
void mutate(std::string& text, std::mt19937_64& random) {
  static constexpr std::string_view words[] = {
      "[",       "]",  "[[",   "]]",  "{",         "}",     "=",      "\"", "'",     "\"\"\"", "'''",
      "#",       ".",  ",",    "\n",  "\r\n",      "nan",   "inf",    "-",  "1e400", "true",   "1979-05-27",
      "\\u0000", "\\", "\xff", " mm", "wind.step", "spool", "format", "0x", "_",     "\t",     "\x7f"};
  const auto place = [&] { return text.empty() ? 0 : random() % text.size(); };
  switch (random() % 6) {
    case 0:
      if (!text.empty()) text[place()] = static_cast<char>(random() % 256);
      break;
    case 1: text.erase(place(), random() % 20); break;
    case 2: text.insert(place(), words[random() % std::size(words)]); break;
    case 3: {
      const std::size_t at = place();
      text.insert(place(), text.substr(at, random() % 60));
      break;
    }
    case 4:
      if (random() % 8 == 0) text.resize(place());
      break;
    default:
      if (!text.empty()) text[place()] = text[place()];
  }
}

}  // namespace

TEST_CASE("thousands of spoilt plans are read, checked and saved without harm") {
  std::mt19937_64 random(2024);
  int sound = 0;
  int unsound = 0;
  for (int i = 0; i < 6000; ++i) {
    std::string text(sample::full);
    for (std::uint64_t n = 1 + random() % 3; n > 0; --n) mutate(text, random);
    const Result<Plan> plan = plan_from_text(text, "a.lay.toml");
    REQUIRE(plan.ok() != has_error(plan.issues()));
    ++(plan.ok() ? sound : unsound);
    for (const Issue& issue : plan.issues()) REQUIRE_FALSE(issue.what.empty());
    const Result<PlanDraft> read = read_plan(text, "a.lay.toml");
    if (!read.ok()) continue;
    // What can be read can be saved over, wherever the mutation put things.
    PlanDraft after = read.value();
    after.spool.inside_width_mm += 1.0;
    after.spool.mass_kg = 1.25;
    after.traverse.reversal.turns = 3.0;
    after.title += "!";
    const Result<PlanDraft> again = read_plan(write_plan(text, read.value(), after), "a.lay.toml");
    INFO(text);
    REQUIRE(again.ok());
    REQUIRE(same_plan(again.value(), after));
  }
  // Both happen often, or the mutations would test nothing.
  CHECK(sound > 300);
  CHECK(unsound > 3000);
}
