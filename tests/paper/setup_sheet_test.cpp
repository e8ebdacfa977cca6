// The set-up sheet, read back by programs that this project did not write: pdftotext and pdfinfo (Poppler).
#include <algorithm>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "figures/both_units.h"
#include "figures/hand_wound.h"
#include "figures/json.h"
#include "lay/lay.h"
#include "paper/cairo_sink.h"
#include "paper/paper_text.h"
#include "paper/setup_sheet.h"
#include "paper/typeset.h"
#include "plan/plan_file.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

struct Made {
  nlohmann::json document;
  std::vector<Drawing> pages;
  std::string pdf;
};

Made made_of(const Plan& plan, Paper paper = Paper::a4) {
  Progress progress;
  LaySettings settings;
  settings.fidelity = 0.1;
  const Result<Build> build = lay(plan, settings, progress);
  REQUIRE(build.ok());
  const Measurements measurements = measure(plan, build.value(), progress);
  const TakeupRun run = take_up(plan, build.value(), measurements, progress);
  Made made;
  made.document = nlohmann::json::parse(to_json(plan, build.value(), measurements, run));
  made.pages = draw_setup_sheet({plan, build.value(), measurements, run, paper, {}});
  made.pdf = to_pdf(made.pages);
  return made;
}

Plan sound(const std::string& text) {
  const Result<Plan> plan = plan_from_text(text, "shop/floor/sheet.lay.toml");
  for (const Issue& issue : plan.issues()) UNSCOPED_INFO(to_text(issue));
  REQUIRE(plan.ok());
  return plan.value();
}

// A wind with every setting, in metric units.
const char* const metric_plan = R"(format = "lay-plan 1"
title = "All settings"
notes = "Second try."
[spool]
barrel_diameter = "60 mm"
flange_diameter = "100 mm"
inside_width = "30 mm"
flange_taper = "2 deg"
barrel_taper = "0.1 mm"
mass = "0.15 kg"
[fiber]
diameter = "0.5 mm"
friction = 0.6
linear_mass = "1.2 kg/km"
modulus = "3 GPa"
core_diameter = "0.4 mm"
max_tension = "12 N"
[traverse]
motion = "continuous"
pitch = "0.53 mm"
left_stop = "0.26 mm"
right_stop = "0.31 mm"
start = "right"
free_length = "150 mm"
[traverse.reversal]
kind = "ramp"
turns = 0.4
[wind]
length = "130 m"
tension = "3.5 N"
line_speed = "45 m/min"
[[wind.step]]
from_layer = 4
pitch = "0.54 mm"
left_stop = "0.22 mm"
[takeup]
control = "taper"
taper = 0.35
torque_at_full_current = "0.4 N*m"
full_current = "0.8 A"
speed_ceiling = "250 rpm"
length_stop = "signal"
reaction_time = "1.5 s"
[limits]
rim_clearance = "18 mm"
)";

// The same in the units of an inch shop.
std::string inch_plan() {
  std::string text = metric_plan;
  const auto change = [&](const std::string& from, const std::string& to) {
    const std::size_t at = text.find(from);
    REQUIRE(at != std::string::npos);
    text.replace(at, from.size(), to);
  };
  change("\"60 mm\"", "\"2.375 in\"");
  change("\"100 mm\"", "\"4 in\"");
  change("\"30 mm\"", "\"1.2 in\"");
  change("\"0.15 kg\"", "\"0.33 lb\"");
  change("\"0.5 mm\"", "\"20 mil\"");
  change("\"0.53 mm\"", "\"0.021 in\"");
  change("\"130 m\"", "\"420 ft\"");
  change("\"3.5 N\"", "\"0.75 lbf\"");
  change("\"45 m/min\"", "\"150 ft/min\"");
  change("\"0.4 N*m\"", "\"3.5 lbf*in\"");
  return text;
}

// The text of a page without the sentences that the document holds word for word.
std::string without_sentences(std::string text, const nlohmann::json& document) {
  text = single_spaced(text);
  std::vector<std::string> sentences{document.at("verdict").at("line"),
                                     "plan " + document.at("plan").at("revision").get<std::string>()};
  text = std::regex_replace(text, std::regex("page [12] of 2, |, laywright [0-9.]+"), "");
  for (const auto& finding : document.at("findings")) sentences.push_back(finding.at("text"));
  for (const auto& warning : document.at("takeup").at("warnings")) sentences.push_back(warning.at("text"));
  for (const std::string& sentence : sentences) {
    const std::size_t at = text.find(single_spaced(sentence));
    if (at != std::string::npos) text.erase(at, sentence.size());
  }
  return text;
}

