// Plans that name entries of catalogues: read, checked, saved, and flattened.
#include <map>
#include <string>
#include <utility>

#include <catch2/catch.hpp>

#include "plan/flatten.h"
#include "plan/named_entry.h"
#include "plan/plan_file.h"
#include "plan/plan_values.h"
#include "plan/plan_writer.h"
#include "plan/sample_plan.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

// Entries without a file.
class Hand : public EntrySource {
 public:
  void put(EntryKind kind, const std::string& name, std::map<std::string, EntryValue> values) {
    entries_[{kind, name}] = NamedEntry{kind, name, "shop.toml", 7, std::move(values)};
  }
  [[nodiscard]] Result<NamedEntry> find(EntryKind kind, const std::string& name) const override {
    const auto found = entries_.find({kind, name});
    if (found != entries_.end()) return found->second;
    Issue issue;
    issue.what = "is nowhere";
    return issue;
  }

 private:
  std::map<std::pair<EntryKind, std::string>, NamedEntry> entries_;
};

class Shop : public Hand {
 public:
  Shop() {
    put(EntryKind::spool, "S100",
        {{"spool.barrel_diameter", {63.0, "63 mm", 8}},
         {"spool.flange_diameter", {101.6, "4 in", 9}},
         {"spool.inside_width", {80.0, "80mm", 10}},
         {"spool.mass", {0.12, "0.12 kg", 11}}});
    put(EntryKind::fiber, "Wire", {{"fiber.diameter", {0.22, "0.22 mm", 8}}});
    put(EntryKind::machine, "W2",
        {{"traverse.free_length", {40.0, "40 mm", 8}},
         {"traverse.reversal.kind", {2.0, "ramp", 9}},
         {"traverse.reversal.turns", {0.25, "0.25", 10}},
         {"takeup.control", {2.0, "taper", 11}},
         {"takeup.taper", {0.3, "0.3", 12}}});
  }
};

constexpr const char* named = R"(# Begun by hand.
format = "lay-plan 1"
title = "Named"

[spool]
name = "S100"              # of the shelf
inside_width = "3 in"      # this one is narrower

[fiber]
name = "Wire"
friction = 0.5

[machine]
name = "W2"

[traverse]
motion = "continuous"
pitch = "0.235 mm"
left_stop = "0.12 mm"
right_stop = "0.12 mm"
start = "left"

[wind]
turns = 500
)";

PlanDraft read(const std::string& text, const EntrySource& shop) {
  const Result<PlanDraft> draft = read_plan(text, "a.lay.toml", &shop);
  INFO(sample::all_text(draft.issues()));
  REQUIRE(draft.ok());
  return draft.value();
}

std::string told(const std::string& text, const EntrySource* shop) {
  return sample::all_text(plan_from_text(text, "a.lay.toml", shop).issues());
}

}  // namespace

TEST_CASE("a plan has the values of the entries that it names, and its own keys win") {
  const Shop shop;
  const PlanDraft draft = read(named, shop);
  CHECK(draft.spool.barrel_diameter_mm == 63.0);
  CHECK(draft.spool.flange_diameter_mm == 101.6);
  CHECK(draft.spool.inside_width_mm == 76.2);  // its own
  CHECK(draft.spool.mass_kg == 0.12);
  CHECK(draft.fiber.diameter_mm == 0.22);
  CHECK(draft.traverse.free_length_mm == 40.0);
  CHECK(draft.traverse.reversal.kind == ReversalKind::ramp);
  CHECK(draft.traverse.reversal.turns == 0.25);
  REQUIRE(draft.takeup);
  CHECK(draft.takeup->control == TensionControl::taper);
  CHECK(draft.entries.size() == 3);
  CHECK(draft.origins.at("spool.flange_diameter").written == "4 in");
  CHECK(draft.origins.at("spool.flange_diameter").line == sample::line_of(named, "name = \"S100\""));
  CHECK(check(draft).ok());
}

TEST_CASE("where its keys stand does not matter to who wins") {
  const Shop shop;
  std::string text = named;
  text.replace(text.find("name = \"S100\""), 13, "");
  text.replace(text.find("inside_width = \"3 in\""), 21, "inside_width = \"3 in\"\nname = \"S100\"");
  CHECK(read(text, shop).spool.inside_width_mm == 76.2);
  CHECK(same_plan(read(text, shop), read(named, shop)));
}

TEST_CASE("a name that cannot be looked up is told once, with what to do") {
  const std::string nowhere = told(named, nullptr);
  CHECK_THAT(nowhere, Contains("a.lay.toml:6: error: spool.name = \"S100\"") && Contains("check --flatten"));
  CHECK_THAT(nowhere, Contains("fiber.name") && Contains("machine.name"));
  CHECK_THAT(nowhere, !Contains("barrel_diameter") && !Contains("is missing"));
  const Hand other;
  CHECK_THAT(told(named, &other), Contains("machine.name = \"W2\": is nowhere"));
  std::string text = named;
  text.replace(text.find("\"S100\""), 6, "100");
  CHECK_THAT(told(text, &other), Contains("spool.name = 100: must be the name of a catalogue's entry, in quotes"));
}

TEST_CASE("what neither the plan nor its entry has is missing") {
  const Shop shop;
  std::string text = named;
  text.replace(text.find("friction = 0.5"), 14, "");
  CHECK_THAT(told(text, &shop), Contains("fiber.friction: is missing; add it below [fiber]") &&
                                    Contains("the entry \"Wire\" of shop.toml, line 7 does not tell it"));
}

