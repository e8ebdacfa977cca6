// What fuzzing has found in the reader and in the rules of a plan, so that it stays found.
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "plan/plan_writer.h"
#include "sample_plan.h"

using namespace laywright;

namespace {

// The plan of the tests, with other numbers.
PlanDraft changed(void (*change)(PlanDraft&)) {
  PlanDraft draft = read_plan(sample::full, "a.lay.toml").value();
  draft.wind.steps.clear();
  change(draft);
  return draft;
}

bool has_error_at(const PlanDraft& draft, const std::string& key, const std::string& says) {
  const Result<Plan> plan = check(draft);
  INFO(sample::all_text(plan.issues()));
  for (const Issue& issue : plan.issues()) {
    const bool here = issue.key == key && issue.what.find(says) != std::string::npos;
    if (issue.severity == Severity::error && here) return true;
  }
  return false;
}

bool warns_at(const PlanDraft& draft, const std::string& key, const std::string& says) {
  const Result<Plan> plan = check(draft);
  for (const Issue& issue : plan.issues()) {
    if (plan.ok() && issue.key == key && issue.what.find(says) != std::string::npos) return true;
  }
  return false;
}

}  // namespace

TEST_CASE("a bracket before anything but a key is an error, not the end of the program") {
  for (const char* text : {"[#", "[/", "[[#", "[ # a comment\n", "[=", "[\xc3\xa9]"}) {
    INFO(text);
    CHECK(has_error(sample::issues_in(text)));
    CHECK(has_error(sample::issues_in(std::string(sample::full) + text)));
  }
}

TEST_CASE("letters with accents outside of quotes are an error with its line") {
  for (const char* text :
       {"\xc3\xa9 = 1\n", "title = \xc3\xa9\n", "\xef\xbb\xbe", "\xef\xba\xbf ", "[spool]\xc2\xa0\n"}) {
    INFO(text);
    const Issues issues = sample::issues_in(text);
    REQUIRE(has_error(issues));
    CHECK(issues.front().line == 1);
  }
  CHECK(sample::issues_in("title = \xc3\xa9\n").front().what.find("quotes are missing") == 0);
  CHECK(sample::issues_in(sample::with("\"none\"",
                                       "\"d\xc3\xa9"
                                       "j\xc3\xa0 vu\""))
            .empty());
}

TEST_CASE("a barrel thinner than the fiber, or all too conical") {
  CHECK(has_error_at(changed([](PlanDraft& d) { d.spool.barrel_diameter_mm = 0.2; }), "spool.barrel_diameter",
                     "thinner than the fiber"));
  CHECK(has_error_at(changed([](PlanDraft& d) {
                       d.spool.inside_width_mm = 40.0;
                       d.spool.barrel_taper_mm = -41.0;
                     }),
                     "spool.barrel_taper", "so conical"));
  // Half the taper on either side: 118 mm and two diameters are wider than the flange.
  CHECK(has_error_at(changed([](PlanDraft& d) { d.spool.barrel_taper_mm = 85.8; }), "spool.barrel_taper",
                     "no room under the rim"));
}

TEST_CASE("flanges out of square may close the spool at the barrel, not only at the rim") {
  const auto narrow = [](double runout_mm) {
    PlanDraft draft = changed([](PlanDraft& d) {
      d.spool.inside_width_mm = 3.0;
      d.spool.flange_taper_rad = std::atan(1.0);
      d.spool.barrel_taper_mm = 0.0;
    });
    draft.spool.flange_runout_mm = runout_mm;
    return draft;
  };
  // At the barrel, radius (150 + 0.245) / 2 of 118, the faces are 3 + 0.245 mm apart, and the fiber needs 0.245 sqrt(2).
  const double most = (3.245 - 0.245 * std::sqrt(2.0)) * 236.0 / 150.245;
  CHECK(has_error_at(narrow(most + 0.01), "spool.flange_runout", "close the spool"));
  CHECK_FALSE(has_error_at(narrow(most - 0.01), "spool.flange_runout", ""));
  CHECK(has_error_at(changed([](PlanDraft& d) { d.spool.flange_runout_mm = 48.0; }), "spool.flange_runout",
                     "than any flange"));
}

TEST_CASE("a pitch too coarse for the stroke, and too steep for the barrel") {
  const auto with_pitch = [](double pitch_mm, double width_mm) {
    PlanDraft draft = changed([](PlanDraft& d) {
      d.spool.barrel_diameter_mm = 10.0;
      d.spool.barrel_taper_mm = d.spool.flange_taper_rad = d.spool.flange_runout_mm = 0.0;
      d.fiber.min_bend_diameter_mm.reset();
      d.traverse.left_stop_mm = d.traverse.right_stop_mm = 0.0;
      d.traverse.motion = Motion::continuous;
      d.traverse.step_angle_rad = 0.0;
      d.traverse.reversal = {};
      d.wind.length_mm.reset();
      d.wind.diameter_mm.reset();
      d.wind.turns = 10.0;
    });
    draft.traverse.pitch_mm = pitch_mm;
    draft.spool.inside_width_mm = width_mm;
    return draft;
  };
  CHECK(has_error_at(with_pitch(8.1, 2.0), "traverse.pitch", "more than 4 times in a turn"));
  CHECK(warns_at(with_pitch(7.9, 2.0), "traverse.pitch", "turns back within a single turn"));
  // A helix of pitch p on a circle of circumference c climbs at atan(p / c).
  const double around = 10.0 * std::numbers::pi;
  CHECK(has_error_at(with_pitch(around * 1.01, 90.0), "traverse.pitch", "steeper than 45 degrees"));
  CHECK(warns_at(with_pitch(around * std::tan(20.0 * std::numbers::pi / 180.0), 90.0), "traverse.pitch",
                 "at 20 degrees"));
  CHECK_FALSE(warns_at(with_pitch(around * 0.26, 90.0), "traverse.pitch", "degrees"));
}
