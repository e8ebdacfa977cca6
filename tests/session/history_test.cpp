// Undo and redo hold their laws, whatever the edits: undoing all gives the original, redoing all the last state.
#include "bench_for_tests.h"

#include <random>

#include "desk/history.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

PlanState small_state() {
  Result<PlanState> state = state_from_text(small_plan, "small.lay.toml");
  REQUIRE(state.ok());
  return std::move(state).value();
}

// Any edit that a person could make.
PlanState edited(PlanState state, std::mt19937& random) {
  const auto& fields = plan_fields();
  const auto& field = fields[random() % fields.size()];
  const double share = static_cast<double>(random() % 1000) / 1000.0;
  switch (random() % 8) {
    case 0: return with_value(std::move(state), field.path(), std::nullopt);
    case 1: return with_text(std::move(state), field.path(), random() % 2 == 0 ? "12" : "what");
    case 2: return with_step_added(std::move(state));
    case 3: return state.draft.wind.steps.empty() ? state : with_step_removed(std::move(state), 0);
    case 4: return with_takeup(std::move(state), random() % 2 == 0);
    case 5: return with_title(std::move(state), std::to_string(random()));
    case 6: return with_wind_end(std::move(state), static_cast<WindEnd>(random() % 3), nullptr);
    default: break;
  }
  double value = field.range.low + share * std::min(100.0, field.range.high - field.range.low);
  if (field.kind == FieldKind::choice) value = static_cast<double>(random() % field.choices.size());
  return with_value(std::move(state), field.path(), value);
}

}  // namespace

TEST_CASE("random edits are undone to the original and redone to the last") {
  for (unsigned seed = 1; seed <= 60; ++seed) {
    INFO("seed " << seed);
    std::mt19937 random(seed);
    const PlanState original = small_state();
    History<PlanState> history(original);
    std::vector<PlanState> after;  // each step
    for (int i = 0; i < 40; ++i) {
      history.edit(edited(history.present(), random), "edit");
      after.push_back(history.present());
    }
    for (std::size_t i = after.size(); i-- > 0;) {
      REQUIRE(history.can_undo());
      REQUIRE(same_state(history.present(), after[i]));
      history.undo();
    }
    REQUIRE_FALSE(history.can_undo());
    REQUIRE(same_state(history.present(), original));
    while (history.can_redo()) history.redo();
    REQUIRE(same_state(history.present(), after.back()));
  }
}

TEST_CASE("an edit after undo ends the way forward") {
  History<int> history(0);
  history.edit(1, "a");
  history.edit(2, "b");
  history.undo();
  CHECK(history.redo_name() == "b");
  history.edit(3, "c");
  CHECK_FALSE(history.can_redo());
  history.undo();
  CHECK(history.present() == 1);
}

TEST_CASE("a field that is dragged is one step, another gesture or field a new one") {
  History<int> history(0);
  for (int i = 1; i <= 50; ++i) history.edit(i, "pitch", 7);
  for (int i = 51; i <= 60; ++i) history.edit(i, "pitch", 8);
  history.edit(61, "stop", 8);
  history.edit(62, "stop");
  history.edit(63, "stop");
  const int expected[] = {62, 61, 60, 50, 0};
  for (const int value : expected) {
    history.undo();
    CHECK(history.present() == value);
  }
  CHECK_FALSE(history.can_undo());
}

TEST_CASE("a gesture that was undone does not swallow the next edit") {
  History<int> history(0);
  history.edit(1, "pitch", 7);
  history.edit(2, "stop", 9);
  history.undo();
  history.edit(3, "pitch", 7);
  history.undo();
  CHECK(history.present() == 1);
}

TEST_CASE("the oldest steps are forgotten, the newest kept") {
  History<int> history(0);
  const int edits = static_cast<int>(History<int>::most_steps) + 10;
  for (int i = 1; i <= edits; ++i) history.edit(i, "x");
  int undone = 0;
  for (; history.can_undo(); history.undo()) ++undone;
  CHECK(undone == static_cast<int>(History<int>::most_steps));
  CHECK(history.present() == 10);
}
