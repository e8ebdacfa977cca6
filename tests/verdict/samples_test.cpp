// The samples, and ten plans of other products beside them: the sound ones may be wound, and each that is made wrong is told so,
// for the reason that stands at its top.
#include <filesystem>
#include <set>

#include "lay/lay.h"
#include "measure/acceptance.h"
#include "plan/plan_file.h"
#include "weighed_wind.h"

using namespace laywright;
using namespace laywright::weighed;
using Catch::Matchers::Contains;

namespace {

const std::filesystem::path samples = std::filesystem::path(LAYWRIGHT_SOURCE_DIR) / "samples";

struct Laid {
  WindVerdict verdict;
  Measurements measurements;
};

Laid laid(const PlanDraft& draft, std::uint64_t seed) {
  const Result<Plan> plan = check(draft);
  REQUIRE(plan.ok());
  Progress progress;
  const Result<Build> build = lay(plan.value(), {seed, 1.0}, progress);
  REQUIRE(build.ok());
  Measurements m = measure(plan.value(), build.value(), progress);
  const TakeupRun run = take_up(plan.value(), build.value(), m, progress);
  return {verdict_of(plan.value(), build.value(), m, &run), std::move(m)};
}

PlanDraft sample(const std::string& name) {
  const Result<Plan> plan = load_plan(samples / (name + ".lay.toml"));
  REQUIRE(plan.ok());
  return plan.value().draft();
}

struct Wrong {
  const char* name;
  std::set<Weighed> reasons;
  const char* first;
};

// As their titles say.
const Wrong wrongs[] = {
    {"long-dwell", {Weighed::ridge}, "dwell for less than 4 turns"},
    {"pitch-too-coarse", {Weighed::open_gaps}, "finer pitch"},
    {"pitch-too-fine", {Weighed::ride_ups}, "wider pitch"},
    {"turns-back-early", {Weighed::valley}, "stops nearer to the flanges (now 1.2 mm)"},
    {"turns-back-late", {Weighed::ridge}, "stops further from the flanges (now -0.6 mm)"},
    {"whole-ratio", {Weighed::ribbon}, "slightly different pitch"},
};

void same_truth(const Laid& wind) {
  const WindVerdict& verdict = wind.verdict;
  CHECK(verdict.first.has_value() == (verdict.grade != Grade::good));
  const std::string line = verdict_line(verdict);
  CHECK_THAT(line, Contains(verdict.reason) && !Contains("riction"));
  const bool grave =
      !wind.measurements.findings.empty() && wind.measurements.findings.front().severity == FindingSeverity::grave;
  // A grave finding is one that some figure does not pass.
  CHECK_FALSE((grave && verdict.grade != Grade::do_not_wind));
}

void is_not_to_be_wound(const Wrong& wrong, const PlanDraft& draft) {
  const Laid wind = laid(draft, 1);
  INFO(wrong.name << ": " << verdict_line(wind.verdict));
  CHECK(wind.verdict.grade == Grade::do_not_wind);
  CHECK(wrong.reasons.count(decided(wind.verdict).what) == 1);
  CHECK_THAT(*wind.verdict.first, Contains(wrong.first));
  same_truth(wind);
}

}  // namespace

TEST_CASE("the sample to begin with is good, in several draws, and none of its findings is grave") {
  for (const std::uint64_t seed : {1U, 2U, 3U}) {
    const Laid even = laid(sample("even"), seed);
    INFO(verdict_line(even.verdict));
    CHECK(even.verdict.grade == Grade::good);
    same_truth(even);
  }
}

TEST_CASE("the sample with dials is good as it is dialled") {
  const Laid dialled = laid(sample("dialled"), 1);
  INFO(verdict_line(dialled.verdict));
  CHECK(dialled.verdict.grade == Grade::good);
  same_truth(dialled);
}

TEST_CASE("wire wound evenly and parallel turns are good, the full delivery length may be wound") {
  for (const char* name : {"magnet-wire", "parallel"}) {
    const Laid wind = laid(sample(name), 1);
    INFO(verdict_line(wind.verdict));
    CHECK(wind.verdict.grade == Grade::good);
    CHECK(product_of(check(sample(name)).value()) == Product::wire);
    same_truth(wind);
  }
  for (const char* name : {"tapered-flanges", "long"}) {
    const Laid wind = laid(sample(name), 1);
    INFO(verdict_line(wind.verdict));
    CHECK(wind.verdict.grade != Grade::do_not_wind);
    same_truth(wind);
  }
}

