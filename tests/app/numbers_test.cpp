// What is no number is refused wherever a number is due. The options are found in what the program says of itself.
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "app/program.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

// An option as --help shows it: "--zoom FACTOR=1".
struct Option {
  std::string command, name, value;
};

std::vector<std::string> lines_of(const std::string& text) {
  std::istringstream stream(text);
  std::vector<std::string> lines;
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

// Those of the program, or of a command that has commands of its own: "record add".
std::vector<std::string> commands(const Workshop& shop, const std::string& of = "") {
  std::vector<std::string> found;
  bool among_commands = false;
  const std::regex command("  ([a-z]+) .*");
  for (const std::string& line : lines_of(shop.run("$LW " + of + " --help").out)) {
    std::smatch match;
    if (line == "Subcommands:") among_commands = true;
    if (line.empty()) among_commands = false;
    if (!among_commands || !std::regex_match(line, match, command)) continue;
    const std::string name = of.empty() ? std::string(match[1]) : of + " " + std::string(match[1]);
    const std::vector<std::string> inner = of.empty() ? commands(shop, name) : std::vector<std::string>{};
    found.push_back(name);
    found.insert(found.end(), inner.begin(), inner.end());
  }
  return found;
}

// Values that are words: names of files, of choices, of keys alone.
bool is_a_word(const std::string& value) {
  static const std::set<std::string> words{"NAME", "WHAT", "DIR", "KEY", "TEXT", "WORD", "PLAN"};
  return words.contains(value) || value.starts_with("FILE");
}

std::vector<Option> options_with_numbers(const Workshop& shop) {
  std::vector<Option> found;
  const std::regex option(
      "  (?:-[a-z],)?(--[a-z-]+)(?:,--[a-z-]+)* ([A-Z][A-Z:/x|]*(?:=[A-Z][A-Z:]*)?)(?:[^A-Z:/x|].*)?");
  for (const std::string& command : commands(shop)) {
    for (const std::string& line : lines_of(shop.run("$LW " + command + " --help").out)) {
      // What an option goes with is no value of it.
      const std::string alone = std::regex_replace(line, std::regex(" (Excludes|Needs): \\S+"), "  ");
      std::smatch match;
      if (std::regex_match(alone, match, option) && !is_a_word(match[2])) {
        found.push_back({command, match[1], match[2]});
      }
    }
  }
  return found;
}

// The value's own shape with `number` in each place in turn: for "DEG:DEG", "nan:10" and "20:nan".
std::vector<std::string> spoiled(const std::string& shape, const std::string& number) {
  static const std::regex place("[A-Z]+");
  std::string plain = shape.substr(0, shape.find('|'));
  std::string before;
  if (plain.starts_with("KEY=")) {
    before = "fiber.friction=";
    plain = plain.substr(4);
  }
  std::vector<std::string> all;
  const auto count = std::distance(std::sregex_iterator(plain.begin(), plain.end(), place), std::sregex_iterator());
  for (std::ptrdiff_t bad = 0; bad < count; ++bad) {
    std::string text = before, rest = plain;
    std::smatch match;
    for (std::ptrdiff_t i = 0; std::regex_search(rest, match, place); ++i) {
      text += match.prefix().str() + (i == bad ? number : std::to_string(10 * (i + 1)));
      rest = match.suffix();
    }
    all.push_back(text + rest);
  }
  return all;
}

// What each command needs beside the option that is tried.
std::string arguments(const std::string& command) {
  if (command == "picture" || command == "sheet") return "a.lay.toml -o a.png";
  if (command == "share") return "a.lay.toml -o a.html";
  if (command == "export") return "a.lay.toml -o a.webp";
  if (command == "fit" || command == "follow") return "a.lay.toml a.csv";
  if (command == "profile") return "a.lay.toml a.png";
  if (command == "calibrate") return "pitch 30=\"0.2 mm\" 60=\"0.4 mm\"";
  if (command == "record add") return "a.lay.toml --spool-number 1 --records r.db";
  if (command == "record export") return "r.csv --records r.db";
  if (command.starts_with("record "))
    return command == "record list" || command == "record trends" ? "--records r.db" : "1 --records r.db";
  if (command == "lay") return "a.lay.toml --out reports";
  return "a.lay.toml";
}

}  // namespace

TEST_CASE("what is no number in range is refused by every option that takes one") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  shop.write("a.csv", "layer,turns\n1,18\n2,18\n");
  REQUIRE(shop.run("$LW record add a.lay.toml --spool-number 1 --records r.db").code == 0);
  const std::vector<Option> options = options_with_numbers(shop);
  std::set<std::string> names;
  for (const Option& option : options) {
    names.insert(option.name);
    for (const char* number : {"nan", "inf", "-inf", "1e400"}) {
      for (const std::string& value : spoiled(option.value, number)) {
        const std::string line =
            "$LW " + option.command + " " + arguments(option.command) + " " + option.name + "=" + value;
        CAPTURE(line);
        const Ran ran = shop.run(line);
        CAPTURE(ran.err);
        CHECK(ran.code == 2);
        CHECK_THAT(ran.err, Contains(option.name) || Contains("fiber.friction"));
        CHECK(ran.err.size() < 400);
      }
    }
  }
  // That the options were found at all.
  for (const char* known : {"--fidelity", "--zoom", "--cut", "--across", "--look-at", "--at-most", "--turns-error",
                            "--vary", "--weights", "--until", "--seed", "--from"}) {
    CAPTURE(known);
    CHECK(names.contains(known));
  }
}

TEST_CASE("a refusal says what is allowed, in a line") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  CHECK_THAT(shop.run("$LW lay a.lay.toml --fidelity nan").err,
             Contains("--fidelity: \"nan\" is no number from 0.05 to 8\n"));
  CHECK_THAT(shop.run("$LW picture a.lay.toml -o a.png --finding 0").err,
             Contains("--finding: \"0\" is no whole number from 1 to 1000000\n"));
  CHECK_THAT(shop.run("$LW lay a.lay.toml --seed -1").err, Contains("from 0 to 18446744073709551615"));
  for (const char* places : {"9:1", "4:4"}) {
    const Ran ran = shop.run("$LW picture a.lay.toml -o a.png --across " + std::string(places));
    CHECK(ran.code == 2);
    CHECK_THAT(ran.err, Contains("--across") && Contains("rising"));
  }
}
