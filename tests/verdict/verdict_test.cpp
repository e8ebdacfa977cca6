#include "weighed_wind.h"

using namespace laywright;
using namespace laywright::weighed;
using Catch::Matchers::Contains;

TEST_CASE("a level wind without flaws is good, and says what is nearest to its limit") {
  WeighedWind wind;
  wind.edge(Side::right).valley_mm = 0.5;
  const WindVerdict verdict = wind.verdict();
  CHECK(verdict.grade == Grade::good);
  CHECK_FALSE(verdict.first);
  CHECK(decided(verdict).what == Weighed::valley);
  CHECK(verdict_line(verdict) ==
        "Good (this draw): every figure keeps its limit with room to spare; nearest to its limit is the valley at "
        "the right flange, "
        "0.50 d of 1 d at most.");
}

TEST_CASE("each thing weighed has its figure, its limit and its margin") {
  WeighedWind wind;
  wind.edge(Side::left) = {0.25, 0.125};
  wind.edge(Side::right) = {0.5, 0.0625};
  wind.m.outer_diameter.left_mm = 180.5;   // .25 higher
  wind.m.outer_diameter.right_mm = 179.5;  // .25 lower
  wind.m.layers.front().gap_length_mm = 1.0e4;
  wind.find(FindingKind::flange_gap, 0.75);
  wind.find(FindingKind::dropped_turn, 1.5, 50);
  wind.find(FindingKind::dropped_turn, 1.0, 25);
  wind.find(FindingKind::ride_up, 2.0, 100);
  const WindVerdict verdict = wind.verdict();
  const auto is = [&](Weighed what, std::optional<Side> side, double value, double limit) {
    const Check& check = check_of(verdict, what, side);
    CHECK(check.value == Approx(value));
    CHECK(check.limit == Approx(limit));
    CHECK(check.margin == Approx(limit - value));
  };
  is(Weighed::ridge, Side::left, 0.25, 1.0);
  is(Weighed::ridge, Side::right, 0.5, 1.0);
  is(Weighed::valley, Side::left, 0.125, 1.0);
  is(Weighed::valley, Side::right, 0.0625, 1.0);
  is(Weighed::unevenness, {}, 0.5, 1.0);
  is(Weighed::open_gaps, {}, 1.0, 2.0);  // %
  is(Weighed::flange_gap, {}, 0.75, 2.0);
  is(Weighed::dropped_turns, {}, 75.0, 200.0);
  is(Weighed::drop_depth, {}, 1.5, 4.0);
  is(Weighed::ride_ups, {}, 100.0, 300.0);
  const Check& rim = check_of(verdict, Weighed::rim_clearance);
  CHECK(rim.at_least);
  CHECK(rim.value == 20.0);
  CHECK(rim.margin == 20.0);
  // A close wind has no ribbon, and a plan without them no figures of the machine.
  CHECK_FALSE(weighs(verdict, Weighed::ribbon));
  CHECK_FALSE(weighs(verdict, Weighed::greatest_pull));
  CHECK_FALSE(weighs(verdict, Weighed::planned_end));
}

TEST_CASE("the barrel's own taper is no unevenness") {
  WeighedWind wind;
  wind.draft.spool.barrel_taper_mm = 4.0;  // over 40 mm; the zones' middles lie at 1.5, 20 and 38.5 mm
  wind.m.outer_diameter.left_mm = 180.0 - 4.0 * 18.5 / 40.0;
  wind.m.outer_diameter.right_mm = 180.0 + 4.0 * 18.5 / 40.0;
  CHECK(check_of(wind.verdict(), Weighed::unevenness).value == Approx(0.0).margin(1e-12));
}

TEST_CASE("the worst grade decides, of several the figure furthest over its limit") {
  WeighedWind wind;
  wind.edge(Side::left).ridge_mm = 1.1;
  CHECK(wind.verdict().grade == Grade::marginal);
  wind.find(FindingKind::ride_up, 1.0, 900);  // three times its limit
  wind.edge(Side::right).valley_mm = 2.5;     // two and a half times
  const WindVerdict verdict = wind.verdict();
  CHECK(verdict.grade == Grade::do_not_wind);
  CHECK(decided(verdict).what == Weighed::ride_ups);
  CHECK_THAT(verdict.reason, Contains("900 places per km") && Contains("the limit is 300 places per km"));
}

TEST_CASE("a wire whose layers are lost is marginal, however much, and its findings are worth a look") {
  WeighedWind wind;
  wind.draft.fiber.core_diameter_mm = 0.9;
  wind.find(FindingKind::ride_up, 1.0, 30000);
  const WindVerdict verdict = wind.verdict();
  CHECK(verdict.grade == Grade::marginal);
  CHECK(decided(verdict).what == Weighed::ride_ups);
  CHECK_THAT(verdict.reason, Contains("30,000 places per km, over the limit of"));
  wind.edge(Side::left).ridge_mm = 2.0;
  CHECK(wind.verdict().grade == Grade::do_not_wind);
}

