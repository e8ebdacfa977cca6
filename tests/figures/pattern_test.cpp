#include <algorithm>
#include <sstream>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "figures/figures.h"
#include "figures/pattern_report.h"
#include "pattern/crossed_plan.h"

using namespace laywright;
using Catch::Matchers::Contains;
using testing::whole_ratio_draft;
using Json = nlohmann::json;

namespace {

std::string text_of(const PlanDraft& draft) {
  const Plan plan = testing::sound(draft);
  return pattern_text(plan, patterns(plan, usual_gap_d));
}

// The same without its lines: words, one space apart.
std::string prose_of(const PlanDraft& draft) {
  std::istringstream stream(text_of(draft));
  std::string prose;
  for (std::string word; stream >> word;) prose += word + ' ';
  return prose;
}

Json json_of(const PlanDraft& draft) {
  const Plan plan = testing::sound(draft);
  return Json::parse(pattern_json(plan, patterns(plan, usual_gap_d)));
}

// The words of each line that begins with one of a table's first words.
std::vector<std::vector<std::string>> rows_of(const std::string& text, const std::string& begins) {
  std::vector<std::vector<std::string>> rows;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) {
    if (line.rfind("  " + begins, 0) != 0) continue;
    std::istringstream words(line);
    rows.emplace_back();
    for (std::string word; words >> word;) rows.back().push_back(word);
  }
  return rows;
}

}  // namespace

TEST_CASE("the table of patterns and its JSON say the same") {
  PlanDraft draft = whole_ratio_draft();
  draft.wind.steps = {{9, 19.85, {}, {}}};
  const std::string text = text_of(draft);
  const Json json = json_of(draft);
  CHECK_THAT(json.at("rows").at(0).at("text").get<std::string>(),
             Catch::Matchers::StartsWith("A ribbon. The spool turns"));
  CHECK(json.at("format") == "lay-pattern 1");
  // Of ribbons it says by how much they stand over the estimate of the diameter.
  CHECK_THAT(text, Catch::Matchers::Contains("Ribbons stand over them"));
  CHECK(json.at("gap_d") == 0.1);
  const Json& rows = json.at("rows");
  REQUIRE(rows.size() == 2);
  const auto first = rows_of(text, "1-8 "), second = rows_of(text, "9-");
  REQUIRE(first.size() == 1);
  REQUIRE(second.size() == 1);
  const std::vector<std::string> whole{"1-8",
                                       "20",
                                       "15.0000",
                                       figure(rows[0]["angle"]["inside"], 2),
                                       figure(rows[0]["angle"]["outside"], 2),
                                       "15",
                                       "0.000",
                                       "0.00",
                                       "1",
                                       "ribbon"};
  CHECK(first[0] == whole);
  CHECK(rows[0]["ahead"] == 0.0);
  CHECK(rows[0]["verdict"] == "ribbon");
  CHECK(second[0][2] == figure(rows[1]["turns_per_double_stroke"], 4));
  CHECK(second[0][5] == "15");
  CHECK(rows[1]["near_turns"] == 15);
  CHECK(rows[1]["near_double_strokes"] == 1);
  CHECK(second[0][6] == "2.250");
  CHECK(second[0][7] == "behind");
  CHECK(rows[1]["ahead"].get<double>() == Approx(-2.25));
  CHECK(second[0][8] == figure(-rows[1]["ahead_d"].get<double>(), 2));
  CHECK(second[0][9] == std::to_string(rows[1]["returns_after_double_strokes"].get<int>()));
  CHECK(second[0][10] == "open");

  std::vector<Json> safe;
  for (const Json& row : rows) safe.insert(safe.end(), row["safe_settings"].begin(), row["safe_settings"].end());
  std::vector<std::vector<std::string>> shown = rows_of(text, "traverse."), steps = rows_of(text, "wind.step[0].");
  shown.insert(shown.end(), steps.begin(), steps.end());
  REQUIRE(shown.size() == safe.size());
  REQUIRE(safe.size() == 8);
  for (std::size_t i = 0; i < safe.size(); ++i) {
    CAPTURE(i);
    CHECK(shown[i][0] == safe[i]["key"]);
    CHECK(shown[i][1] == figure(safe[i]["value"], 3));
    CHECK(std::stod(shown[i][3]) == safe[i]["instead_of"]);
    CHECK(shown[i][5] == figure(safe[i]["turns_per_double_stroke"], 4));
    const double ahead = safe[i]["ahead_d"];
    CHECK(shown[i][7] == figure(std::abs(ahead), 2));
    CHECK(shown[i][8] == (ahead > 0.0 ? "ahead" : "behind"));
    CHECK(safe[i]["verdict"] == "close pattern");
  }
}

