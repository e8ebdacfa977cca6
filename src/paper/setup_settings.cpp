#include <fmt/format.h>

#include "figures/both_units.h"
#include "figures/dial_words.h"
#include "figures/figures.h"
#include "figures/machine_text.h"
#include "paper/drafting.h"
#include "paper/setup_parts.h"

namespace laywright {
namespace {

// What is dialled stands in front, what that gives behind it: that is what hands need.
Row setting_row(const SetupSheet& sheet, const char* label, const char* path, bool tick) {
  if (const std::optional<DialWords> dialled = dial_words_at(sheet.plan, path))
    return {label, dialled->reading, meaning(*dialled), tick, "= " + dialled->laid};
  const BothWays shown = setting_both_ways(sheet.plan, path);
  return {label, shown.own, shown.other, tick};
}

Row amount_row(const SetupSheet& sheet, const char* label, Amount amount, double value, int decimals, bool tick) {
  const BothWays shown = both_ways(sheet.plan, amount, value, decimals);
  return {label, shown.own, shown.other, tick};
}

RowGroup spool_group(const SetupSheet& sheet) {
  const Spool& spool = sheet.plan.spool();
  RowGroup group{"Spool and fiber", {}};
  const auto add = [&](const char* label, const char* path) {
    group.rows.push_back(setting_row(sheet, label, path, false));
  };
  add("Barrel diameter", "spool.barrel_diameter");
  if (spool.barrel_taper_mm != 0.0) add("Barrel taper, right - left", "spool.barrel_taper");
  add("Flange diameter", "spool.flange_diameter");
  add("Inside width", "spool.inside_width");
  if (spool.flange_taper_rad != 0.0) add("Flange taper, each", "spool.flange_taper");
  if (spool.mass_kg) add("Empty spool", "spool.mass");
  add("Fiber diameter, overall", "fiber.diameter");
  if (sheet.plan.fiber().max_tension_N) add("Fiber bears at most", "fiber.max_tension");
  return group;
}

std::string reversal_words(const Reversal& reversal) {
  switch (reversal.kind) {
    case ReversalKind::instant: return "at once";
    case ReversalKind::dwell: return "dwell of " + counted(setting(reversal.turns), "turn");
    case ReversalKind::ramp: return "ramp of " + counted(setting(reversal.turns), "turn");
  }
  return "";
}

RowGroup traverse_group(const SetupSheet& sheet) {
  const Traverse& traverse = sheet.plan.traverse();
  RowGroup group{"Set the traverse", {}};
  const auto add = [&](const char* label, const char* path) {
    group.rows.push_back(setting_row(sheet, label, path, true));
  };
  add("Pitch, per spool turn", "traverse.pitch");
  add("Left stop, from flange", "traverse.left_stop");
  add("Right stop, from flange", "traverse.right_stop");
  group.rows.push_back({"Start at", traverse.start == Side::left ? "left stop" : "right stop", "", true});
  group.rows.push_back({"Motion", traverse.motion == Motion::stepped ? "stepped" : "continuous", "", true});
  if (traverse.motion == Motion::stepped) add("Step within", "traverse.step_angle");
  const std::optional<DialWords> turning = dial_words_at(sheet.plan, "traverse.reversal.turns");
  group.rows.push_back(
      {"Turn back", reversal_words(traverse.reversal), turning ? "dial " + turning->reading : "", true});
  add("Guide to spool", "traverse.free_length");
  return group;
}

std::string ceiling_words(const SetupSheet& sheet) {
  const std::string ceiling = setting(*sheet.plan.takeup()->speed_ceiling_rpm) + " rpm";
  const std::optional<DialWords> dialled = dial_words_at(sheet.plan, "takeup.speed_ceiling");
  return dialled ? fmt::format("{} = {}", dialled->reading, ceiling) : ceiling;
}

RowGroup line_group(const SetupSheet& sheet) {
  RowGroup group{"Set line and take-up", {}};
  const auto& takeup = sheet.plan.takeup();
  group.rows.push_back(setting_row(sheet, "Line speed", "wind.line_speed", true));
  group.rows.push_back(setting_row(sheet, "Tension, empty barrel", "wind.tension", true));
  group.rows.push_back({"Control", takeup ? words_for(takeup->control) : "not set", "", true});
  if (takeup && takeup->control == TensionControl::taper) {
    group.rows.push_back({"Taper", setting(100.0 * takeup->taper) + " %", "", true});
  }
  const MachineCurves& c = sheet.run.curves;
  if (!c.current_A.empty()) {
    group.rows.push_back({"Clutch current, empty", figure(c.current_A.front(), 3) + " A",
                          "full: " + figure(c.current_A.back(), 3) + " A", true});
  } else {
    group.rows.push_back({"Clutch current", "not set", "", true});
  }
  group.rows.push_back(
      {"Take-up speed ceiling", takeup && takeup->speed_ceiling_rpm ? ceiling_words(sheet) : "not set",
       sheet.run.least_speed_ceiling_rpm ? "over " + figure(*sheet.run.least_speed_ceiling_rpm, 1) + " rpm" : "",
       true});
  return group;
}

const char* counter_words(LengthStop mode) {
  switch (mode) {
    case LengthStop::stop: return "stops the line";
    case LengthStop::signal: return "only signals";
    case LengthStop::both: return "signals and stops";
  }
  return "";
}

// "starts in 6 s, stops in 4 s", as far as the plan says.
std::string ramp_words(const Takeup& takeup) {
  std::string words;
  if (takeup.start_ramp_s) words = fmt::format("starts in {} s", setting(*takeup.start_ramp_s));
  if (takeup.stop_ramp_s)
    words += fmt::format("{}stops in {} s", words.empty() ? "" : ", ", setting(*takeup.stop_ramp_s));
  return words;
}

RowGroup counter_group(const SetupSheet& sheet) {
  const CounterSetting& counter = sheet.run.counter;
  RowGroup group{"Set the length counter", {}};
  const auto add = [&](const char* label, double mm, int decimals, bool tick) {
    group.rows.push_back(amount_row(sheet, label, Amount::fiber_length, mm / 1e3, decimals, tick));
  };
  const bool by_length = sheet.build.stopped_by == StopReason::length;
  const bool by_rim = sheet.build.stopped_by == StopReason::rim;
  add(by_length ? "Length wanted" : by_rim ? "Length at the rim" : "Length at the end", counter.end_mm, 1, false);
  group.rows.push_back({"Turns of the spool", figure(sheet.build.turns, 1), "", false});
  if (counter.reading) {
    group.rows.push_back(
        {"Set the counter to", counter_shows(counter.reading->reading, counter.reading->unit),
         "ends at " + both_ways(sheet.plan, Amount::fiber_length, counter.reading->end_mm / 1e3, 1).own, true});
  }
  if (counter.set_to_mm) {
    const bool ramp = sheet.plan.takeup()->stop_ramp_s.has_value(), signals = counter.mode == LengthStop::signal;
    if (!counter.reading) add("Set the counter to", *counter.set_to_mm, 1, true);
    add(ramp ? (signals ? "Overrun, with its ramp" : "Lead, with its ramp")
             : (signals ? "Overrun, reaction time" : "Lead, reaction time"),
        *counter.lead_mm, 2, false);
    if (!ramp) add("and per s of run-down", *counter.per_ramp_second_mm, 2, false);
  }
  group.rows.push_back(
      {"At that length it", sheet.plan.takeup() ? counter_words(counter.mode) : "not set", "", true});
  if (sheet.plan.takeup()) {
    group.rows.push_back(
        {"Reaction time", setting(counter.reaction_time_s) + " s", ramp_words(*sheet.plan.takeup()), false});
  }
  return group;
}

}  // namespace

double draw_settings(Drawing& page, const Box& band, const SetupSheet& sheet) {
  constexpr double gap = 8.0;
  const double width = 0.5 * (band.width - gap);
  const double left =
      draw_row_groups(page, {band.left, band.top, width, band.height}, {spool_group(sheet), traverse_group(sheet)});
  const double right = draw_row_groups(page, {band.left + width + gap, band.top, width, band.height},
                                       {line_group(sheet), counter_group(sheet)});
  return std::max(left, right);
}

namespace {

// Words in bold, and behind them the other system.
void draw_cell(Drawing& page, Point base, const BothWays& shown) {
  const Type own{2.6, true, Align::start, ink};
  put(page, base, shown.own, own);
  put(page, {base.x + width_of(shown.own, own) + 1.4, base.y}, shown.other, {2.5, false, Align::start, faint_ink});
}

// As the counter itself shows it, where it is known.
BothWays counter_cell(const SetupSheet& sheet, const StepPlace& step) {
  if (!step.length_mm) return {"not reached", ""};
  if (step.counter_reading && sheet.run.counter.reading)
    return {counter_shows(*step.counter_reading, sheet.run.counter.reading->unit), ""};
  return both_ways(sheet.plan, Amount::fiber_length, *step.length_mm / 1e3, 1);
}

}  // namespace

double draw_steps(Drawing& page, const Box& band, const SetupSheet& sheet) {
  constexpr double row = 4.0, columns[] = {0.0, 0.09, 0.30, 0.40, 0.60, 0.80};
  constexpr const char* heads[] = {"from layer", "at counter", "at turn", "pitch", "left stop", "right stop"};
  const std::vector<StepPlace>& steps = sheet.run.steps;
  if (steps.empty()) return band.top - 3.5;
  double top = draw_heading(page, band.left, band.width, band.top, "Change on the way");
  const auto at = [&](int column) { return Point{band.left + columns[column] * band.width, top + 2.9}; };
  for (int i = 0; i < 6; ++i) put(page, at(i), heads[i], {2.5, false, Align::start, faint_ink});
  top += row;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const StepPlace& step = steps[i];
    if (top + 2.0 * row > band.bottom() && i + 1 < steps.size()) {
      put(page, at(0), fmt::format("and {} more: see the plan", steps.size() - i), {2.5, false, Align::start, ink});
      return top + row;
    }
    const auto length = [&](double mm) { return both_ways(sheet.plan, Amount::small_length, mm, 3); };
    draw_cell(page, at(0), {fmt::format("{}", step.from_layer), ""});
    draw_cell(page, at(1), counter_cell(sheet, step));
    draw_cell(page, at(2), {step.turns ? figure(*step.turns, 1) : "-", ""});
    const auto dialled = [&](const char* key, double mm) {
      const std::optional<DialWords> words = dial_words_in_layer(sheet.plan, key, step.from_layer);
      return words ? BothWays{words->reading, "= " + words->laid} : length(mm);
    };
    draw_cell(page, at(3), dialled("pitch", step.pitch_mm));
    draw_cell(page, at(4), dialled("left_stop", step.left_stop_mm));
    draw_cell(page, at(5), dialled("right_stop", step.right_stop_mm));
    top += row;
  }
  return top;
}

