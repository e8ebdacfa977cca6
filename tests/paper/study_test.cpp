#include <algorithm>
#include <cmath>
#include <string>

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include "advise/study.h"
#include "answers/study_report.h"
#include "paper/cairo_sink.h"
#include "paper/study_map.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

PlanDraft plan_of_study() {
  PlanDraft draft;
  draft.title = "Study";
  draft.spool = {50.0, 80.0, 10.0, 0.0, 0.0, 0.0, {}};
  draft.fiber.diameter_mm = 0.5;
  draft.fiber.friction = 0.5;
  draft.traverse.pitch_mm = 0.53;
  draft.traverse.left_stop_mm = draft.traverse.right_stop_mm = 0.26;
  draft.traverse.free_length_mm = 50.0;
  draft.wind.turns = 40.0;
  return draft;
}

// Figures made up by hand: figure f of row i is i + f / 100; row 1 could not be laid.
Study made_up(std::vector<StudyAxis> axes) {
  Study study{plan_of_study(), {}, {}};
  study.spec.axes = std::move(axes);
  const auto points = study_points(study.spec);
  for (std::size_t i = 0; i < points.size(); ++i) {
    StudyRow row{i, points[i], {}, {}};
    for (std::size_t f = 0; f < outcome_figures().size() && i != 1; ++f) {
      row.figures.push_back(static_cast<double>(i) + 0.01 * static_cast<double>(f));
    }
    constexpr Grade grades[] = {Grade::good, Grade::good, Grade::marginal, Grade::do_not_wind, Grade::do_not_wind};
    if (i != 1)
      row.verdict = RowVerdict{grades[i % 5], i % 5 == 4 ? "valley, right flange" : "ridge, left flange", "why"};
    study.rows.push_back(std::move(row));
  }
  return study;
}

Study map() { return made_up({{"traverse.pitch", 0.5, 0.6, 3}, {"fiber.friction", 0.3, 0.7, 2}}); }

}  // namespace

TEST_CASE("a study comes back from its document as it was") {
  const Study study = map();
  const Result<Study> again = study_from_json(study_json(study), "a.json");
  REQUIRE(again.ok());
  CHECK(study_json(again.value()) == study_json(study));
  CHECK(again.value().rows[1].figures.empty());
  CHECK(again.value().rows[5].values == study.rows[5].values);
  CHECK_FALSE(again.value().rows[1].verdict);
  CHECK(again.value().rows[4].verdict->grade == Grade::do_not_wind);
  CHECK(again.value().rows[4].verdict->decides == "valley, right flange");
}

TEST_CASE("a study keeps how its payoff is drawn off, and one from before there was a choice is off the side") {
  Study study = map();
  study.spec.way = DrawOff::over_right;
  std::string text = study_json(study);
  REQUIRE(study_from_json(text, "a.json").ok());
  CHECK(study_from_json(text, "a.json").value().spec.way == DrawOff::over_right);
  const std::size_t at = text.find("\"drawn_off\"");
  REQUIRE(at != std::string::npos);
  std::string unknown = text;
  unknown.replace(unknown.find("over_right"), 10, "by_magnets");
  CHECK_FALSE(study_from_json(unknown, "a.json").ok());
  text.erase(at, text.find('\n', at) - at);
  REQUIRE(study_from_json(text, "a.json").ok());
  CHECK(study_from_json(text, "a.json").value().spec.way == DrawOff::side);
}

TEST_CASE("what is no study is refused, with its file") {
  const std::string sound = study_json(map());
  const auto spoilt = [&](const std::string& from, const std::string& to) {
    std::string text = sound;
    const std::size_t at = text.find(from);
    REQUIRE(at != std::string::npos);
    return study_from_json(text.replace(at, from.size(), to), "a.json");
  };
  CHECK_FALSE(study_from_json("", "a.json").ok());
  CHECK_FALSE(study_from_json("[]", "a.json").ok());
  CHECK_FALSE(spoilt("lay-study 1", "lay-study 9").ok());
  CHECK_FALSE(spoilt("\"build\": 5", "\"build\": 500").ok());
  CHECK_FALSE(spoilt("traverse.pitch\"", "traverse.pich\"").ok());
  CHECK_FALSE(spoilt("\"count\": 3", "\"count\": \"3\"").ok());
  CHECK_FALSE(spoilt("\"grade\": \"marginal\"", "\"grade\": \"middling\"").ok());
  CHECK(spoilt("lay-study 1", "x").issues().front().file == "a.json");
}