std::vector<Leaf> leaves_of(const nlohmann::json& document) {
  nlohmann::json told = document;
  // So many numbers that any figure would be found among them.
  told.at("takeup").erase("curves");
  told.erase("layers");
  told.erase("findings");
  told.erase("verdict");
  for (const char* key : {"radius"}) told["takeup"]["pressure_estimate"].erase(key);
  for (const char* part : {"stiff", "soft"}) {
    told["takeup"]["pressure_estimate"][part].erase("pressure_MPa");
    told["takeup"]["pressure_estimate"][part].erase("hoop_MPa");
  }
  std::vector<Leaf> leaves;
  collect(told, "", leaves);
  return leaves;
}

// The figures of a text that stand nowhere in the document.
std::vector<std::string> strangers(const std::string& text, const std::vector<Leaf>& leaves) {
  std::vector<std::string> found;
  for (const Figure& figure : figures_in(text)) {
    if (!stands_in(figure.number, figure.unit, leaves)) found.push_back(figure.number + ' ' + figure.unit);
  }
  return found;
}

}  // namespace

TEST_CASE("every figure on the sheet stands in the JSON, to its last digit") {
  for (const std::string& text : {std::string(metric_plan), inch_plan()}) {
    const Made made = made_of(sound(text));
    const std::vector<Leaf> leaves = leaves_of(made.document);
    std::size_t figures = 0;
    for (const int page : {1, 2}) {
      CAPTURE(page);
      std::string words = without_sentences(text_of(made.pdf, page), made.document);
      // A duration of two parts, and the ramp that the row's own name states.
      words = std::regex_replace(words, std::regex("[0-9]+ (h|min) [0-9]+ (min|s)"), "");
      figures += figures_in(words).size();
      CHECK(strangers(words, leaves) == std::vector<std::string>{});
    }
    CHECK(figures > 90);
  }
}

TEST_CASE("the verdict stands at the top of the sheet, as in the document") {
  const Made made = made_of(sound(metric_plan));
  const std::string text = single_spaced(text_of(made.pdf, 1)), line = made.document.at("verdict").at("line");
  const std::size_t at = text.find(line);
  REQUIRE(at != std::string::npos);
  CHECK(at < text.find("Order no."));
}

TEST_CASE("the sheet has the order in its title bar, as the document has it") {
  const std::string order = "[order]\nnumber = \"4711\"\ncustomer = \"A and B\"\nspool = \"3 of 4\"\n[spool]";
  std::string text = metric_plan;
  const Made made = made_of(sound(text.replace(text.find("[spool]"), 7, order)));
  CHECK_THAT(single_spaced(text_of(made.pdf, 1)),
             Contains("Order no. 4711 Customer A and B Spool no. 3 of 4") && Contains("Fiber lot Machine Date"));
  CHECK(made.document.at("plan").at("order") ==
        nlohmann::json{{"number", "4711"}, {"customer", "A and B"}, {"lot", nullptr}, {"spool", "3 of 4"}});
  const Made plain = made_of(sound(metric_plan));
  CHECK_THAT(single_spaced(text_of(plain.pdf, 1)), Contains("Order no. Machine Spool no. Fiber lot Date"));
  CHECK(plain.document.at("plan").at("order").is_null());
}

TEST_CASE("the sheet says whether to go, and which plan it is of, on paper and to a scanner") {
  const Made made = made_of(sound(metric_plan));
  const std::string revision = made.document.at("plan").at("revision");
  const std::string words = single_spaced(text_of(made.pdf, 1));
  const std::string grade = made.document.at("verdict").at("grade");
  CHECK_THAT(words, Contains(grade == "good" ? "GO" : grade == "marginal" ? "ASK FIRST" : "NO GO"));
  for (const int page : {1, 2}) {
    CHECK_THAT(single_spaced(text_of(made.pdf, page)), Contains("plan " + revision + ", laywright ") &&
                                                           Contains(", sheet.lay.toml") && !Contains("shop/floor"));
  }
  // zbarimg reads the code as a scanner would, off a page of the resolution of an office printer.
  constexpr double office_printer = 300.0;
  CHECK(read_by("zbarimg -q --nodbus --raw", "page.png", to_png(made.pages.front(), office_printer),
                "2>/dev/null") == "laywright plan " + revision + "\n");
}