double draw_checklist(Drawing& page, const Box& band) {
  constexpr const char* checks[] = {"Spool sound, clean, clamped; barrel and flanges measured",
                                    "Start end fixed; fiber through all guides",
                                    "Guide at its start; both stops tried by hand",
                                    "Counter at zero and set; its stop or signal tried",
                                    "Pull measured with a gauge at the clutch's setting",
                                    "Guards closed; emergency stop tried"};
  constexpr double row = 5.0, box = 2.7, height = 4.4 + 3.0 * row;
  if (band.height < height) return band.top;
  const double top = draw_heading(page, band.left, band.width, band.top, "Before the start");
  for (int i = 0; i < 6; ++i) {
    const Point at{band.left + 0.5 * (i % 2) * (band.width + 8.0), top + 1.2 + row * (i / 2)};
    draw_box(page, {at.x, at.y, box, box}, {}, Pen{ink, 0.2, {}});
    put(page, {at.x + box + 1.5, at.y + 2.35}, checks[i], {2.6, false, Align::start, ink});
  }
  return band.top + height;
}

double draw_machine_warnings(Drawing& page, const Box& band, const SetupSheet& sheet) {
  std::vector<const MachineWarning*> grave;
  for (const MachineWarning& warning : sheet.run.warnings) {
    if (!warning.note) grave.push_back(&warning);
  }
  if (grave.empty()) return band.top - 3.5;
  double top = draw_heading(page, band.left, band.width, band.top, "Mind this about the machine") + 0.6;
  const Type type{2.6, false, Align::start, ink};
  for (std::size_t i = 0; i < grave.size(); ++i) {
    const auto lines = lines_of(grave[i]->text, band.width - 5.0, type);
    const double height = 1.3 * type.height_mm * static_cast<double>(lines.size());
    if (top + height > band.bottom() - (i + 1 == grave.size() ? 0.0 : 4.0)) {
      put(page, {band.left, top + 2.6},
          fmt::format("and {} more: \"laywright lay\" prints them all", grave.size() - i), type);
      return top + 4.0;
    }
    put(page, {band.left, top + 2.6}, "!", {3.4, true, Align::start, ink});
    top = put_lines(page, {band.left + 5.0, top + 2.6}, lines, type) - 2.6 + 0.8;
  }
  return top;
}

}  // namespace laywright