TEST_CASE("a broken study is told with its place, in words of our own") {
  const std::string sound = study_json(map());
  const auto told = [&](const std::string& text) {
    const Result<Study> read = study_from_json(text, "shard.json");
    REQUIRE_FALSE(read.ok());
    REQUIRE(read.issues().size() == 1);
    const std::string says = to_text(read.issues().front());
    CHECK(says.find("shard.json") == 0);
    for (const char* foreign : {"exception", "nlohmann", "syntax error", "json."}) {
      CAPTURE(says, foreign);
      CHECK(says.find(foreign, std::string("shard.json").size()) == std::string::npos);
    }
    return says;
  };
  const auto with = [&](const std::string& from, const std::string& to) {
    std::string text = sound;
    const std::size_t at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
  };
  // Counted here: the byte is that of the second comma, and its line is as many as there are line feeds before it.
  const std::string comma = with("\"tolerances\"", ",\"tolerances\"");
  const std::size_t byte = comma.find(",\"tolerances\"") + 1;
  const auto line = 1 + std::count(comma.begin(), comma.begin() + static_cast<std::ptrdiff_t>(byte), '\n');
  CHECK(told(comma).find(fmt::format("shard.json:{}: error: is no JSON at byte {}", line, byte)) == 0);
  CHECK(told(sound.substr(0, 100)).find("ends in the middle, at byte 100") != std::string::npos);
  CHECK(told("").find("is empty") != std::string::npos);
  CHECK(told("lay study").find("shard.json:1: error: is no JSON at byte 1") == 0);
  CHECK(told("[]").find("format: is missing") != std::string::npos);
  CHECK(told(with("\"rows\"", "\"raws\"")).find("rows: is missing") != std::string::npos);
  CHECK(told(with("\"build\": 2", "\"build\": \"2\"")).find("rows[3]") != std::string::npos);
  CHECK(told(with("\"build\": 2", "\"build\": -2")).find("rows[3]") != std::string::npos);
  CHECK(told(with("\"count\": 3", "\"count\": 1e300")).find("study: ") != std::string::npos);
  CHECK(told(with("\"count\": 3", "\"count\": 1e999")).find("a number") != std::string::npos);
}

TEST_CASE("a plan that was altered within a study is told of the study's file") {
  std::string text = study_json(map());
  const std::string pitch = "pitch = \\\"";
  REQUIRE(text.find(pitch) != std::string::npos);
  text.replace(text.find(pitch), pitch.size(), "pich = \\\"");
  const Result<Study> read = study_from_json(text, "shard.json");
  REQUIRE_FALSE(read.ok());
  for (const Issue& issue : read.issues()) CHECK(issue.file == "shard.json");
  CHECK(read.issues().front().what.find("of the plan that this study holds, in its line ") != std::string::npos);
}

TEST_CASE("a study that was kept before a figure was known has all others") {
  const Study study = map();
  std::string text = study_json(study);
  const std::string figure = "\"ridge_mm\"";
  text.replace(text.find(figure), figure.size(), "\"unheard_of\"");
  const Result<Study> again = study_from_json(text, "a.json");
  REQUIRE(again.ok());
  const std::size_t unknown = Study::figure("ridge_mm");
  for (std::size_t i = 0; i < study.rows.size(); ++i) {
    const auto& was = study.rows[i].figures;
    const auto& is = again.value().rows[i].figures;
    REQUIRE(is.size() == was.size());
    for (std::size_t k = 0; k < is.size(); ++k) {
      if (k == unknown) CHECK(std::isnan(is[k]));
      if (k != unknown && !std::isnan(was[k])) CHECK(is[k] == was[k]);
    }
  }
}

