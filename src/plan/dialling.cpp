#include "plan/dialling.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "plan/checker.h"
#include "plan/dial_text.h"
#include "plan/plan_values.h"

namespace laywright {
namespace {

// A value of the draft that a dial sets.
struct Dialled {
  const DialPlace* place;
  const Dial* dial;
  std::string path;
  double value;
};

// A guide that turns back at once has no turns to dial.
bool is_set(const PlanDraft& draft, const DialPlace& place) {
  return place.name != "reversal" || draft.traverse.reversal.kind != ReversalKind::instant;
}

std::vector<Dialled> dialled_values(const PlanDraft& draft) {
  std::vector<Dialled> all;
  for (const DialPlace& place : dial_places()) {
    const auto found = draft.machine.dials.find(place.name);
    const std::optional<double> value = value_at(draft, place.path);
    if (found == draft.machine.dials.end() || !value || !is_set(draft, place)) continue;
    all.push_back({&place, &found->second, std::string(place.path), *value});
  }
  for (std::size_t i = 0; i < draft.wind.steps.size(); ++i) {
    for (const DialPlace& place : dial_places()) {
      const auto found = draft.machine.dials.find(place.name);
      const std::string path = fmt::format("{}.{}", step_path(i), place.name);
      const std::optional<double> value = value_at(draft, path);
      if (found != draft.machine.dials.end() && value) all.push_back({&place, &found->second, path, *value});
    }
  }
  return all;
}

// From a value of the plan to what the dial counts it as, and back.
struct Frame {
  double at_zero = 0.0, scale = 1.0;

  [[nodiscard]] double on_dial(double value) const { return at_zero + scale * value; }
  [[nodiscard]] double in_plan(double value) const { return (value - at_zero) / scale; }
};
Frame frame_of(const PlanDraft& draft, const Dial& dial) {
  if (dial.from_left) return {draft.spool.inside_width_mm, -1.0};
  return {0.0, pull_on_dial(draft, dial)};
}

DialAnswer answer_of(const PlanDraft& draft, const Dialled& each) {
  const Frame frame = frame_of(draft, *each.dial);
  const double on_dial = frame.on_dial(each.value);
  DialAnswer answer = set_dial(*each.dial, on_dial);
  const bool kept = answer.setting.value == on_dial;
  answer.setting.value = kept ? each.value : tidy(frame.in_plan(answer.setting.value));
  return answer;
}

// "0.1 mm to 0.5 mm", as far as there are bounds.
std::string range_words(const Checker& c, const Dialled& each) {
  const Frame frame = frame_of(c.draft(), *each.dial);
  DialRange range = range_of(*each.dial);
  if (frame.scale < 0.0) std::swap(range.low, range.high);
  const auto shown = [&](double value) { return c.in_unit_of(each.path, tidy(frame.in_plan(value))); };
  if (range.low && range.high) return fmt::format("{} to {}", shown(*range.low), shown(*range.high));
  if (range.low) return fmt::format("{} or more", shown(*range.low));
  return range.high ? fmt::format("up to {}", shown(*range.high)) : std::string();
}

}  // namespace

double pull_on_dial(const PlanDraft& draft, const Dial& dial) {
  if (!dial.diameter_mm) return 1.0;
  return (draft.spool.barrel_diameter_mm + draft.fiber.diameter_mm) / *dial.diameter_mm;
}

Dialling dial(const PlanDraft& draft) {
  Dialling dialling{draft, {}};
  for (const Dialled& each : dialled_values(draft)) {
    const DialAnswer answer = answer_of(draft, each);
    DialledSetting setting{each.path, std::string(each.place->name), each.value, each.value, {}, each.dial->unit};
    if (answer.reach == DialReach::settable) {
      setting.laid = answer.setting.value;
      setting.reading = answer.setting.reading;
      set_value(dialling.draft, each.path, setting.laid);
    }
    dialling.settings.push_back(std::move(setting));
  }
  return dialling;
}

PlanDraft as_dialled(const PlanDraft& draft) { return dial(draft).draft; }

PlanDraft without_dials(PlanDraft draft) {
  draft.machine.dials.clear();
  return draft;
}

std::optional<double> dial_step(const PlanDraft& draft, std::string_view path) {
  for (const Dialled& each : dialled_values(draft)) {
    if (each.path != path || !each.dial->step) continue;
    const DialAnswer answer = answer_of(draft, each);
    if (answer.reach != DialReach::settable) return std::nullopt;
    const double beside = answer.setting.reading + *each.dial->step;
    const double value = frame_of(draft, *each.dial).in_plan(value_at_reading(*each.dial, beside));
    const double by = std::abs(value - answer.setting.value);
    return by > 0.0 && std::isfinite(by) ? std::optional(by) : std::nullopt;
  }
  return std::nullopt;
}

const DialledSetting* dialled_at(const Plan& plan, std::string_view path) {
  const auto found = std::find_if(plan.dialled().begin(), plan.dialled().end(),
                                  [&](const DialledSetting& each) { return each.path == path; });
  return found == plan.dialled().end() ? nullptr : &*found;
}

std::string reading_words(const DialledSetting& setting) {
  return setting.reading ? fmt::format("{:.8g} {}", *setting.reading, setting.unit) : "not measured";
}

Issues told_of_dials(Issues issues, const Dialling& dialling) {
  for (Issue& issue : issues) {
    for (const DialledSetting& each : dialling.settings) {
      if (each.path == issue.key && each.moved())
        issue.what += fmt::format("; that is what the machine's dial gives at {}", reading_words(each));
    }
  }
  return issues;
}

void check_dials(Checker& c) {
  const PlanDraft& draft = c.draft();
  if (draft.machine.dials.empty()) return;
  for (const Dialled& each : dialled_values(draft)) {
    if (!c.sound(each.path) || !c.sound({"spool.barrel_diameter", "spool.inside_width", "fiber.diameter"})) continue;
    const DialAnswer answer = answer_of(draft, each);
    const std::string range = range_words(c, each);
    const std::string table = fmt::format("[{}.{}]", dials_table, each.place->name);
    if (answer.reach == DialReach::out_of_reach)
      c.error(each.path, fmt::format("cannot be set on the machine: its dial ({}) does not reach it", table), range);
    if (answer.reach == DialReach::not_measured)
      c.warn(each.path,
             fmt::format("is beyond what was measured on the machine's dial ({}), {}: what to dial is not known; "
                         "measure further, and add the points",
                         table, range));
  }
}

}  // namespace laywright