TEST_CASE("no line of the patterns is longer than a hundred letters") {
  PlanDraft fine = whole_ratio_draft();
  fine.fiber.diameter_mm = 0.0401;
  fine.traverse.pitch_mm = 0.123457;
  fine.traverse.left_stop_mm = -0.123457;
  fine.traverse.reversal = {ReversalKind::dwell, 1.23457, 0.0, 0.01};
  fine.wind.turns = 300000.0;
  fine.wind.steps = {
      {2, 0.223457, 0.123457, -0.123457}, {100, 0.0623457, {}, {}}, {200, 0.3, {}, {}}, {999999, 0.4, {}, {}}};
  PlanDraft steep = whole_ratio_draft();
  steep.traverse.pitch_mm = 99.9999;
  steep.traverse.guide_play_mm = 2.0;
  for (const PlanDraft& draft : {whole_ratio_draft(), fine, steep, testing::mini_spool(), testing::plain_draft()}) {
    const Plan plan = testing::sound(draft);
    std::istringstream stream(pattern_text(plan, patterns(plan, usual_gap_d)));
    for (std::string line; std::getline(stream, line);) {
      CAPTURE(line);
      CHECK(line.size() <= 100);
    }
  }
}

TEST_CASE("the words of each verdict") {
  PlanDraft draft = whole_ratio_draft();
  CHECK_THAT(prose_of(draft), Contains("exactly the whole number 15") && Contains("line on line"));
  draft.traverse.pitch_mm = 19.36;  // 15.4959: half a turn less .0041, twice .0041 * 19.36 = .16 mm
  CHECK_THAT(prose_of(draft), Contains("nearly 31/2") && Contains("the one 2 double strokes before") &&
                                  Contains("0.18 d off its middle"));
  draft.traverse.pitch_mm = 19.933;
  const std::string close = prose_of(draft);
  CHECK_THAT(close,
             Contains("a close pattern.") && Contains("1.12 d behind it") && Contains("After 20 double strokes"));
  CHECK_THAT(close, !Contains("One of these"));
  draft.traverse.reversal.stop_scatter_mm = 0.05;  // 2 sqrt(2) .05 / .9 = .157 d
  CHECK_THAT(prose_of(draft), Contains("by 0.16 d (one sigma), more than the gap"));
  draft.traverse.reversal.stop_scatter_mm = 0.01;
  CHECK_THAT(prose_of(draft), Contains("by 0.03 d (one sigma).") && !Contains("more than the gap"));

  const std::string parallel = prose_of(testing::plain_draft());
  CHECK_THAT(parallel, Contains("a close wind: the pitch is not coarser than 2 fiber diameters"));
  CHECK_THAT(parallel,
             Contains("The spool turns 728.8462 times") && Contains("near to a whole number, within a tenth"));
  CHECK_THAT(parallel, !Contains("Back after") && !Contains("a third of its diameter"));
  const Json row = json_of(testing::plain_draft()).at("rows").at(0);
  CHECK(row.at("verdict") == "close wind");
  for (const char* key : {"near_turns", "near_double_strokes", "ahead", "ahead_d", "outside_ahead_d", "scatter_d",
                          "returns_after_double_strokes"})
    CHECK(row.at(key).is_null());
  CHECK_THAT(prose_of(testing::mini_spool()), Contains("The guide is stepped"));
  CHECK(json_of(testing::mini_spool()).at("stepped") == true);
}

TEST_CASE("a fiber so fine that no pitch in steps of a thousandth does is told, and mended by its stops") {
  PlanDraft draft = whole_ratio_draft();
  draft.fiber.diameter_mm = 0.05;
  draft.traverse.pitch_mm = 0.15;  // 2000 turns: a thousandth moves the strand by 2 mm
  CHECK_THAT(prose_of(draft), Contains("no pitch near 0.15 mm does in steps of 0.001 mm") &&
                                  Contains("traverse.right_stop") && !Contains("traverse.pitch") &&
                                  !Contains("Nor does"));
}

TEST_CASE("layers too few to lie on one another are said to be") {
  PlanDraft draft = whole_ratio_draft();
  draft.wind.turns = 15.0;  // one double stroke: the third layer would lie on the first
  CHECK_THAT(prose_of(draft), Contains("too few for that to show"));
  draft.wind.turns = 22.5;
  CHECK_THAT(prose_of(draft), !Contains("too few"));
  draft.traverse.pitch_mm = 300.0 / 15.5;  // the fifth on the first
  CHECK_THAT(prose_of(draft), Contains("too few for that to show"));
}

TEST_CASE("layers that the wind does not reach are said to be") {
  PlanDraft draft = whole_ratio_draft();
  draft.wind.steps = {{500, 19.0, {}, {}}};
  CHECK_THAT(prose_of(draft), Contains("500 on") && Contains("the wind ends before these layers"));
  CHECK(json_of(draft).at("rows").at(1).at("to_layer").is_null());
}