TEST_CASE("a study that was kept before it had verdicts is read without them") {
  std::string text = study_json(map());
  for (const std::string key = "\"verdict\""; text.find(key) != std::string::npos;)
    text.replace(text.find(key), key.size(), "\"other\"");
  const Result<Study> again = study_from_json(text, "a.json");
  REQUIRE(again.ok());
  for (const StudyRow& row : again.value().rows) CHECK_FALSE(row.verdict);
  CHECK_THAT(study_text(again.value()), Contains("good in 0, marginal in 0, do not wind in 0 of 6 builds"));
}

TEST_CASE("each setting of a grid has its verdict: in a list over one key, in a map of signs over two") {
  const std::string one = study_text(made_up({{"traverse.pitch", 0.5, 0.6, 5}}));
  CHECK_THAT(one, Contains("good in 1, marginal in 1, do not wind in 2 of 5 builds"));
  CHECK_THAT(one, Contains("  0.5 mm                         good         ridge, left flange\n"));
  CHECK_THAT(one, Contains("  0.525 mm                       no sound plan\n"));
  CHECK_THAT(one, Contains("  0.6 mm                         do not wind  valley, right flange\n"));
  CHECK_THAT(one, Contains("where it is not good: ridge, left flange in 2; valley, right flange in 1."));
  // Builds 0, 2, 4 below and 1, 3, 5 above: by the second key first.
  const std::string two = study_text(map());
  CHECK_THAT(two, Contains("0.7   .#\n") && Contains("0.3  #+.\n"));
}

TEST_CASE("coarse builds are said to be, fine ones are not") {
  Study study = map();
  CHECK_THAT(study_text(study), !Contains("stations"));
  study.spec.lay.fidelity = 0.5;
  CHECK_THAT(study_text(study), Contains("50 % of a full build's stations"));
}

TEST_CASE("the table of a study has a line for each build, its values and figures") {
  const std::string csv = study_csv(map());
  CHECK(csv.substr(0, csv.find('\n')).find("build,traverse.pitch,fiber.friction,outer_diameter_left_mm") == 0);
  CHECK_THAT(csv, Contains("\n0,0.5,0.3,0,0.01,0.02") && Contains("\n1,0.5,0.7,,,,"));
  CHECK_THAT(csv, Contains(",length_m,verdict,decides\n") && Contains(",do not wind,\"valley, right flange\"\n"));
  CHECK(std::count(csv.begin(), csv.end(), '\n') == 7);
}

TEST_CASE("the extremes of a grid are told with their settings") {
  const std::string text = study_text(map());
  CHECK_THAT(text, Contains("Study of 6 builds") && Contains("0.6 mm, 0.7") && Contains("0.5 mm, 0.3"));
}

TEST_CASE("maps, curves and tolerances are drawn") {
  for (const Study& study : {map(), made_up({{"traverse.pitch", 0.5, 0.6, 5}})}) {
    const Drawing drawing = study_map(study);
    CHECK(drawing.items.size() > 50);
    CHECK(to_svg(drawing).find("<svg") != std::string::npos);
  }
  Study tolerances{plan_of_study(), {}, {}};
  tolerances.spec.tolerances = {{"fiber.diameter", Tolerance::Law::uniform, 0.5, 0.01}};
  tolerances.spec.samples = 8;
  const auto points = study_points(tolerances.spec);
  for (std::size_t i = 0; i < points.size(); ++i) {
    tolerances.rows.push_back({i, points[i], std::vector<double>(outcome_figures().size(), points[i][0]),
                               RowVerdict{Grade::good, "x", "y"}});
  }
  CHECK(to_svg(study_map(tolerances)).find("<svg") != std::string::npos);
  CHECK_THAT(study_text(tolerances), Contains("1.00 +- 0.00"));
}

TEST_CASE("colours of a map run from its first to its last, and stay there") {
  CHECK(map_color(-1.0).blue == map_color(0.0).blue);
  CHECK(map_color(0.0).red == 1.0);
  CHECK(map_color(1.0).red == Approx(0x08 / 255.0));
  CHECK(map_color(0.5).green == Approx(0xB6 / 255.0));
}
