// What a field's row says of the dial that sets it.
#include "bench_for_tests.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

std::string dialled(const PlanState& state, const std::string& path, Units units = Units::metric) {
  for (const FieldRow& row : field_rows(state, issues_in(state), units)) {
    if (row.path == path) return row.dialled;
  }
  FAIL("no row " << path);
  return "";
}

}  // namespace

TEST_CASE("a field with a dial says what is dialled, and what that gives where it is not what was typed") {
  const std::string text =
      std::string(small_plan) +
      "\n[machine.dials.pitch]\nunit = \"teeth\"\nper_unit = \"0.0127 mm\"\nstep = 1\nleast = 1\n"
      "greatest = 200\n";
  const PlanState state = with_text(state_from_text(text, "small.lay.toml").value(), "traverse.pitch", "0.531 mm");
  // 41.81 teeth: 42 of them give 0.5334 mm, or 0.021 in.
  CHECK(dialled(state, "traverse.pitch") == "Dialled 42 teeth\n= 0.5334 mm");
  CHECK(dialled(state, "traverse.pitch", Units::inch) == "Dialled 42 teeth\n= 0.021 in");
  CHECK(dialled(with_text(state, "traverse.pitch", "0.508 mm"), "traverse.pitch") == "Dialled 40 teeth");
  CHECK(dialled(state, "traverse.left_stop").empty());
  // Beyond its reach there is an issue in place of it.
  CHECK(dialled(with_text(state, "traverse.pitch", "3 mm"), "traverse.pitch").empty());
  CHECK(has_error(issues_in(with_text(state, "traverse.pitch", "3 mm"))));
}
