// Edits of a plan's fields: what is typed, in which unit, and what is said of it.
#include "bench_for_tests.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

PlanState state_of_small() { return state_from_text(small_plan, "small.lay.toml").value(); }

const FieldRow& row_at(const std::vector<FieldRow>& rows, const std::string& path) {
  for (const FieldRow& row : rows) {
    if (row.path == path) return row;
  }
  FAIL("no row " << path);
  return rows.front();
}

}  // namespace

TEST_CASE("typed text: units, plain numbers, words") {
  const PlanState state = state_of_small();
  // 1 in = 25.4 mm exactly (international inch of 1959).
  CHECK(*value_at(with_text(state, "traverse.pitch", "0.05 in").draft, "traverse.pitch") ==
        Approx(1.27).epsilon(1e-15));
  CHECK(*value_at(with_text(state, "traverse.pitch", " 1.5 ").draft, "traverse.pitch") == 1.5);
  CHECK(*value_at(with_text(state, "traverse.pitch", "0.05", find_unit("in")).draft, "traverse.pitch") ==
        Approx(1.27).epsilon(1e-15));
  CHECK(*value_at(with_text(state, "fiber.friction", "held").draft, "fiber.friction") == Fiber::held);
  CHECK(*value_at(with_text(state, "fiber.friction", "0.3").draft, "fiber.friction") == 0.3);
  CHECK(with_text(state, "traverse.motion", "stepped").draft.traverse.motion == Motion::stepped);
}

TEST_CASE("typed text is understood as people write it") {
  const PlanState state = state_of_small();
  const auto typed = [&](const char* path, const char* text, const Unit* unit = nullptr) {
    return *value_at(with_text(state, path, text, unit).draft, path);
  };
  CHECK(typed("spool.inside_width", "1 1/4 in") == 31.75);  // 1.25 x 25.4
  CHECK(typed("spool.inside_width", "3\"") == 76.2);
  CHECK(typed("traverse.pitch", "0,26 mm") == 0.26);
  CHECK(typed("traverse.pitch", "1/2", find_unit("in")) == 12.7);
  CHECK(typed("fiber.friction", "0,3") == 0.3);
  // The unit that was meant is the field's from then on.
  const PlanState inches = with_text(state, "spool.inside_width", "2,5 inch");
  CHECK(inches.draft.origins.at("spool.inside_width").written == "2.5 in");
  // What may be a thousand is not.
  CHECK(has_error(issues_in(with_text(state, "wind.length", "1,250 m"))));
}

TEST_CASE("what cannot be read leaves the value and says why, until it is mended") {
  const PlanState state = state_of_small();
  const PlanState wrong = with_text(state, "traverse.pitch", "1 furlong");
  CHECK(*value_at(wrong.draft, "traverse.pitch") == 1.02);
  CHECK(has_error(issues_in(wrong)));
  CHECK_FALSE(same_state(state, wrong));
  const auto rows = field_rows(wrong, issues_in(wrong), Units::metric);
  CHECK(row_at(rows, "traverse.pitch").text == "1 furlong");
  REQUIRE(row_at(rows, "traverse.pitch").issues.size() == 1);
  CHECK_FALSE(row_at(rows, "traverse.pitch").issues.front().what.empty());
  CHECK(row_at(rows, "traverse.left_stop").issues.empty());

  const PlanState mended = with_text(wrong, "traverse.pitch", "1.02 mm");
  CHECK(same_state(mended, state));
  CHECK_FALSE(has_error(issues_in(mended)));
}

TEST_CASE("an emptied field: default, none, or missing") {
  PlanState state = with_text(state_of_small(), "traverse.guide_play", "0.2 mm");
  CHECK(*value_at(with_text(state, "traverse.guide_play", "").draft, "traverse.guide_play") == 0.0);
  state = with_text(state, "spool.mass", "1 kg");
  CHECK(value_at(state.draft, "spool.mass"));
  const PlanState light = with_text(state, "spool.mass", " ");
  CHECK_FALSE(value_at(light.draft, "spool.mass"));
  CHECK(*value_at(light.draft, "traverse.guide_play") == 0.2);
  CHECK(*value_at(light.draft, "traverse.pitch") == 1.02);
  const PlanState missing = with_text(state, "traverse.pitch", "");
  CHECK(missing.unread.count("traverse.pitch") == 1);
  CHECK(has_error(issues_in(missing)));
}

TEST_CASE("every field has a name, an explanation and a range, none is explained twice") {
  std::set<std::string_view> said;
  const auto look = [&](const FieldInfo& field) {
    INFO(field.path());
    const FieldHelp help = help_for(field.path());
    CHECK_FALSE(help.name.empty());
    CHECK(help.explanation.size() > 20);
    CHECK(help.explanation.back() == '.');
    CHECK(said.insert(help.explanation).second);
    CHECK_FALSE(allowed_text(field).empty());
    CHECK_FALSE(table_title(field.table).empty());
  };
  for (const auto& field : plan_fields()) look(field);
  for (const auto& field : step_fields()) look(field);
  for (const OrderField& field : order_fields()) {
    INFO(field.path());
    CHECK_FALSE(help_for(field.path()).name.empty());
    CHECK(help_for(field.path()).explanation.back() == '.');
    CHECK(said.insert(help_for(field.path()).explanation).second);
  }
  CHECK(table_title(order_table) == "Order");
  CHECK(help_for("traverse.colour").name.empty());
}