TEST_CASE("marginal says on which side of its limit the figure stands") {
  WeighedWind wind;
  wind.edge(Side::left).ridge_mm = 1.125;
  CHECK(wind.verdict().reason ==
        "the ridge at the left flange is 1.12 fiber diameters high, a little over the limit of 1 fiber diameter");
  wind.edge(Side::left).ridge_mm = 0.875;
  CHECK(wind.verdict().reason ==
        "the ridge at the left flange is 0.88 fiber diameters high, close to the limit of 1 fiber diameter");
}

TEST_CASE("fiber beyond the rim is not to be wound, whatever else there is, nor less room than the plan asks for") {
  WeighedWind wind;
  wind.edge(Side::left).ridge_mm = 9.0;
  wind.m.rim_clearance_mm = -0.125;
  CHECK(decided(wind.verdict()).what == Weighed::rim_clearance);
  CHECK_THAT(wind.verdict().reason, Contains("0.12 mm beyond the rim"));
  wind.edge(Side::left).ridge_mm = 0.0;
  wind.draft.limits.rim_clearance_mm = 3.0;
  wind.m.rim_clearance_mm = 2.9;
  CHECK(wind.verdict().grade == Grade::do_not_wind);
  wind.m.rim_clearance_mm = 4.9;  // within two diameters of it
  CHECK(wind.verdict().grade == Grade::marginal);
  wind.m.rim_clearance_mm = 5.1;
  CHECK(wind.verdict().grade == Grade::good);
}

TEST_CASE("a spool that is full before its planned end is not to be wound") {
  WeighedWind wind;
  wind.build.stopped_by = StopReason::rim;
  wind.build.length_mm = 8.0e5;
  wind.m.rim_clearance_mm = 0.25;
  const WindVerdict verdict = wind.verdict();
  CHECK(verdict.grade == Grade::do_not_wind);
  CHECK(verdict.reason == "the spool is full after 80.0 % of what is planned");
  CHECK_THAT(*verdict.first, Contains("wind less, about ") && Contains("now 1000 m"));
  wind.build.length_mm = 1.0e6;  // to the last turn, which found no room
  CHECK(wind.verdict().grade == Grade::do_not_wind);
}

TEST_CASE("in a crossed wind the ribbon decides, and open places are not weighed") {
  WeighedWind wind;
  wind.draft.traverse.pitch_mm = 20.0;
  wind.m.layers.front().gap_length_mm = 9.5e5;
  wind.find(FindingKind::flange_gap, 30.0, 80);
  CHECK(wind.verdict().grade == Grade::good);
  wind.find(FindingKind::ribbon, 1.5, 40);
  wind.edge(Side::left).valley_mm = 30.0;  // five times its limit
  const WindVerdict verdict = wind.verdict();
  CHECK(decided(verdict).what == Weighed::ribbon);
  CHECK(check_of(verdict, Weighed::valley, Side::left).grade == Grade::do_not_wind);
}

TEST_CASE("what the machine does is weighed against what fiber, take-up and clutch bear") {
  WeighedWind wind;
  wind.draft.wind.tension_N = 5.0;
  wind.draft.fiber.max_tension_N = 10.0;
  wind.draft.fiber.min_bend_diameter_mm = 100.0;
  wind.draft.takeup.emplace();
  wind.draft.takeup->speed_ceiling_rpm = 300.0;
  wind.draft.takeup->torque_at_full_current_Nmm = 1000.0;
  wind.draft.takeup->full_current_A = 0.5;
  wind.run.curves.tension_N = {5.0, 4.0};
  wind.run.curves.current_A = {0.25, 0.375};
  wind.run.hold.least_tension_N = 0.5;
  wind.run.least_speed_ceiling_rpm = 200.0;
  const WindVerdict good = wind.verdict();
  CHECK(good.grade == Grade::good);
  CHECK(check_of(good, Weighed::greatest_pull).margin == 5.0);
  CHECK(check_of(good, Weighed::least_pull).margin == 3.5);
  CHECK(check_of(good, Weighed::bend).margin == 0.0);  // as large as it must be
  CHECK(check_of(good, Weighed::spool_speed).margin == 100.0);
  CHECK(check_of(good, Weighed::clutch_current).margin == 0.125);
  wind.run.least_speed_ceiling_rpm = 290.0;
  CHECK(wind.verdict().grade == Grade::marginal);
  wind.run.least_speed_ceiling_rpm = 310.0;
  CHECK(decided(wind.verdict()).what == Weighed::spool_speed);
  CHECK(wind.verdict().grade == Grade::do_not_wind);
  wind.run.least_speed_ceiling_rpm = 200.0;
  wind.draft.limits.pull = 0.4;  // of 10 N
  CHECK(wind.verdict().grade == Grade::do_not_wind);
  CHECK(*wind.verdict().first == "lower the tension (now 5 N)");
}