TEST_CASE("nothing on the sheet is smaller than seven points") {
  constexpr double seven_points_mm = 7.0 / 72.0 * 25.4;
  for (const std::string& text : {std::string(metric_plan), inch_plan()}) {
    for (const Paper paper : {Paper::a4, Paper::letter}) {
      std::size_t texts = 0;
      for (const Drawing& page : made_of(sound(text), paper).pages) {
        for (const Drawing::Item& item : page.items) {
          const Text* words = std::get_if<Text>(&item);
          if (words == nullptr) continue;
          INFO(words->words);
          CHECK(words->height_mm >= seven_points_mm);
          ++texts;
        }
      }
      CHECK(texts > 100);
    }
  }
}

TEST_CASE("a wrong digit on the sheet would be found") {
  const Made made = made_of(sound(metric_plan));
  const std::vector<Leaf> leaves = leaves_of(made.document);
  CHECK(stands_in("0.53", "mm", leaves));
  CHECK_FALSE(stands_in("0.57", "mm", leaves));
  CHECK(stands_in("0.020866", "in", leaves));
  CHECK_FALSE(stands_in("0.020867", "in", leaves));
  // With more digits than its millimetres have: some length or other of the wind is half an inch and a bit.
  CHECK_FALSE(stands_in("0.530000", "in", leaves));
  CHECK(stands_in("147.64", "ft/min", leaves));
  CHECK_FALSE(stands_in("147.65", "ft/min", leaves));
  CHECK(figures_in("Tension 3.500 to 3.412 N, 45 m/min, 1,234.5 ft").size() == 4);
}

TEST_CASE("the checkpoint table shows the document's checkpoints, row by row") {
  for (const std::string& text : {std::string(metric_plan), inch_plan()}) {
    const Plan plan = sound(text);
    const Made made = made_of(plan);
    const bool inch = in_inches(plan);
    const std::string table = single_spaced(text_of(made.pdf, 2));
    const auto& checkpoints = made.document.at("takeup").at("checkpoints");
    REQUIRE(checkpoints.size() >= 3);
    for (const auto& check : checkpoints) {
      const bool end = check.at("at_end");
      // Counter, turns, time, three diameters: one line of the layout.
      const std::string number = "(-?[0-9][0-9,]*\\.?[0-9]*)";
      const std::regex row(" " + std::to_string(check.at("layer").get<int>()) + (end ? ", end" : "") + " " + number +
                           " " + number + " (?:[0-9]+ h [0-9]+ min|[0-9]+ min [0-9]+ s|[0-9]+ s) " + number + " " +
                           number + " " + number + " ");
      std::smatch match;
      const std::string own = std::regex_replace(table, std::regex("[0-9,.]+ (ft|in|mm|m) "), "");
      CAPTURE(own, check.dump());
      REQUIRE(std::regex_search(own, match, row));
      const double metre = inch ? 1.0 / 0.3048 : 1.0, mm = inch ? 1.0 / 25.4 : 1.0;
      CHECK(shows(match[1], check.at("counter_m").get<double>() * metre));
      CHECK(shows(match[2], check.at("turns").get<double>()));
      const auto& diameter = check.at("outer_diameter");
      CHECK(shows(match[3], diameter.at("left").get<double>() * mm));
      CHECK(shows(match[4], diameter.at("middle").get<double>() * mm));
      CHECK(shows(match[5], diameter.at("right").get<double>() * mm));
    }
  }
}

TEST_CASE("a person could set the machine: every setting is on page one, in both systems") {
  const Made metric = made_of(sound(metric_plan)), inch = made_of(sound(inch_plan()));
  const std::string m = single_spaced(text_of(metric.pdf, 1)), i = single_spaced(text_of(inch.pdf, 1));
  for (const char* words : {"Pitch, per spool turn 0.53 mm", "Left stop, from flange 0.26 mm",
                            "Right stop, from flange 0.31 mm", "Start at right stop", "ramp of 0.4 turns",
                            "Line speed 45 m/min", "147.64 ft/min", "Tension, empty barrel 3.5 N", "taper tension",
                            "35 %", "250 rpm", "only signals", "Reaction time 1.5 s", "Change on the way"}) {
    CHECK_THAT(m, Contains(words));
  }
  for (const char* words : {"2.375 in", "60.325 mm", "0.021 in", "150 ft/min", "45.72 m/min", "0.75 lbf", "3.3362 N",
                            "420.0 ft", "128.0 m"}) {
    CHECK_THAT(i, Contains(words));
  }
  // The rim clearance that is asked for is not kept, and the counter only signals.
  CHECK_THAT(m, Contains("Mind this about the machine") && Contains("The counter only signals"));
}

