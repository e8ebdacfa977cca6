// The catalogues that come with the program, held against closed forms and each other.
#include <cmath>
#include <numbers>
#include <string>

#include <catch2/catch.hpp>

#include "base/issue.h"
#include "plan/plan_file.h"
#include "plan/plan_values.h"
#include "plan/revision.h"
#include "store/catalogues.h"

using namespace laywright;

namespace {

Shelf shipped() { return Catalogues({{LAYWRIGHT_SOURCE_DIR "/samples/catalogue", true}}).all(); }

double value(const NamedEntry& entry, const std::string& path) {
  INFO(entry.name << ": " << path);
  REQUIRE(entry.values.count(path) == 1);
  return entry.values.at(path).value;
}

bool begins(const std::string& text, const std::string& front) { return text.rfind(front, 0) == 0; }

}  // namespace

TEST_CASE("the shipped catalogues can be read, and each entry says where it comes from") {
  const Shelf shelf = shipped();
  for (const Issue& issue : shelf.issues) UNSCOPED_INFO(to_text(issue));
  CHECK(shelf.issues.empty());
  CHECK(shelf.of(EntryKind::spool).size() == 7);
  for (const CatalogueEntry& entry : shelf.entries) {
    INFO(entry.named.name);
    const char* origin = entry.named.kind == EntryKind::machine ? "invented" : "from memory";
    CHECK(entry.source.find(origin) != std::string::npos);
  }
}

// ASTM B258: 0.005 in x 92^((36 - n) / 39), so that gauge 36 is .005 in and gauge 0000 (-3) is .46 in.
TEST_CASE("the wire gauge is the closed formula") {
  int seen = 0;
  const Shelf shelf = shipped();
  for (const CatalogueEntry* entry : shelf.of(EntryKind::fiber)) {
    if (!begins(entry->named.name, "AWG ")) continue;
    const int gauge = std::stoi(entry->named.name.substr(4));
    const double inches = 0.005 * std::pow(92.0, (36 - gauge) / 39.0);
    CHECK(value(entry->named, "fiber.diameter") == Approx(25.4 * inches).epsilon(0.002));
    CHECK(value(entry->named, "fiber.core_diameter") == value(entry->named, "fiber.diameter"));
    ++seen;
  }
  CHECK(seen == 33);
}

// Copper of 8.89 g/cm3: mass of the core.
TEST_CASE("copper wire weighs what its copper does") {
  int seen = 0;
  const Shelf shelf = shipped();
  for (const CatalogueEntry* entry : shelf.of(EntryKind::fiber)) {
    if (begins(entry->named.name, "ITU")) continue;
    const double d = value(entry->named, "fiber.core_diameter");
    CHECK(value(entry->named, "fiber.linear_mass") == Approx(8.89e3 * std::numbers::pi / 4.0 * d * d).epsilon(0.01));
    CHECK(value(entry->named, "fiber.diameter") >= d);
    ++seen;
  }
  CHECK(seen == 44);
}

// Glass of 2.20 g/cm3, coating of 1.12; the proof stress of 690 MPa on the glass.
TEST_CASE("optical fiber weighs and bears what its glass and coating do") {
  int seen = 0;
  const Shelf shelf = shipped();
  for (const CatalogueEntry* entry : shelf.of(EntryKind::fiber)) {
    if (!begins(entry->named.name, "ITU")) continue;
    const double glass = value(entry->named, "fiber.core_diameter"), all = value(entry->named, "fiber.diameter");
    CHECK(glass == 0.125);
    const double quarter_pi = std::numbers::pi / 4.0;
    CHECK(value(entry->named, "fiber.linear_mass") ==
          Approx(1e3 * quarter_pi * (2.20 * glass * glass + 1.12 * (all * all - glass * glass))).epsilon(0.01));
    CHECK(value(entry->named, "fiber.max_tension") == Approx(690.0 * quarter_pi * glass * glass).epsilon(0.01));
    ++seen;
  }
  CHECK(seen == 2);
}

// The magnet wire of samples/, nominal .2 mm, has the same figures from another hand.
TEST_CASE("enamelled wire lies between its copper and its greatest diameter") {
  const auto entry =
      Catalogues({{LAYWRIGHT_SOURCE_DIR "/samples/catalogue"}}).find(EntryKind::fiber, "IEC 60317 0.200 grade 1");
  REQUIRE(entry.ok());
  CHECK(value(entry.value(), "fiber.diameter") == 0.22);
  CHECK(value(entry.value(), "fiber.core_diameter") == 0.2);
}

// By their size: flange, and a barrel of .62 to .65 of it; the 100 is that of samples/magnet-wire.lay.toml.
TEST_CASE("delivery spools grow with their size") {
  double before = 0.0;
  const Shelf shelf = shipped();
  for (const CatalogueEntry* entry : shelf.of(EntryKind::spool)) {
    const double flange = value(entry->named, "spool.flange_diameter");
    CHECK(entry->named.name == "IEC 60264 " + std::to_string(static_cast<int>(flange)));
    const double barrel = value(entry->named, "spool.barrel_diameter");
    CHECK(barrel / flange > 0.62);
    CHECK(barrel / flange < 0.65);
    CHECK(barrel > before);
    before = barrel;
    if (flange == 100.0) CHECK(value(entry->named, "spool.inside_width") == 80.0);
  }
}

// One truth: the sample stands alone, with the tables of the machine that it speaks of.
TEST_CASE("the sample with dials has the machine of the catalogue") {
  const Catalogues catalogues({{LAYWRIGHT_SOURCE_DIR "/samples/catalogue", true}});
  const Result<NamedEntry> entry = catalogues.find(EntryKind::machine, "Bench winder");
  REQUIRE(entry.ok());
  const Result<Plan> sample = load_plan(LAYWRIGHT_SOURCE_DIR "/samples/dialled.lay.toml");
  REQUIRE(sample.ok());
  CHECK(sample.value().draft().machine == entry.value().dials);
  for (const auto& [path, given] : entry.value().values) {
    INFO(path);
    CHECK(value_at(sample.value().draft(), path) == given.value);
  }
  // And a plan that names it is laid alike.
  std::string text = read_plan_text(LAYWRIGHT_SOURCE_DIR "/samples/dialled.lay.toml").value();
  text = text.substr(0, text.find("[machine.dials.pitch]")) + "[machine]\nname = \"Bench winder\"\n";
  const Result<Plan> named = plan_from_text(text, "a.lay.toml", &catalogues);
  REQUIRE(named.ok());
  CHECK(revision_of(named.value().draft()) == revision_of(sample.value().draft()));
  CHECK(named.value().traverse().pitch_mm == Approx(41 * 0.00625));
}
