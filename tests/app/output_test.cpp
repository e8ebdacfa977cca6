// What goes to standard output and standard error.
#include <algorithm>
#include <string>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "app/program.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

// Clears the screen, rings, begins a line of its own, and turns the direction of writing.
const std::string trick = "\x1b[2J\x07\ntrick\xe2\x80\xae";

bool does_nothing_to_a_terminal(const std::string& text) {
  return std::none_of(text.begin(), text.end(),
                      [](unsigned char c) { return (c < 0x20 && c != '\n') || c == 0x7f; }) &&
         text.find("\xe2\x80\xae") == std::string::npos && text.find("\ntrick") == std::string::npos;
}

}  // namespace

TEST_CASE("no title, name of a file or value of an option does anything to the terminal but stand there") {
  const Workshop shop;
  std::string plan = small_plan();
  plan.replace(plan.find("\"Small\""), 7, R"("\u001b[2J\u0007\ntrick\u202e")");
  const std::string name = "a" + trick + ".lay.toml", quoted = "'" + name + "'", bad = "'" + trick + "'";
  shop.write(name, plan);
  shop.write("untitled" + trick + ".lay.toml", small_plan().erase(22, 16));
  shop.write("bad" + trick + ".lay.toml", "format = \"lay-plan 1\"\n");
  shop.write("m" + trick + ".csv", "layer,layer_turns\n1,18\n2,18\n");
  const std::string files = quoted + " 'untitled" + trick + ".lay.toml'";
  for (const std::string& command :
       {"check " + files + " 'bad" + trick + ".lay.toml' nowhere" + bad,
        "lay " + quoted,
        "lay 'untitled" + trick + ".lay.toml'",
        "lay " + quoted + " --json",
        "lay " + quoted + " --out r" + bad,
        "lay " + quoted + " --fidelity " + bad,
        "lay " + quoted + " --no-such" + bad,
        "no-such" + bad,
        "sheet " + quoted + " -o " + bad,
        "sheet " + quoted + " -o nowhere" + bad + "/a.pdf",
        "picture " + quoted + " -o a.png --view " + bad,
        "picture " + quoted + " -o a.png --until " + bad,
        "export " + quoted + " -o a" + bad + ".glb",
        "export " + quoted + " -o a" + bad,
        "export " + quoted + " --frames f" + bad + " --size 64x64 --seconds 0.5 --fps 2",
        "cause " + quoted,
        "cause " + quoted + " --finding 999",
        "improve " + quoted + " --trials 8 -o b" + bad,
        "improve " + quoted + " --weights " + bad,
        "improve " + quoted + " --keep " + bad,
        "fit --template " + quoted,
        "fit " + quoted + " 'm" + trick + ".csv'",
        "fit " + quoted + " nowhere" + bad,
        "capacity " + quoted + " --fidelity 0.1",
        "study " + quoted + " --vary traverse.pitch=0.5mm:0.6mm:3 --out s" + bad,
        "study " + quoted + " --vary " + bad,
        "study --merge nowhere" + bad,
        "share " + quoted + " -o nowhere" + bad + "/a"}) {
    const Ran ran = shop.run("$LW " + command);
    CAPTURE(command, ran.out, ran.err);
    CHECK(ran.out.size() + ran.err.size() > 0);
    CHECK(does_nothing_to_a_terminal(ran.out));
    CHECK(does_nothing_to_a_terminal(ran.err));
  }
  const nlohmann::json laid = nlohmann::json::parse(shop.run("$LW lay " + quoted + " --json").out);
  CHECK(laid.at("plan").at("title") == trick);
  CHECK(laid.at("plan").at("file") == name);
}

TEST_CASE("a title without end is a problem of the plan, which says how long it may be") {
  const Workshop shop;
  const auto titled = [](std::size_t length) {
    std::string plan = small_plan();
    std::string title;
    for (std::size_t i = 0; i < length; ++i) title += "\xc3\xa9";
    return plan.replace(plan.find("Small"), 5, title);
  };
  shop.write("long.lay.toml", titled(10'000));
  shop.write("just.lay.toml", titled(100));
  const Ran ran = shop.run("$LW check long.lay.toml");
  CHECK(ran.code == 1);
  CHECK(ran.err ==
        "long.lay.toml:2: error: title: is too long, 10000 characters; leave the rest to the notes (allowed: up to "
        "100 characters)\n");
  CHECK(shop.run("$LW check just.lay.toml").code == 0);
}

TEST_CASE("what cannot be written is not done, whatever it is") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  for (const char* command : {"--help", "--version", "lay --help", "check a.lay.toml", "lay a.lay.toml",
                              "capacity a.lay.toml --json", "fit a.lay.toml --template"}) {
    CAPTURE(command);
    const Ran ran = shop.run("$LW " + std::string(command) + " >/dev/full");
    CHECK(ran.code == 3);
    CHECK_THAT(ran.err, Contains("cannot write"));
  }
  // Of a warning, too.
  std::string warned = small_plan();
  warned.replace(warned.find("\"instant\"\n"), 10, "\"instant\"\nturns = 5\n");  // not used, and told
  shop.write("warned.lay.toml", warned);
  REQUIRE(shop.run("$LW check warned.lay.toml").code == 0);
  REQUIRE_FALSE(shop.run("$LW check warned.lay.toml").err.empty());
  CHECK(shop.run("$LW check warned.lay.toml 2>/dev/full").code == 3);
}
