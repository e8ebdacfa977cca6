#include "plan/plan_writer.h"

#include <cmath>
#include <filesystem>
#include <fstream>
#include <limits>
#include <random>

#include "plan/fields.h"
#include "sample_plan.h"
#include "temporary_folder.h"

using namespace laywright;
namespace fs = std::filesystem;

namespace {

// What one change makes of a text.
template <class Change>
std::string saved(std::string_view original, Change change) {
  const PlanDraft before = sample::draft_of(original);
  PlanDraft after = before;
  change(after);
  const std::string text = write_plan(original, before, after);
  INFO(text);
  CHECK(same_plan(sample::draft_of(text), after));
  return text;
}

double random_share(std::mt19937_64& random) { return static_cast<double>(random() >> 11U) * 0x1p-53; }

template <class Owner>
void randomise(const std::vector<Field<Owner>>& fields, Owner& owner, std::mt19937_64& random) {
  for (const auto& field : fields) {
    if (random() % 3 == 0) continue;
    const double low = field.range.low;
    const double high = std::min(field.range.high, 1e6);
    double value = low + (high - low) * random_share(random);
    if (random() % 2 == 0) value = std::round(value * 100.0) / 100.0;
    if (field.kind == FieldKind::choice || field.kind == FieldKind::whole) value = std::floor(value + 0.5);
    if (field.kind == FieldKind::friction && random() % 4 == 0) value = Fiber::held;
    field.set(owner, value);
  }
}

std::string random_text(std::mt19937_64& random) {
  static constexpr std::string_view letters[] = {
      "a", " ", "\"", "\\", "\n", "\r", "\t", "\x01", "#", "'", "\xc3\xa9", "\xf0\x9f\xa7\xb5", "=", "\x7f"};
  std::string text;
  for (std::uint64_t i = random() % 30; i > 0; --i) text += letters[random() % std::size(letters)];
  return text;
}

PlanDraft random_draft(std::mt19937_64& random) {
  PlanDraft draft;
  draft.title = random_text(random);
  draft.notes = random_text(random);
  for (const OrderField& field : order_fields()) {
    if (random() % 2 == 0) draft.order.*field.text = random_text(random);
  }
  randomise(plan_fields(), draft, random);
  if (random() % 2 == 0) draft.takeup.reset();
  draft.wind.steps.resize(random() % 4);
  for (WindStep& step : draft.wind.steps) randomise(step_fields(), step, random);
  return draft;
}

// The units of another draft's origins, as if it had been read from a file in these.
void take_units(PlanDraft& draft, std::mt19937_64& random) {
  for (const auto& field : plan_fields()) {
    if (field.kind != FieldKind::quantity) continue;
    const std::vector<const Unit*> units = units_of(field.dimension);
    draft.origins[field.path()] = {1, "1 " + std::string(units[random() % units.size()]->name)};
  }
}

}  // namespace

TEST_CASE("a fresh file reads back as the same plan, to the last bit, in any unit") {
  std::mt19937_64 random(11);
  for (int i = 0; i < 500; ++i) {
    PlanDraft draft = random_draft(random);
    if (i % 2 == 0) take_units(draft, random);
    const std::string text = write_plan(draft);
    INFO(text);
    const Result<PlanDraft> read = read_plan(text, "");
    INFO(sample::all_text(read.issues()));
    REQUIRE(read.ok());
    REQUIRE(same_plan(read.value(), draft));
  }
}

TEST_CASE("any plan can be saved over any other") {
  std::mt19937_64 random(12);
  for (int i = 0; i < 300; ++i) {
    const std::string original = i % 2 == 0 ? std::string(sample::full) : write_plan(random_draft(random));
    const PlanDraft before = sample::draft_of(original);
    const PlanDraft after = random_draft(random);
    const std::string text = write_plan(original, before, after);
    INFO(original << "\n=====\n" << text);
    const Result<PlanDraft> read = read_plan(text, "");
    REQUIRE(read.ok());
    REQUIRE(same_plan(read.value(), after));
    // Edited, not written afresh: the comments of the sample are still there.
    if (i % 2 == 0) REQUIRE(text.find("# A plan for tests.") == 0);
  }
}

TEST_CASE("a plan without change is saved as it was, byte for byte") {
  CHECK(saved(sample::full, [](PlanDraft&) {}) == sample::full);
}

