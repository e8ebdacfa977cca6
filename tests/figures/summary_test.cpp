#include <algorithm>
#include <sstream>

#include <catch2/catch.hpp>

#include "figures/figures.h"
#include "figures/hand_wound.h"
#include "figures/summary.h"
#include "verdict/verdict_words.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

// The words of the first line that starts with a word.
std::vector<std::string> row_of(const std::string& text, const std::string& first_word) {
  for (const std::string& line : lines_of(text)) {
    std::istringstream stream(line);
    std::vector<std::string> words;
    for (std::string word; stream >> word;) words.push_back(word);
    if (!words.empty() && words.front() == first_word) return words;
  }
  return {};
}

}  // namespace

TEST_CASE("the summary gives the measured figures with their units") {
  Build build = hand_build();
  const std::string text = summary_text(hand_plan(), build, hand_measurements(), TakeupRun());
  CHECK_THAT(text, Contains("Hand wound"));
  CHECK_THAT(text, Contains("hand.lay.toml"));
  CHECK_THAT(text, Contains("24.12 mm left, 24.25 mm middle, 24.38 mm right, 24.50 mm greatest"));
  CHECK_THAT(text, Contains("0.7812"));
  CHECK_THAT(text, Contains("7.75 mm"));
  CHECK_THAT(text, Contains("0.0625 kg"));
  CHECK_THAT(text, Contains("18.0 in 2 layers"));
  CHECK_THAT(text, Contains("8 stations per turn, seed 7"));
  CHECK_THAT(text, !Contains("winding time"));
  CHECK(row_of(text, "1") ==
        std::vector<std::string>{"1", "right", "9.00", "0.59", "21.000", "-", "0.01", "0", "0.0"});
  CHECK(row_of(text, "2") ==
        std::vector<std::string>{"2", "left", "9.00", "0.65", "23.000", "1.000", "0.00", "17", "12.5"});
}

TEST_CASE("one turn is no turns") {
  PlanDraft draft = hand_plan().draft();
  draft.traverse.reversal.kind = ReversalKind::dwell;
  draft.traverse.reversal.turns = 1.0;
  const Plan plan = check(draft).value();
  CHECK_THAT(summary_text(plan, hand_build(), hand_measurements(), TakeupRun()),
             Contains("dwell of 1 turn at the stops"));
}

TEST_CASE("a finding says what, where, how large, and what follows") {
  const std::string text = summary_text(hand_plan(), hand_build(), hand_measurements(), TakeupRun());
  CHECK_THAT(text, Contains("Findings (2, gravest first)"));
  CHECK_THAT(text, Contains("flange gap, layers 1 to 2, right flange: 0.75 mm (0.75 d) at most, 3 places"));
  CHECK_THAT(text, Contains("The last turn lies 0.75 mm from the right flange"));
  CHECK_THAT(text, Contains("from turn 8.5; x 9.25 to 10.00 mm; 45 to 270 deg; fiber 0.6 to 1.2 m"));
  CHECK_THAT(text, Contains("0.75 mm (0.75 d) at most, 3 places; worth a look"));
  Measurements quiet = hand_measurements();
  quiet.findings.clear();
  CHECK_THAT(summary_text(hand_plan(), hand_build(), quiet, TakeupRun()), Contains("None: no gap over 0.5 d"));
}

TEST_CASE("the verdict comes right under the title, and what was weighed is shown with figure, limit and margin") {
  Measurements m = hand_measurements();
  const std::string text = summary_text(hand_plan(), hand_build(), m, TakeupRun());
  CHECK(lines_of(text)[0] == "Hand wound");
  const TakeupRun run;
  const std::string line = verdict_line(verdict_of(hand_plan(), hand_build(), m, &run));
  CHECK(text.substr(text.find('\n') + 1, 20) == line.substr(0, 20));
  CHECK_THAT(text, Contains("Weighed as a fiber"));
  CHECK(row_of(text, "ridge,") == std::vector<std::string>{"ridge,", "left", "flange", "0.50", "d", "1", "d", "at",
                                                           "most", "0.50", "d", "good"});
  CHECK_THAT(text, Contains("this one of seed 7"));
}

TEST_CASE("small findings are folded away with their counts") {
  Measurements m = hand_measurements();
  m.findings[0].severity = FindingSeverity::small;
  m.findings[0].occurrences = 1234;
  std::swap(m.findings[0], m.findings[1]);
  SummaryStyle style;
  style.whole_lists_in = "findings.csv";
  const std::string text = summary_text(hand_plan(), hand_build(), m, TakeupRun(), style);
  CHECK_THAT(text, Contains("Findings (2, gravest first)") && Contains("The fiber would pass the rim."));
  CHECK_THAT(text, !Contains("The last turn lies"));
  CHECK_THAT(text, Contains("And 1 small: flange gap in 1,234 places; the whole list: findings.csv"));
}

