#include "figures/machine_text.h"

#include <algorithm>

#include <fmt/format.h>

#include "figures/dial_words.h"
#include "figures/figures.h"

namespace laywright {
namespace {

// "106.1 to 98.2 rpm", or one figure where both read the same.
std::string from_to(const std::vector<double>& values, int decimals, const char* unit, double per = 1.0) {
  const std::string from = figure(values.front() / per, decimals), to = figure(values.back() / per, decimals);
  const std::string both = from == to ? from : fmt::format("{} to {}", from, to);
  return *unit == '\0' ? both : fmt::format("{} {}", both, unit);
}

std::string counter_words(const CounterSetting& counter) {
  if (counter.reading)
    return fmt::format("{}, by its own reading, to end at {} m",
                       counter_shows(counter.reading->reading, counter.reading->unit),
                       figure(counter.reading->end_mm / 1e3, 1));
  const std::string end = figure(counter.end_mm / 1e3, 1) + " m";
  if (!counter.set_to_mm || *counter.lead_mm == 0.0) return end;
  return fmt::format("{} m, {} m before the end at {}", figure(*counter.set_to_mm / 1e3, 1),
                     figure(*counter.lead_mm / 1e3, 1), end);
}

std::string figures_of(const Plan& plan, const TakeupRun& run) {
  const MachineCurves& c = run.curves;
  std::string text;
  if (!c.spool_rpm.empty()) {
    text += labelled("spool speed", from_to(c.spool_rpm, 1, "rpm, empty to full"));
    text += labelled("traverse", fmt::format("{}, {} reversals a minute", from_to(c.traverse_mm_per_s, 2, "mm/s"),
                                             from_to(c.reversals_per_min, 2, "")));
  }
  if (!c.tension_N.empty()) {
    text += labelled("tension",
                     fmt::format("{} with {}", from_to(c.tension_N, 3, "N"), words_for(plan.takeup()->control)));
    text += labelled("clutch", from_to(c.torque_Nmm, 4, "N m", 1e3) +
                                   (c.current_A.empty() ? "" : ", " + from_to(c.current_A, 3, "A")) +
                                   (c.clutch_heat_W.empty() ? "" : ", heat " + from_to(c.clutch_heat_W, 1, "W")));
  }
  if (plan.takeup() || run.counter.reading) text += labelled("counter set to", counter_words(run.counter));
  if (run.pressure) {
    text += labelled("on the barrel",
                     from_to({run.pressure->soft.barrel_MPa, run.pressure->stiff.barrel_MPa}, 2, "MPa") +
                         " of pressure, an estimate");
  }
  return text;
}

}  // namespace

std::string words_for(MachineWarningKind kind) {
  std::string words = name_of(kind);
  std::replace(words.begin(), words.end(), '_', ' ');
  return words;
}

const char* words_for(TensionControl control) {
  switch (control) {
    case TensionControl::constant_torque: return "constant torque";
    case TensionControl::constant_tension: return "constant tension";
    case TensionControl::taper: return "taper tension";
  }
  return "";
}

std::string pressure_assumptions(const PressureEstimate& estimate) {
  return fmt::format(
      "Estimate. The winding is taken as a linear elastic roll on a rigid barrel, wound at the planned tension{} "
      "with "
      "the build's fill and diameters; stiff: as stiff radially as around, soft: {} times less stiff radially. "
      "Creep, "
      "temperature and the give of the barrel are left out.",
      estimate.tension_assumed_constant ? ", held constant," : "",
      setting(estimate.soft.stiffness_ratio * estimate.soft.stiffness_ratio));
}

std::string machine_text(const Plan& plan, const TakeupRun& run) {
  const bool told = plan.takeup() || run.counter.reading || plan.wind().line_speed_mm_per_s || plan.wind().tension_N;
  const bool warned = std::any_of(run.warnings.begin(), run.warnings.end(), [](const auto& w) { return !w.note; });
  if (!told && !warned) return "";
  std::string text = "Machine\n" + figures_of(plan, run);
  for (const MachineWarning& warning : run.warnings) {
    if (warning.note && warning.kind != MachineWarningKind::length_overrun) continue;
    text += fmt::format("  Warning: {}\n", words_for(warning.kind)) + paragraph(warning.text, 6);
  }
  return text == "Machine\n" ? "" : text;
}

}  // namespace laywright