TEST_CASE("a changed value stays where it was and in its unit, and nothing else changes") {
  const std::string text = saved(sample::full, [](PlanDraft& d) {
    d.spool.inside_width_mm = 100.5;
    d.wind.length_mm = 2.5e6;
    d.wind.line_speed_mm_per_s = 500.0;
    d.fiber.friction = Fiber::held;
    d.traverse.reversal.kind = ReversalKind::instant;
    d.wind.steps[1].from_layer = 21;
  });
  std::string expected = sample::with("\"95 mm\"   # between", "\"100.5 mm\"   # between");
  expected = sample::with("\"3 km\"", "\"2.5 km\"", expected);
  expected = sample::with("\"60 m/min\"", "\"30 m/min\"", expected);
  expected = sample::with("friction = 0.5", "friction = \"held\"", expected);
  expected = sample::with("\"dwell\"", "\"instant\"", expected);
  expected = sample::with("from_layer = 20", "from_layer = 21", expected);
  CHECK(text == expected);
}

TEST_CASE("the person's unit, spacing and quotes are kept") {
  const std::string original =
      sample::with("\"150 mm\"", "'6in'  # old stock", sample::with("\"236 mm\"", "\"9.3 in\""));
  const std::string text = saved(original, [](PlanDraft& d) {
    d.spool.barrel_diameter_mm = 127.0;
    d.spool.flange_diameter_mm = 203.2;
  });
  CHECK(text.find("barrel_diameter = '5in'  # old stock\n") != std::string::npos);
  CHECK(text.find("flange_diameter = \"8 in\"\n") != std::string::npos);
}

TEST_CASE("new keys go to their tables, new tables to the end") {
  const std::string small = R"(format = "lay-plan 1"   # first

[spool]
  barrel_diameter = "150 mm"   # measured
  flange_diameter = "236 mm"
  inside_width = "95 mm"

# The fiber.
[fiber]
diameter = "0.245 mm"
friction = 0.5

[traverse]
pitch = "0.26 mm"
left_stop = "0.13 mm"
right_stop = "0.13 mm"
free_length = "200 mm"

[wind]
length = "3 km")";
  const std::string text = saved(small, [](PlanDraft& d) {
    d.title = "New";
    d.spool.mass_kg = 1.5;
    d.fiber.max_tension_N = 8.0;
    d.traverse.reversal.kind = ReversalKind::dwell;
    d.traverse.reversal.turns = 2.0;
    d.limits.gap_d = 0.7;
    d.takeup.emplace();
    d.wind.steps.push_back({5, 0.27, std::nullopt, std::nullopt});
  });
  CHECK(text == R"(format = "lay-plan 1"   # first
title = "New"

[spool]
  barrel_diameter = "150 mm"   # measured
  flange_diameter = "236 mm"
  inside_width = "95 mm"
  mass = "1.5 kg"

# The fiber.
[fiber]
diameter = "0.245 mm"
friction = 0.5
max_tension = "8 N"

[traverse]
pitch = "0.26 mm"
left_stop = "0.13 mm"
right_stop = "0.13 mm"
free_length = "200 mm"

[traverse.reversal]
kind = "dwell"
turns = 2

[wind]
length = "3 km"

[[wind.step]]
from_layer = 5
pitch = "0.27 mm"

[takeup]
control = "constant torque"
length_stop = "stop"

[limits]
gap = 0.7
)");
}

TEST_CASE("what was taken out of a plan leaves its file") {
  const std::string text = saved(sample::full, [](PlanDraft& d) {
    d.spool.mass_kg.reset();
    d.takeup.reset();
    d.wind.steps.erase(d.wind.steps.begin());
    d.wind.length_mm.reset();
    d.wind.turns = 1000.0;
  });
  std::string expected = sample::with("mass = \"0.9 kg\"\n", "");
  expected = sample::with("length = \"3 km\"\n", "", expected);
  expected = sample::with("line_speed = \"60 m/min\"\n", "line_speed = \"60 m/min\"\nturns = 1000\n", expected);
  expected = sample::with(sample::full.substr(sample::full.find("[[wind.step]]\nfrom_layer = 10"),
                                              sample::full.find("[[wind.step]]\nfrom_layer = 20") -
                                                  sample::full.find("[[wind.step]]\nfrom_layer = 10")),
                          "", expected);
  const std::size_t takeup = expected.find("[takeup]");
  expected.erase(takeup, expected.find("[limits]") - takeup);
  CHECK(text == expected);
}

