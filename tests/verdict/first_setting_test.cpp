#include "weighed_wind.h"

using namespace laywright;
using namespace laywright::weighed;
using Catch::Matchers::Contains;

namespace {

std::string first_of(const WeighedWind& wind) {
  const WindVerdict verdict = wind.verdict();
  REQUIRE(verdict.first);
  return *verdict.first;
}

WeighedWind ridged() {
  WeighedWind wind;
  wind.edge(Side::right).ridge_mm = 4.0;
  return wind;
}

}  // namespace

TEST_CASE("a valley asks for a stop nearer to its flange, both for both") {
  WeighedWind wind;
  wind.draft.traverse.right_stop_mm = 1.2;
  wind.edge(Side::right).valley_mm = 4.0;
  CHECK(first_of(wind) == "set the right stop nearer to the flange (now 1.2 mm)");
  wind.edge(Side::left).valley_mm = 3.0;
  CHECK(first_of(wind) == "set both stops nearer to the flanges (now 0.5 mm left and 1.2 mm right)");
}

TEST_CASE("the stop is told as it is in the last layer, in the unit of the plan") {
  WeighedWind wind;
  wind.edge(Side::right).valley_mm = 4.0;
  wind.draft.traverse.right_stop_mm = 25.4;
  wind.draft.origins["traverse.right_stop"] = {1, "1 in"};
  CHECK_THAT(first_of(wind), Contains("now 1 in"));
  wind.m.layers.resize(5);
  wind.draft.wind.steps = {{3, {}, {}, 12.7}, {6, {}, {}, 2.54}};
  CHECK_THAT(first_of(wind), Contains("now 0.5 in"));
}

TEST_CASE("flanges that open ask for stops that follow") {
  WeighedWind wind;
  wind.draft.spool.flange_taper_rad = 0.1;
  wind.edge(Side::left).valley_mm = 4.0;
  CHECK_THAT(first_of(wind), Contains("further out with the layers"));
}

TEST_CASE("a ridge comes from the dwell where there is one, else from play, else from a stop too far out") {
  WeighedWind wind = ridged();
  CHECK(first_of(wind) == "set the right stop further from the flange (now 0.5 mm)");
  wind.draft.traverse.free_length_mm = 500.0;
  CHECK_THAT(first_of(wind), Contains("bring the guide nearer to the spool (free length now 500 mm)"));
  wind.draft.traverse.right_stop_mm = -2.0;
  CHECK_THAT(first_of(wind), Contains("further from the flange (now -2 mm)"));
  wind.draft.traverse.reversal.stop_scatter_mm = 0.4;
  CHECK_THAT(first_of(wind), Contains("stops repeat"));
  wind.draft.traverse.reversal.lost_motion_mm = 0.6;
  CHECK_THAT(first_of(wind), Contains("take the play out") && Contains("0.6 mm"));
  wind.draft.traverse.reversal.kind = ReversalKind::dwell;
  wind.draft.traverse.reversal.turns = 4.0;
  CHECK_THAT(first_of(wind), Contains("dwell for less than 4 turns"));
  wind.draft.traverse.pitch_mm = 0.9;
  CHECK(first_of(wind) == "set a wider pitch, about 1.04 mm (now 0.9 mm)");
}

TEST_CASE("unevenness is cured as the ridge or the valley that it is") {
  WeighedWind wind;
  wind.m.outer_diameter.left_mm = 186.0;
  CHECK_THAT(first_of(wind), Contains("left stop further from the flange"));
  wind.m.outer_diameter = {180.0, 180.0, 174.0, 181.0, {}};
  CHECK_THAT(first_of(wind), Contains("right stop nearer to the flange"));
}

TEST_CASE("gaps ask for a finer pitch, turns that climb for a wider one") {
  WeighedWind wind;
  wind.m.layers.front().gap_length_mm = 8.0e5;
  wind.draft.traverse.pitch_mm = 2.0;
  CHECK(first_of(wind) == "set a finer pitch, about 1.04 mm (now 2 mm)");
  WeighedWind fine;
  fine.draft.traverse.pitch_mm = 0.95;
  fine.find(FindingKind::ride_up, 1.0, 900);
  CHECK(first_of(fine) == "set a wider pitch, about 1.04 mm (now 0.95 mm)");
}

TEST_CASE("nobody is told to set the pitch that is set") {
  WeighedWind wind;
  wind.draft.traverse.pitch_mm = 1.04;
  wind.find(FindingKind::ride_up, 1.0, 900);
  CHECK_THAT(first_of(wind), Contains("laywright improve") && !Contains("pitch"));
}

TEST_CASE("a gap at a flange is cured at that flange") {
  WeighedWind wind;
  wind.find(FindingKind::flange_gap, 2.6, 1, Side::left);
  wind.find(FindingKind::flange_gap, 4.0, 1, Side::right);
  CHECK_THAT(first_of(wind), Contains("right stop nearer to the flange"));
}

TEST_CASE("room at the rim is had by less fiber, as much as fills the ring that is lacking") {
  WeighedWind wind;
  wind.draft.limits.rim_clearance_mm = 3.0;
  wind.m.rim_clearance_mm = 2.0;
  // 3 mm and two diameters to spare: a ring 3 mm deep inside radius 95, 40 mm wide, four fifths full.
  const double less_mm = 2.0 * 3.14159265 * 95.0 * 3.0 * 40.0 * 0.8 / (0.25 * 3.14159265);
  CHECK_THAT(first_of(wind),
             Contains("wind less, about " + std::to_string(1e3 - less_mm / 1e3).substr(0, 3) + " m "));
}

TEST_CASE("a line that is too fast is told how fast it may be") {
  WeighedWind wind;
  wind.draft.wind.line_speed_mm_per_s = 1000.0;
  wind.draft.takeup.emplace();
  wind.draft.takeup->speed_ceiling_rpm = 300.0;
  wind.run.least_speed_ceiling_rpm = 400.0;
  CHECK(first_of(wind) == "run the line slower, at 45 m/min at most (now 60 m/min)");
}
