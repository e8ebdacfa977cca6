#include "advise/fit_model.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

#include <fmt/format.h>

#include "advise/draws.h"
#include "advise/trial.h"
#include "measure/fiber_line.h"
#include "measure/layer_width.h"
#include "measure/measurements.h"
#include "plan/dialling.h"
#include "plan/guide_cycle.h"
#include "plan/plan_values.h"
#include "plan/size_estimate.h"

namespace laywright {
namespace {

constexpr std::array<const char*, 3> zone_words{"left", "middle", "right"};

double layer_turns(const PlanDraft& draft) {
  const GuideCycle cycle = guide_cycle(draft.spool, draft.traverse);
  return cycle.stroke_mm / cycle.pitch_mm;
}

// Whether the counter of turns is itself a measurement, or says where the others were read.
bool turns_are_read(const Reading& r) { return r.counter_turns && r.layer; }
bool length_is_read(const Reading& r) { return r.counter_length_mm && (r.layer || r.counter_turns); }

// A build as what can be read on it.
class Read {
 public:
  Read(const Build& build, const Measurements& measurements, double barrel_mm)
      : build_(build), layers_(measurements.layers), line_(build), barrel_mm_(barrel_mm) {}

  [[nodiscard]] std::size_t stroke_at(double turn) const {
    constexpr double round_off = 1e-6;  // where a layer ends, the next one begins
    const double node = turn * build_.stations_per_turn + round_off;
    std::size_t s = 0;
    while (s + 1 < build_.strokes.size() && static_cast<double>(build_.strokes[s + 1].first_node) <= node) ++s;
    return s;
  }
  // Of the last layer that is whole at this turn; of the first while none is.
  [[nodiscard]] double width_at(double turn) const {
    const std::size_t now = stroke_at(turn);
    return layer_width_mm(build_, now > 0 ? now - 1 : 0);
  }

  [[nodiscard]] double turn_at_end_of(int layer) const {
    const auto next = static_cast<std::size_t>(layer);
    if (next >= build_.strokes.size()) return build_.turns;
    return static_cast<double>(build_.strokes[next].first_node) / build_.stations_per_turn;
  }
  [[nodiscard]] double turns() const { return build_.turns; }
  [[nodiscard]] double length_at(double turn) const {
    const double node = std::clamp(turn, 0.0, build_.turns) * build_.stations_per_turn;
    const double whole = std::floor(node);
    const auto k = static_cast<std::size_t>(whole);
    const double at = line_.at(k);
    return at + (node - whole) * (line_.at(k + 1) - at);
  }
  [[nodiscard]] double turn_at_length(double length_mm) const {
    double low = 0.0, high = build_.turns;
    for (int i = 0; i < 60; ++i) {
      const double middle = 0.5 * (low + high);
      (length_at(middle) < length_mm ? low : high) = middle;
    }
    return low;
  }
  // Between the diameters before and after the stroke, as far as the stroke has passed the zone.
  [[nodiscard]] double diameter_at(double turn, std::size_t zone) const {
    const double node = turn * build_.stations_per_turn;
    const std::size_t s = stroke_at(turn);
    const double begin = static_cast<double>(build_.strokes[s].first_node);
    const double end = static_cast<double>(build_.end_of(s));
    const double before = s == 0 ? barrel_mm_ : layers_[s - 1].outer_diameter_mm[zone];
    constexpr std::array<std::array<double, 2>, 3> zones{{{0.0, 0.05}, {0.25, 0.75}, {0.95, 1.0}}};
    std::array<double, 2> passed = zones[zone];
    if (build_.strokes[s].direction < 0) passed = {1.0 - zones[zone][1], 1.0 - zones[zone][0]};
    const double way = (node - begin) / std::max(1.0, end - begin);
    const double share = std::clamp((way - passed[0]) / (passed[1] - passed[0]), 0.0, 1.0);
    return before + share * (layers_[s].outer_diameter_mm[zone] - before);
  }