TEST_CASE("steps that come and go leave the comments of the others") {
  const std::string original = sample::with("from_layer = 20", "from_layer = 20  # second");
  const std::string text = saved(original, [](PlanDraft& d) {
    d.wind.steps.insert(d.wind.steps.begin() + 1, WindStep{15, std::nullopt, 0.2, std::nullopt});
    d.wind.steps.insert(d.wind.steps.begin(), WindStep{2, 0.25, std::nullopt, std::nullopt});
  });
  CHECK(text.find("line_speed = \"60 m/min\"\n\n[[wind.step]]\nfrom_layer = 2\npitch = \"0.25 "
                  "mm\"\n\n[[wind.step]]\nfrom_layer = 10\n") != std::string::npos);
  CHECK(
      text.find(
          "[[wind.step]]\nfrom_layer = 15\nleft_stop = \"0.2 mm\"\n\n[[wind.step]]\nfrom_layer = 20  # second\n") !=
      std::string::npos);
}

TEST_CASE("inline tables, dotted keys, CRLF and a byte order mark are kept") {
  std::string original = "\xef\xbb\xbf# top\nformat = \"lay-plan 1\"\n";
  original +=
      R"(spool = { barrel_diameter = "150 mm", flange_diameter = "236 mm", inside_width = "95 mm", mass = "1 kg" }
fiber.diameter = "0.245 mm"
fiber.friction = 0.5 # guess
[traverse]
pitch = "0.26 mm"
left_stop = "0.13 mm"
right_stop = "0.13 mm"
free_length = "200 mm"
reversal = { }
[wind]
length = "3 km"
step = [ { from_layer = 3, pitch = "0.27 mm" } ] # later
)";
  std::string crlf;
  for (const char c : original) crlf += c == '\n' ? std::string("\r\n") : std::string(1, c);
  const std::string text = saved(crlf, [](PlanDraft& d) {
    d.spool.barrel_diameter_mm = 151.0;
    d.spool.flange_taper_rad = 0.1;
    d.spool.mass_kg.reset();
    d.fiber.friction = 0.6;
    d.fiber.max_tension_N = 8.0;
    d.traverse.reversal.turns = 0.5;
    d.wind.steps[0].pitch_mm = 0.28;
  });
  std::string plain;
  for (const char c : text) {
    if (c != '\r') plain += c;
  }
  CHECK(std::count(text.begin(), text.end(), '\r') == std::count(text.begin(), text.end(), '\n'));
  std::string expected = sample::with("150 mm", "151 mm", original);
  expected = sample::with(", mass = \"1 kg\" }", ", flange_taper = \"5.7295779513082321 deg\" }", expected);
  expected =
      sample::with("friction = 0.5 # guess\n", "friction = 0.6 # guess\nfiber.max_tension = \"8 N\"\n", expected);
  expected = sample::with("{ }", "{ turns = 0.5  }", expected);
  expected =
      sample::with("{ from_layer = 3, pitch = \"0.27 mm\" }", "{ from_layer = 3, pitch = \"0.28 mm\" }", expected);
  expected = sample::with("[ { from_layer", "[{ from_layer", sample::with("} ] # later", "}] # later", expected));
  CHECK(plain == expected);
}

TEST_CASE("a plan is saved whole and loads again, one that cannot be said is refused") {
  const testing::TemporaryFolder folder;
  const fs::path path = folder.path() / "save.lay.toml";
  PlanDraft draft = sample::draft_of();
  const Result<std::string> fresh = save_plan(path, draft);
  REQUIRE(fresh.ok());
  REQUIRE(load_plan(path).ok());
  CHECK(same_plan(load_plan(path).value().draft(), draft));

  PlanDraft changed = draft;
  changed.spool.mass_kg = 2.0;
  const Result<std::string> edited = save_plan(path, fresh.value(), draft, changed);
  REQUIRE(edited.ok());
  CHECK(read_plan_text(path).value() == edited.value());
  CHECK(same_plan(load_plan(path).value().draft(), changed));

  changed.spool.mass_kg = std::numeric_limits<double>::quiet_NaN();
  const Result<std::string> refused = save_plan(path, edited.value(), draft, changed);
  REQUIRE_FALSE(refused.ok());
  CHECK(refused.issues()[0].key == "spool.mass");
  CHECK(read_plan_text(path).value() == edited.value());
  fs::remove(path);
  CHECK_FALSE(save_plan(path / "x" / "y", draft).ok());
}

TEST_CASE("a text that cannot be read gives way to a fresh file") {
  const PlanDraft draft = sample::draft_of();
  CHECK(write_plan("no plan [[[", draft, draft) == write_plan(draft));
}

TEST_CASE("text that is not UTF-8 does not spoil the file") {
  PlanDraft draft = sample::draft_of();
  PlanDraft after = draft;
  after.title = "caf\xe9";
  const std::string text = write_plan(sample::full, draft, after);
  CHECK(text == sample::with("\"Every key\"", "\"caf\xef\xbf\xbd\""));
  CHECK(read_plan(write_plan(after), "").ok());
}