TEST_CASE("an entry's value that does not go with the plan says where it comes from") {
  Shop shop;
  shop.put(EntryKind::fiber, "Wire", {{"fiber.diameter", {90.0, "90 mm", 8}}});
  CHECK_THAT(told(named, &shop), Contains("fiber.diameter = \"90 mm\"") &&
                                     Contains("it comes from the entry \"Wire\" of shop.toml, line 7"));
}

TEST_CASE("only spool, fiber and machine have names") {
  const Shop shop;
  std::string text = named;
  text.replace(text.find("motion = "), 9, "name = \"W2\"\nmotion = ");
  CHECK_THAT(told(text, &shop), Contains("traverse.name"));
  text = named;
  text.replace(text.find("name = \"W2\""), 11, "name = \"W2\"\nfree_length = \"1 mm\"");
  CHECK_THAT(told(text, &shop), Contains("machine.free_length") && Contains("move it to [traverse]"));
}

TEST_CASE("a flattened plan is the same plan, and stands alone") {
  const Shop shop;
  const PlanDraft draft = read(named, shop);
  const std::string flat = flattened(named, draft);
  const Result<PlanDraft> alone = read_plan(flat, "a.lay.toml");
  INFO(flat << sample::all_text(alone.issues()));
  REQUIRE(alone.ok());
  CHECK(alone.value().entries.empty());
  CHECK(same_plan(alone.value(), without_entries(draft)));
  CHECK_THAT(flat, Contains("# S100 of the catalogue shop.toml, line 7              # of the shelf\n") &&
                       Contains("flange_diameter = \"4 in\"\n") && Contains("# Begun by hand.\n") &&
                       Contains("inside_width = \"3 in\"      # this one is narrower\n") &&
                       Contains("kind = \"ramp\"\nturns = 0.25\n"));
  // One without names stays as it is.
  CHECK(flattened(sample::full, sample::draft_of()) == sample::full);
}

TEST_CASE("names of dotted keys and inline tables are flattened too") {
  const Shop shop;
  std::string text = named;
  text.replace(text.find("[spool]\n"), text.find("\n[fiber]") - text.find("[spool]\n"),
               "[machine]\nname = \"W2\"\n");
  text.replace(text.rfind("[machine]\nname = \"W2\"\n"), 22, "");
  text.replace(text.find("title = "), 8, "spool = { name = \"S100\", inside_width = \"3 in\" }\ntitle = ");
  const PlanDraft draft = read(text, shop);
  const Result<PlanDraft> alone = read_plan(flattened(text, draft), "a.lay.toml");
  INFO(flattened(text, draft) << sample::all_text(alone.issues()));
  REQUIRE(alone.ok());
  CHECK(same_plan(alone.value(), without_entries(draft)));
}

TEST_CASE("saving a plan that names entries writes only what was changed") {
  const Shop shop;
  const PlanDraft before = read(named, shop);
  CHECK(write_plan(named, before, before) == named);

  PlanDraft after = before;
  after.spool.barrel_diameter_mm = 60.0;
  after.traverse.pitch_mm = 0.24;
  const std::string saved = write_plan(named, before, after);
  CHECK_THAT(saved, Contains("name = \"S100\"              # of the shelf\n") &&
                        Contains("barrel_diameter = \"60 mm\"\n") && Contains("pitch = \"0.24 mm\"\n") &&
                        !Contains("flange_diameter"));
  CHECK(same_plan(read(saved, shop), after));
}

TEST_CASE("a plan that lets an entry go keeps what it gave") {
  const Shop shop;
  const PlanDraft before = read(named, shop);
  PlanDraft after = before;
  after.entries.erase(after.entries.begin());
  after.spool.mass_kg = std::nullopt;
  const std::string saved = write_plan(named, before, after);
  CHECK_THAT(saved, Contains("barrel_diameter = \"63 mm\"") && !Contains("name = \"S100\"") &&
                        Contains("\"Wire\"") && Contains("# of the shelf") && !Contains("mass"));
  CHECK(same_plan(read(saved, shop), after));
}

TEST_CASE("a fresh file stands alone") {
  const Shop shop;
  const PlanDraft draft = read(named, shop);
  const Result<PlanDraft> alone = read_plan(write_plan(draft), "a.lay.toml");
  REQUIRE(alone.ok());
  CHECK(same_plan(alone.value(), without_entries(draft)));
}

TEST_CASE("a value that is taken back falls to the entry's") {
  const Shop shop;
  PlanDraft draft = read(named, shop);
  clear_value(draft, "spool.inside_width");
  CHECK(draft.spool.inside_width_mm == 80.0);
  CHECK(draft.entries.size() == 3);
  CHECK(draft.fiber.diameter_mm == 0.22);
}

TEST_CASE("a missing first line does not hide the other issues") {
  const std::string text = sample::with("pitch = \"0.26 mm\"\nleft", "pitch = \"0.26\"\nleft",
                                        sample::with("format = \"lay-plan 1\"\n", ""));
  const std::string all = told(text, nullptr);
  CHECK_THAT(all, Contains("format: is missing; begin the plan with the line: format = \"lay-plan 1\"") &&
                      Contains("traverse.pitch") && Contains("has no unit"));
  // Rules between values are held, too.
  const std::string crossed =
      sample::with("\"236 mm\"", "\"100 mm\"", sample::with("format = \"lay-plan 1\"\n", ""));
  CHECK_THAT(told(crossed, nullptr), Contains("format: is missing") && Contains("the flange must be larger"));
  // What has nothing of a plan is told that alone.
  CHECK(plan_from_text("a = 1\n", "a.toml").issues().size() == 1);
  CHECK(plan_from_text("format = \"lay-plan 9\"\n[spool]\nnonsense = 1\n", "a.toml").issues().size() == 1);
}