TEST_CASE("each sample that is made wrong is not to be wound, for the reason in its title") {
  for (const Wrong& wrong : wrongs) is_not_to_be_wound(wrong, sample(wrong.name));
}

// What a winder of each product would expect of them; the grades are practice, no source. Copper is judged by its shape and by how it
// comes off: with a pitch below its diameter its layers are lost, and a full delivery spool loses them by itself.
TEST_CASE("plans of glass, copper, yarn and crossed winds get the verdict that their winders expect") {
  const std::filesystem::path plans = std::filesystem::path(LAYWRIGHT_SOURCE_DIR) / "tests/verdict/plans";
  const auto plan_of_file = [&](const std::string& name) {
    const Result<Plan> plan = load_plan(plans / (name + ".lay.toml"));
    REQUIRE(plan.ok());
    return plan.value().draft();
  };
  const std::pair<const char*, Product> sound[] = {{"glass-even", Product::fiber},
                                                   {"copper-even", Product::wire},
                                                   {"copper-full-delivery-spool", Product::wire},
                                                   {"yarn-even", Product::yarn},
                                                   {"crossed-without-ribbon", Product::crossed}};
  for (const auto& [name, product] : sound) {
    const PlanDraft draft = plan_of_file(name);
    CHECK(product_of(check(draft).value()) == product);
    const Laid wind = laid(draft, 1);
    INFO(name << ": " << verdict_line(wind.verdict));
    CHECK(wind.verdict.grade != Grade::do_not_wind);
    same_truth(wind);
  }
  const Wrong wrong[] = {
      {"glass-left-stop-too-far-in", {Weighed::valley}, "left stop nearer to the flange (now 1 mm)"},
      {"glass-right-stop-beyond", {Weighed::ridge}, "right stop further from the flange (now -1.5 mm)"},
      {"yarn-long-dwell", {Weighed::ridge}, "dwell for less than 6 turns"},
      {"crossed-with-ribbon", {Weighed::ribbon}, "turns to each double stroke instead of 40.00"}};
  for (const Wrong& plan : wrong) is_not_to_be_wound(plan, plan_of_file(plan.name));
  // Lost layers alone make copper marginal; whatever decides, the pitch comes first.
  const Laid fine = laid(plan_of_file("copper-pitch-too-fine"), 1);
  INFO(verdict_line(fine.verdict));
  CHECK(fine.verdict.grade != Grade::good);
  CHECK(check_of(fine.verdict, Weighed::ride_ups).grade == Grade::marginal);
  CHECK_THAT(*fine.verdict.first, Contains("wider pitch"));
}

// Play of 2.4 diameters that is wound over some layers: it shows at the flanges, now on this side of the limit, now on that.
TEST_CASE("a worn traverse is not good in any draw, and is told to lose its play where the edges show it") {
  for (const std::uint64_t seed : {1U, 2U, 3U}) {
    const Laid wind = laid(sample("loose-traverse"), seed);
    INFO(seed << ": " << verdict_line(wind.verdict));
    REQUIRE(wind.verdict.grade != Grade::good);
    CHECK_THAT(*wind.verdict.first, Contains("take the play out of the traverse's drive (0.6 mm of lost motion)"));
    same_truth(wind);
  }
}

TEST_CASE("every sample stands in these tests") {
  std::set<std::string> known{"even", "dialled",       "magnet-wire", "parallel", "tapered-flanges",
                              "long", "loose-traverse"};
  for (const Wrong& wrong : wrongs) known.insert(wrong.name);
  for (const auto& file : std::filesystem::directory_iterator(samples)) {
    const std::string name = file.path().filename().string();
    const std::string ending = ".lay.toml";
    if (name.size() <= ending.size() || name.substr(name.size() - ending.size()) != ending) continue;
    INFO(name);
    CHECK(known.count(name.substr(0, name.size() - ending.size())) == 1);
  }
}

TEST_CASE("what the crossed sample is told to set first rids it of its ribbon") {
  PlanDraft cured = sample("whole-ratio");
  cured.traverse.pitch_mm = 19.933;
  const Laid was = laid(sample("whole-ratio"), 1);
  CHECK_THAT(*was.verdict.first, Contains("19.933 mm"));
  const Laid is = laid(cured, 1);
  CHECK(check_of(is.verdict, Weighed::ribbon).value == 0.0);
  CHECK(is.verdict.grade != Grade::do_not_wind);
}