TEST_CASE("a wind that ran into the rim says so") {
  Build build = hand_build();
  build.stopped_by = StopReason::rim;
  CHECK_THAT(summary_text(hand_plan(), build, hand_measurements(), TakeupRun()), Contains("STOPPED EARLY"));
}

TEST_CASE("the summary fits a terminal of 100 columns, in plain ASCII") {
  Measurements m = hand_measurements();
  m.layers.back() = {120, -1, 12345.5, 98765432.1, 1234.567, -12.345, 98765432.1, 0.0, 1234567, 1.0};
  const std::string text = summary_text(hand_plan(), hand_build(), m, TakeupRun());
  for (const std::string& line : lines_of(text)) {
    CAPTURE(line);
    CHECK(line.size() <= 100);
    CHECK(std::all_of(line.begin(), line.end(), [](char c) { return c >= ' ' && c <= '~'; }));
  }
}

TEST_CASE("a long layer table is shortened and says where the whole one is") {
  Measurements m = hand_measurements();
  m.layers.assign(100, m.layers.back());
  for (std::size_t i = 0; i < 100; ++i) m.layers[i].layer = static_cast<int>(i) + 1;
  SummaryStyle style;
  style.most_layers = 12;
  style.whole_lists_in = "layers.csv";
  const std::string text = summary_text(hand_plan(), hand_build(), m, TakeupRun(), style);
  CHECK_THAT(text, Contains("... 88 layers not shown; the whole list: layers.csv"));
  CHECK_FALSE(row_of(text, "8").empty());
  CHECK(row_of(text, "9").empty());
  CHECK(row_of(text, "96").empty());
  CHECK_FALSE(row_of(text, "97").empty());
  CHECK_FALSE(row_of(text, "100").empty());
  style.most_layers = SummaryStyle::all;
  CHECK_FALSE(row_of(summary_text(hand_plan(), hand_build(), m, TakeupRun(), style), "50").empty());
}

TEST_CASE("what comes of a finding is told once for all that have the same, each says what and where it is") {
  Measurements m = hand_measurements();
  m.findings.resize(1);
  m.findings.front().severity = FindingSeverity::grave;
  m.findings.front().text = "Turns climb in 3 places: the layers above follow the bumps.";
  m.findings.push_back(m.findings.front());
  m.findings.back().text = "Turns climb in 9 places: the layers above follow the bumps.";
  m.findings.push_back(m.findings.front());
  m.findings.back().text = "Turns are gone: they are not there.";
  const std::string text = summary_text(hand_plan(), hand_build(), m, TakeupRun());
  CHECK_THAT(text, Contains("Turns climb in 3 places: the layers above follow the bumps.") &&
                       Contains("Turns climb in 9 places.") && Contains("Turns are gone: they are not there."));
  const std::size_t first = text.find("follow the bumps");
  CHECK(text.find("follow the bumps", first + 1) == std::string::npos);
}

TEST_CASE("payoff is told beside the findings, with its catches counted as they are listed") {
  TakeupRun run;
  run.payoff.emplace();
  run.payoff->limit = 1.5;
  CHECK_THAT(summary_text(hand_plan(), hand_build(), hand_measurements(), run), Contains("Payoff (no catch)"));

  PayoffCatch caught;
  caught.by = HeldBy::in_slit;
  caught.layer = 2;
  caught.turn = 12.5;
  caught.multiple = run.payoff->greatest = 2.25;
  caught.severity = FindingSeverity::grave;
  run.payoff->catches = {caught};
  run.payoff->hardest = caught;
  run.payoff->catch_count = 1;
  run.payoff->of_severity = {0, 0, 1};
  CHECK_THAT(summary_text(hand_plan(), hand_build(), hand_measurements(), run),
             Contains("Payoff (1 catch: 1 grave)") && Contains("2.25, layer 2, turn 12.5") && Contains("in a slit"));
}

TEST_CASE("a layer that has hardly begun is told so, not as one of no turns") {
  Measurements m = hand_measurements();
  m.unfinished_layer = UnfinishedLayer{};
  m.unfinished_layer->layer = 81;
  m.unfinished_layer->turns = 0.03;
  m.unfinished_layer->end_x_mm = 11.8;
  CHECK_THAT(summary_text(hand_plan(), hand_build(), m, TakeupRun()),
             Contains("layer 81 has just begun, 11.80 mm from the left flange"));
}