TEST_CASE("cautions name the hazards and defer to manual, codes and people") {
  const std::string text = single_spaced(text_of(made_of(sound(metric_plan)).pdf, 1));
  for (const char* words :
       {"nip", "Entanglement", "Broken end", "Glass shards", "eye protection", "guards closed", "emergency stop",
        "lock out", "machine's manual", "local codes", "licensed", "ISO 13850", "ISO 14119", "IEC 60204-1"}) {
    CHECK_THAT(text, Contains(words));
  }
}

TEST_CASE("what a plan does not say is not on the sheet, and the key is named") {
  const Made made = made_of(hand_plan());
  const std::string one = single_spaced(text_of(made.pdf, 1)), two = single_spaced(text_of(made.pdf, 2));
  CHECK_THAT(one, Contains("Line speed not set"));
  CHECK_THAT(two, Contains("wind.line_speed") && Contains("[takeup]"));
  CHECK(two.find("nan") == std::string::npos);
}

TEST_CASE("pages have the size of their paper, and nothing leaves them") {
  for (const Paper paper : {Paper::a4, Paper::letter}) {
    const Made made = made_of(sound(metric_plan), paper);
    const std::string info = read_pdf(made.pdf, "pdfinfo", "");
    CHECK_THAT(info, Contains("Pages:") && Contains("2"));
    CHECK_THAT(info, Contains(paper == Paper::a4 ? "595.276 x 841.89" : "612 x 792"));
    CHECK_THAT(info, Contains("All settings, set-up sheet"));
    for (const Drawing& page : made.pages) {
      for (const Drawing::Item& item : page.items) {
        const Text* text = std::get_if<Text>(&item);
        if (text == nullptr || text->upward) continue;
        const double width = width_of(text->words, {text->height_mm, text->bold, text->align, text->color});
        const double left = text->align == Align::start
                                ? text->at.x
                                : text->at.x - (text->align == Align::end ? width : 0.5 * width);
        CAPTURE(text->words);
        CHECK(left >= 8.0);
        CHECK(left + width <= page.width_mm - 8.0);
        CHECK(text->at.y <= page.height_mm - 4.0);
        CHECK(text->height_mm >= 1.6);
      }
    }
  }
}

TEST_CASE("no words of a page stand on others") {
  const Made made = made_of(sound(metric_plan), Paper::letter);
  for (const Drawing& page : made.pages) {
    std::vector<std::pair<Box, std::string>> boxes;
    for (const Drawing::Item& item : page.items) {
      const Text* text = std::get_if<Text>(&item);
      if (text == nullptr || text->upward || text->words.empty()) continue;
      const double width = width_of(text->words, {text->height_mm, text->bold, text->align, text->color});
      const double share = text->align == Align::start ? 0.0 : text->align == Align::end ? 1.0 : 0.5;
      boxes.push_back(
          {{text->at.x - share * width, text->at.y - 0.7 * text->height_mm, width, 0.7 * text->height_mm},
           text->words});
    }
    for (std::size_t a = 0; a < boxes.size(); ++a) {
      for (std::size_t b = a + 1; b < boxes.size(); ++b) {
        const Box &p = boxes[a].first, &q = boxes[b].first;
        const bool apart = p.right() <= q.left || q.right() <= p.left || p.bottom() <= q.top || q.bottom() <= p.top;
        if (!apart) FAIL_CHECK(boxes[a].second << " | " << boxes[b].second);
      }
    }
  }
}

TEST_CASE("the same pages are the same bytes, and no pages are none") {
  const Made made = made_of(hand_plan());
  CHECK(made.pdf == to_pdf(made.pages));
  CHECK(to_pdf({}).empty());
}

TEST_CASE("a sheet can be drawn of what is hardly there") {
  const Plan plan = hand_plan();
  Progress progress;
  const Build build = helical_build(1, 1, 1.0, 10.5, 0.0);
  const Measurements measurements = measure(plan, build, progress);
  const TakeupRun run = take_up(plan, build, measurements, progress);
  CHECK_FALSE(to_pdf(draw_setup_sheet({plan, build, measurements, run, Paper::a4, {}})).empty());
}