TEST_CASE("rows are shown in the wanted system of units") {
  PlanState state = with_text(state_of_small(), "spool.inside_width", "4 in");
  const auto metric = field_rows(state, {}, Units::metric);
  CHECK(row_at(metric, "spool.inside_width").text == "101.6");
  CHECK(row_at(metric, "spool.inside_width").unit->name == "mm");
  CHECK(row_at(metric, "spool.barrel_diameter").text == "100");
  const auto inch = field_rows(state, {}, Units::inch);
  CHECK(row_at(inch, "spool.inside_width").text == "4");
  CHECK(row_at(inch, "spool.barrel_diameter").text == "3.937");  // 100 / 25.4
  CHECK(row_at(inch, "spool.barrel_diameter").unit->name == "in");
  CHECK(row_at(inch, "wind.line_speed").text == "196.9");  // 60 m/min over 0.3048 m
  CHECK(row_at(inch, "spool.flange_taper").unit->name == "deg");
  for (const auto& field : plan_fields()) {
    for (const Units units : {Units::metric, Units::inch}) {
      const Unit* unit = unit_shown(field, "", units);
      INFO(field.path());
      CHECK((unit == nullptr) == (field.kind != FieldKind::quantity));
      if (unit != nullptr) CHECK(unit->dimension == field.dimension);
    }
  }
}

TEST_CASE("a value as it was written is shown to its last digit") {
  const PlanState state = with_text(state_of_small(), "traverse.pitch", "1.023456789 mm");
  CHECK(row_at(field_rows(state, {}, Units::metric), "traverse.pitch").text == "1.023456789");
}

TEST_CASE("fields that count for nothing say why") {
  const auto rows = field_rows(state_of_small(), {}, Units::metric);
  CHECK_FALSE(row_at(rows, "traverse.step_angle").idle.empty());
  CHECK_FALSE(row_at(rows, "traverse.reversal.turns").idle.empty());
  CHECK_FALSE(row_at(rows, "wind.length").idle.empty());
  CHECK(row_at(rows, "wind.turns").idle.empty());
  CHECK(row_at(rows, "traverse.pitch").idle.empty());
}

TEST_CASE("a step that is removed takes its issues along, those behind it move up") {
  PlanState state = state_of_small();
  for (int i = 0; i < 3; ++i) state = with_step_added(std::move(state));
  REQUIRE(state.draft.wind.steps.size() == 3);
  CHECK(state.draft.wind.steps[1].from_layer > state.draft.wind.steps[0].from_layer);
  state = with_text(state, "wind.step[1].pitch", "no");
  state = with_text(state, "wind.step[2].pitch", "1.1 mm");
  const PlanState first_gone = with_step_removed(state, 0);
  CHECK(first_gone.unread.count("wind.step[0].pitch") == 1);
  CHECK(*first_gone.draft.wind.steps[1].pitch_mm == 1.1);
  const PlanState wrong_gone = with_step_removed(state, 1);
  CHECK(wrong_gone.unread.empty());
  CHECK(wrong_gone.reading.empty());
  CHECK(*value_at(wrong_gone.draft, "wind.step[1].pitch") == 1.1);
  CHECK(field_at(wrong_gone.draft, "wind.step[2].pitch") == nullptr);
}

TEST_CASE("a wind that ends by another measure has that one alone, and is sound") {
  for (const WindEnd end : {WindEnd::length, WindEnd::diameter, WindEnd::turns}) {
    const PlanState state = with_wind_end(state_of_small(), end, nullptr);
    CHECK(wind_end_of(state.draft) == end);
    CHECK_FALSE(has_error(issues_in(state)));
    const Wind& wind = state.draft.wind;
    CHECK(int(wind.length_mm.has_value()) + int(wind.turns.has_value()) + int(wind.diameter_mm.has_value()) == 1);
  }
  // 100 turns on the bare barrel: at least 100 pi 100 mm.
  CHECK(*with_wind_end(state_of_small(), WindEnd::length, nullptr).draft.wind.length_mm ==
        Approx(100 * 3.14159265 * 100).epsilon(0.01));
}

TEST_CASE("a take-up comes and goes with all its fields") {
  PlanState state = with_text(state_of_small(), "takeup.taper", "0.5");
  CHECK(state.draft.takeup);
  state = with_takeup(state, false);
  CHECK_FALSE(state.draft.takeup);
  CHECK(same_state(state, state_of_small()));
  CHECK(with_takeup(state, true).draft.takeup);
}