 private:
  const Build& build_;
  const std::vector<LayerRow>& layers_;
  FiberLine line_;
  double barrel_mm_;
};

// As the whole traverse is off, so it is where a step of the wind has set it otherwise.
void set_in_steps(PlanDraft& draft, const Unknown& unknown, double value) {
  const double more = value - unknown.believed;
  for (WindStep& step : draft.wind.steps) {
    if (unknown.path == "traverse.pitch" && step.pitch_mm) *step.pitch_mm *= value / unknown.believed;
    if (unknown.path == "traverse.left_stop" && step.left_stop_mm) *step.left_stop_mm += more;
    if (unknown.path == "traverse.right_stop" && step.right_stop_mm) *step.right_stop_mm += more;
  }
}

// The turn at which it was read.
double turn_of(const Read& read, const Reading& reading, const Wind& wind) {
  if (reading.layer) return read.turn_at_end_of(*reading.layer);
  if (reading.counter_turns) return *reading.counter_turns;
  if (reading.counter_length_mm) return read.turn_at_length(*reading.counter_length_mm);
  // The end of the wind, as the plan has it.
  if (wind.length_mm) return read.turn_at_length(*wind.length_mm);
  return wind.turns.value_or(read.turns());
}

}  // namespace

std::vector<Observation> observations_of(const Plan& plan, const AsWound& wound, const ReadingErrors& errors) {
  const double turns_sigma = errors.turns_share * layer_turns(plan.draft());
  const double diameter_sigma = errors.diameter_mm > 0.0 ? errors.diameter_mm : 0.1 * plan.fiber().diameter_mm;
  const double width_sigma = errors.width_mm > 0.0 ? errors.width_mm : 0.25 * plan.fiber().diameter_mm;
  std::vector<Observation> all;
  for (std::size_t i = 0; i < wound.readings.size(); ++i) {
    const Reading& r = wound.readings[i];
    const auto add = [&, place = place_words(r)](std::string what, double measured, double sigma, bool is_turns) {
      all.push_back({place, std::move(what), measured, sigma, is_turns, i});
    };
    if (r.layer_turns && r.layer) add("its turns", *r.layer_turns, turns_sigma, true);
    if (turns_are_read(r)) add("turns counted", *r.counter_turns, turns_sigma, true);
    if (length_is_read(r)) add("length", *r.counter_length_mm, errors.length_share * *r.counter_length_mm, false);
    for (std::size_t zone = 0; zone < zone_words.size(); ++zone) {
      if (r.diameter_mm[zone])
        add(fmt::format("diameter {}", zone_words[zone]), *r.diameter_mm[zone], diameter_sigma, false);
    }
    if (r.width_mm) add("width", *r.width_mm, width_sigma, false);
  }
  return all;
}

FitModel::FitModel(const Plan& plan, const AsWound& wound, const std::vector<Unknown>& unknowns,
                   const LaySettings& settings)
    : plan_(plan), wound_(wound), unknowns_(unknowns), settings_(settings) {
  constexpr double spare = 1.05;
  const double layer = layer_turns(plan.draft());
  for (const Reading& reading : wound.readings) {
    if (reading.at_end && !reading.counter_turns && !reading.counter_length_mm) {
      turns_ = std::max(turns_, turns_estimate(plan.draft()));
    }
    if (reading.layer) turns_ = std::max(turns_, (*reading.layer + 0.5) * layer);
    if (reading.counter_turns) turns_ = std::max(turns_, *reading.counter_turns);
    if (reading.counter_length_mm) {
      turns_ = std::max(turns_, *reading.counter_length_mm / (std::numbers::pi * plan.spool().barrel_diameter_mm));
    }
  }
  turns_ = spare * (turns_ > 0.0 ? turns_ : turns_estimate(plan.draft()));
}

PlanDraft FitModel::draft_at(const std::vector<double>& values) const {
  PlanDraft draft =
      without_dials(plan_.draft());  // what a spool shows of the machine lies between the steps of its dials
  for (std::size_t i = 0; i < unknowns_.size(); ++i) {
    const Unknown& unknown = unknowns_[i];
    const double value = std::clamp(values[i], unknown.least, unknown.most);
    set_in_steps(draft, unknown, value);
    set_value(draft, unknown.path, value);
    const bool dwells = unknown.path == "traverse.reversal.turns" && values[i] > 0.0;
    if (dwells && draft.traverse.reversal.kind == ReversalKind::instant) {
      draft.traverse.reversal.kind = ReversalKind::dwell;
    }
  }
  return draft;
}

struct FitModel::Laid {
  Build build;
  Measurements measurements;
  double barrel_mm = 0.0;
};

std::optional<FitModel::Laid> FitModel::laid(const PlanDraft& draft, const LaySettings& settings,
                                             Progress& progress) const {
  const Result<Plan> plan = check(shortened(draft, turns_));
  if (!plan.ok()) return std::nullopt;
  Result<Build> build = lay(plan.value(), settings, progress);
  if (!build.ok()) return std::nullopt;
  Measurements measurements = measure(plan.value(), build.value(), progress);
  if (progress.cancelled()) return std::nullopt;
  return Laid{std::move(build).value(), std::move(measurements), plan.value().spool().barrel_diameter_mm};
}

std::optional<std::vector<double>> FitModel::readings_of(const PlanDraft& draft, const LaySettings& settings,
                                                         Progress& progress) const {
  const std::optional<Laid> wind = laid(draft, settings, progress);
  if (!wind) return std::nullopt;
  const Read read(wind->build, wind->measurements, wind->barrel_mm);
  std::vector<double> values;
  for (const Reading& r : wound_.readings) {
    const double turn = turn_of(read, r, plan_.wind());
    if (r.layer_turns && r.layer) values.push_back(turn - (*r.layer > 1 ? read.turn_at_end_of(*r.layer - 1) : 0.0));
    if (turns_are_read(r)) values.push_back(turn);
    if (length_is_read(r)) values.push_back(read.length_at(turn));
    for (std::size_t zone = 0; zone < zone_words.size(); ++zone) {
      if (r.diameter_mm[zone]) values.push_back(read.diameter_at(turn, zone));
    }
    if (r.width_mm) values.push_back(read.width_at(turn));
  }
  return values;
}

std::optional<FitModel::Place> FitModel::last_place(const std::vector<double>& values, Progress& progress) const {
  const std::optional<Laid> wind = laid(draft_at(values), settings_, progress);
  if (!wind) return std::nullopt;
  const Read read(wind->build, wind->measurements, wind->barrel_mm);
  Place last;
  for (const Reading& reading : wound_.readings)
    last.turn = std::max(last.turn, turn_of(read, reading, plan_.wind()));
  last.length_mm = read.length_at(last.turn);
  last.layer = static_cast<int>(read.stroke_at(last.turn)) + 1;
  return last;
}

std::vector<std::optional<std::vector<double>>> FitModel::predict(const std::vector<std::vector<double>>& points,
                                                                  int threads, const Stretch& stretch) const {
  std::vector<std::optional<std::vector<double>>> all(points.size());
  // Each with a seed of its own: what scatters from stroke to stroke is not known either.
  run_parallel(points.size(), threads, stretch, [&](std::size_t i, Progress& inner) {
    LaySettings settings = settings_;
    settings.seed += i;
    all[i] = readings_of(draft_at(points[i]), settings, inner);
  });
  return all;
}

std::vector<std::optional<std::vector<double>>> FitModel::predict_draws(int draws, int threads,
                                                                        const Stretch& stretch) const {
  const std::vector<TrialOrder> orders = draws_of(plan_.draft(), settings_, draws);
  std::vector<std::optional<std::vector<double>>> all(orders.size());
  run_parallel(orders.size(), threads, stretch, [&](std::size_t i, Progress& inner) {
    all[i] = readings_of(orders[i].draft, orders[i].settings, inner);
  });
  return all;
}

}  // namespace laywright