TEST_CASE("without a whole layer its edges are not weighed, and without a run the machine is not") {
  WeighedWind wind;
  wind.m.edges.reset();
  CHECK_FALSE(weighs(wind.verdict(), Weighed::ridge));
  CHECK_FALSE(weighs(wind.verdict(), Weighed::unevenness));
  wind.draft.wind.tension_N = 5.0;
  wind.draft.fiber.max_tension_N = 10.0;
  CHECK(weighs(wind.verdict(), Weighed::greatest_pull));
  CHECK_FALSE(weighs(verdict_of(wind.plan(), wind.build, wind.m, nullptr), Weighed::greatest_pull));
}

TEST_CASE(
    "the pull that draws the fiber off is weighed where payoff was run, by how far it is above that of winding") {
  WeighedWind wind;
  CHECK_FALSE(weighs(wind.verdict(), Weighed::payoff_force));
  wind.run.payoff.emplace();
  wind.run.payoff->limit = 1.5;
  // A quarter of what the limit allows above 1, to either side of it.
  for (const auto& [force, grade] :
       {std::pair(1.0, Grade::good), std::pair(1.36, Grade::good), std::pair(1.39, Grade::marginal),
        std::pair(1.61, Grade::marginal), std::pair(1.64, Grade::do_not_wind)}) {
    wind.run.payoff->greatest = force;
    const WindVerdict verdict = wind.verdict();
    const Check& check = check_of(verdict, Weighed::payoff_force);
    INFO(force);
    CHECK(check.grade == grade);
    CHECK(check.margin == Approx(1.5 - force));
    CHECK(verdict.grade == grade);
  }
  CHECK(decided(wind.verdict()).what == Weighed::payoff_force);
  CHECK_THAT(verdict_line(wind.verdict()), Contains("needs 1.64 times the pull of winding; the limit is 1.5 times"));
  // Drawn as it was wound, it is not what is nearest to its limit.
  wind.run.payoff->greatest = 1.01;
  wind.edge(Side::left) = {0.25, 0.0};
  CHECK(decided(wind.verdict()).what == Weighed::ridge);
}

TEST_CASE("the words of a verdict say that it is of one draw") {
  CHECK_THAT(verdict_line(WeighedWind().verdict()), Contains("this draw"));
  CHECK_THAT(draw_words(WeighedWind().build, WeighedWind().verdict()), Contains("seed 3"));
}

TEST_CASE("of a long wind the words say that its order depends on the number of stations, too") {
  WeighedWind wind;
  wind.m.layers.resize(certain_layers);
  const std::string short_line = verdict_line(wind.verdict());
  CHECK_THAT(short_line, Contains("(this draw): "));
  CHECK_THAT(draw_words(wind.build, wind.verdict()), !Contains("stations"));
  wind.m.layers.resize(certain_layers + 1);
  CHECK_THAT(verdict_line(wind.verdict()), Contains("(this draw; uncertain beyond 40 layers): "));
  CHECK_THAT(draw_words(wind.build, wind.verdict()), Contains("--fidelity 2"));
  wind.draft.traverse.pitch_mm = 6.0;
  CHECK(verdict_line(wind.verdict()).find("uncertain") == std::string::npos);
}

TEST_CASE("over draws the line says of how many, and how many of them are better") {
  WindVerdict verdict = WeighedWind().verdict();
  const auto draws = [&](std::initializer_list<Grade> grades) {
    verdict.draws.clear();
    std::uint64_t seed = 1;
    for (const Grade grade : grades) verdict.draws.push_back({seed++, 1.0, grade, "rim clearance"});
    verdict.grade = std::max(grades);
    return verdict_line(verdict);
  };
  constexpr Grade good = Grade::good, marginal = Grade::marginal, bad = Grade::do_not_wind;
  CHECK_THAT(draws({good, good, good}), Catch::StartsWith("Good (each of 3 draws): "));
  CHECK_THAT(draws({good, marginal, good}), Catch::StartsWith("Marginal (the worst of 3 draws; good in 2): "));
  CHECK_THAT(draws({bad, marginal, good, good}),
             Catch::StartsWith("Do not wind (the worst of 4 draws; good in 2, marginal in 1): "));
  CHECK_THAT(draws({bad, bad}), Catch::StartsWith("Do not wind (each of 2 draws): "));
  CHECK_THAT(draw_words(WeighedWind().build, verdict),
             Contains("worst of 2") && Contains("seeds 1 to 2") && !Contains("fiber of"));
  verdict.draws[1].fiber_diameter_mm = 1.02;
  CHECK_THAT(draw_words(WeighedWind().build, verdict), Contains("fiber of 1 to 1.02 mm"));
}
