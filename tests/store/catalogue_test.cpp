#include <string>

#include <catch2/catch.hpp>

#include "base/issue.h"
#include "store/catalogue.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

constexpr const char* sound = R"(format = "lay-catalogue 1"

[[spool]]
name = "Small"
source = "measured"
barrel_diameter = "50 mm"
flange_diameter = "4 in"

[[machine]]
name = "Winder 2"
source = "measured"
[machine.traverse]
free_length = "50 mm"
[machine.traverse.reversal]
kind = "ramp"
turns = 0.25
[machine.takeup]
control = "taper"
)";

std::string with(const std::string& old_piece, const std::string& new_piece) {
  std::string text = sound;
  const std::size_t at = text.find(old_piece);
  REQUIRE(at != std::string::npos);
  return text.replace(at, old_piece.size(), new_piece);
}

std::string told(const std::string& text) {
  std::string all;
  for (const Issue& issue : read_catalogue(text, "shop.toml").issues) all += to_text(issue) + '\n';
  return all;
}

}  // namespace

TEST_CASE("a catalogue's entries have the values of their keys, with line and spelling") {
  const Catalogue catalogue = read_catalogue(sound, "shop.toml");
  CHECK(told(sound).empty());
  REQUIRE(catalogue.entries.size() == 2);
  const NamedEntry& spool = catalogue.entries[0].named;
  CHECK(spool.kind == EntryKind::spool);
  CHECK(spool.name == "Small");
  CHECK(spool.file == "shop.toml");
  CHECK(spool.line == 3);
  CHECK(catalogue.entries[0].source == "measured");
  CHECK(spool.values.size() == 2);
  const EntryValue& flange = spool.values.at("spool.flange_diameter");
  CHECK(flange.value == 101.6);  // 4 x 25.4
  CHECK(flange.written == "4 in");
  CHECK(flange.line == 7);

  const NamedEntry& machine = catalogue.entries[1].named;
  CHECK(machine.kind == EntryKind::machine);
  CHECK(machine.values.size() == 4);
  CHECK(machine.values.at("traverse.free_length").value == 50.0);
  CHECK(machine.values.at("traverse.reversal.kind").value == 2.0);  // instant, dwell, ramp
  CHECK(machine.values.at("traverse.reversal.turns").value == 0.25);
  CHECK(machine.values.at("takeup.control").written == "taper");
}

TEST_CASE("what is wrong in a catalogue is told with its line, and the other entries stay") {
  const std::string broken = with("\"50 mm\"", "50");
  CHECK_THAT(told(broken), Contains("shop.toml:6: error: spool.barrel_diameter = 50: has no unit"));
  REQUIRE(read_catalogue(broken, "shop.toml").entries.size() == 1);
  CHECK(read_catalogue(broken, "shop.toml").entries[0].named.name == "Winder 2");

  CHECK_THAT(told(with("\"50 mm\"", "\"-50 mm\"")), Contains("shop.toml:6: error: spool.barrel_diameter") &&
                                                        Contains("out of range") && Contains("above 0 mm"));
  CHECK_THAT(told(with("barrel_diameter", "barel_diameter")), Contains("did you mean spool.barrel_diameter?"));
  CHECK_THAT(told(with("[[spool]]", "[[spools]]")), Contains("is no list of a catalogue"));
  CHECK_THAT(told(with("[[spool]]", "[spool]")), Contains("[[spool]]"));
  CHECK_THAT(told(with("lay-catalogue 1", "lay-plan 1")), Contains("does not say that this is a catalogue"));
  CHECK_THAT(told(with("lay-catalogue 1", "lay-catalogue 2")), Contains("perhaps of a newer version"));
  CHECK_THAT(told(with("format = \"lay-catalogue 1\"", "")), Contains("format = \"lay-catalogue 1\""));
  CHECK_THAT(told(with("source = \"measured\"", "")),
             Contains("spool.source: is missing: where its figures come from"));
  CHECK_THAT(told(with("name = \"Small\"", "")), Contains("spool.name: is missing"));
  CHECK_THAT(told(with("\"Small\"", "\"\"")), Contains("spool.name"));
  CHECK_THAT(told("format = \"lay-catalogue 1\"\n[[fiber]]\nname = \"a\"\nsource = \"b\"\n"),
             Contains("has no values"));
}

TEST_CASE("a machine has what belongs to it whatever is wound") {
  CHECK_THAT(told(with("free_length = \"50 mm\"", "pitch = \"1 mm\"")), Contains("it belongs to a wind"));
  CHECK_THAT(told(with("free_length = \"50 mm\"", "left_stop = \"1 mm\"")), Contains("it belongs to a wind"));
  CHECK_THAT(told(with("[machine.traverse]", "[machine.spool]")), Contains("is not a key that a machine may have"));
  CHECK_THAT(told(with("barrel_diameter = \"50 mm\"", "traverse.pitch = \"1 mm\"")),
             Contains("is not a key that a spool may have"));
}

TEST_CASE("two entries of one name are one too many") {
  const std::string twice =
      std::string(sound) + "[[spool]]\nname = \"Small\"\nsource = \"b\"\nbarrel_diameter = \"60 mm\"\n";
  CHECK_THAT(told(twice), Contains("is the name of another spool too, in line 3"));
  CHECK(read_catalogue(twice, "shop.toml").entries.size() == 2);
  // Of another kind it may be.
  CHECK(told(std::string(sound) + "[[fiber]]\nname = \"Small\"\nsource = \"b\"\ndiameter = \"1 mm\"\n").empty());
}
