#include "session/advice.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include <fmt/format.h>

#include "advise/setting_text.h"
#include "desk/plan_edits.h"
#include "desk/plan_state.h"
#include "jobs/thread.h"
#include "plan/plan_values.h"

namespace laywright {
namespace {

constexpr AdviceKind all_kinds[] = {AdviceKind::cause, AdviceKind::better, AdviceKind::study, AdviceKind::draws,
                                    AdviceKind::follow};

LaySettings settings_of(std::uint64_t seed) {
  LaySettings settings;
  settings.seed = seed;
  return settings;
}

Result<CauseAnswer> find_cause(const WoundPtr& wound, std::uint64_t seed, std::size_t finding, Progress& progress) {
  const Plan& plan = wound->plan();
  const CauseSettings settings{settings_of(seed), advice_threads()};
  Result<Explanation> found = explain(plan, wound->build(), wound->measurements(),
                                      wound->measurements().findings[finding], settings, progress);
  if (!found.ok()) return found.issues();
  CauseAnswer answer{{plan, seed}, finding, std::move(found).value(), {}};
  for (const Remedy& remedy : answer.explanation.remedies) {
    answer.options.push_back(neat(plan.asked(), with_changes(plan.asked(), remedy.changes)));
  }
  return answer;
}

Result<BetterAnswer> find_better(const Plan& plan, std::uint64_t seed, const BetterRequest& request,
                                 Progress& progress) {
  ImproveSettings settings;
  settings.lay.seed = seed;
  settings.threads = advice_threads();
  settings.drift = request.drift;
  for (const std::string& path : request.keep) settings.requests.push_back({path, {}, {}, {}, true});
  Result<Improvement> found = improve(plan, settings, progress);
  if (!found.ok()) return found.issues();
  BetterAnswer answer{{plan, seed}, std::move(found).value(), {}};
  for (const Proposal& proposal : answer.improvement.best) {
    answer.options.push_back(neat(plan.asked(), proposal.draft));
  }
  return answer;
}

Result<StudyAnswer> make_study(const Plan& plan, const StudySpec& spec, Progress& progress) {
  Result<Study> made = run_study(plan, spec, 0, 1, advice_threads(), progress);
  if (!made.ok()) return made.issues();
  return StudyAnswer{{plan, spec.lay.seed}, std::move(made).value()};
}

Result<DrawsAnswer> judge_draws(const WoundPtr& wound, std::uint64_t seed, Progress& progress) {
  std::optional<WindVerdict> verdict =
      over_draws(wound->plan(), settings_of(seed), *wound->verdict(), usual_draws, advice_threads(), progress);
  if (!verdict) return stopped();
  return DrawsAnswer{{wound->plan(), seed}, std::make_shared<const WindVerdict>(std::move(*verdict))};
}

// A forecast as the window shows a build.
WoundPtr shown_build(const std::optional<Forecast>& forecast) {
  if (!forecast) return nullptr;
  auto wound = std::make_shared<Wound>(
      Wound{SceneSource(forecast->plan, forecast->build, forecast->measurements), Pass{}, 0});
  wound->late->set(forecast->run, std::make_shared<const WindVerdict>(forecast->verdict));
  return wound;
}

Result<FollowAnswer> follow_wind(const Plan& plan, std::uint64_t seed, const TypedReadings& typed,
                                 const AsWound& wound, Progress& progress) {
  FollowSettings settings;
  settings.lay = settings_of(seed);
  settings.lay.fidelity = search_fidelity;
  settings.threads = advice_threads();
  Result<Followed> found = follow(plan, wound, settings, progress);
  if (!found.ok()) return found.issues();
  FollowAnswer answer{{plan, seed}, settings.lay.fidelity, typed, wound, std::move(found).value(), nullptr, nullptr};
  answer.unchanged = shown_build(answer.followed.unchanged);
  answer.changed = shown_build(answer.followed.changed);
  return answer;
}

PlanDraft row_option(const StudyAnswer& answer, const StudyRow& row) {
  LaySettings lay = answer.study.spec.lay;
  const PlanDraft& plan = answer.of.plan.asked();
  return neat(plan, row_plan(plan, answer.study.spec, row.values, lay));
}

// But for the keys that the study varies.
bool same_beside_axes(const StudyAnswer& answer, PlanDraft now) {
  const PlanDraft& before = answer.of.plan.asked();
  for (const StudyAxis& axis : answer.study.spec.axes) {
    const std::optional<double> value = value_at(before, axis.path);
    if (field_at(now, axis.path) == nullptr) return false;
    value ? set_value(now, axis.path, *value) : clear_value(now, axis.path);
  }
  return same_wind(before, std::move(now));
}

// But for what is lost in nine digits. It spares the making of every row's plan, many times a second.
bool is_near(const std::vector<double>& values, const std::vector<double>& place) {
  constexpr double digits = 1e-8;
  return std::equal(values.begin(), values.end(), place.begin(), place.end(), [](double a, double b) {
    return a == b || std::abs(a - b) <= digits * std::max(std::abs(a), std::abs(b));
  });
}

Standing standing_in(const StudyAnswer& answer, const PlanDraft& now) {
  if (!same_beside_axes(answer, now)) return {true, std::nullopt};
  const auto place = place_in(answer.study, now);
  if (!place) return {};
  const auto& rows = answer.study.rows;
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const StudyRow& row) {
    return is_near(row.values, *place) && same_wind(row_option(answer, row), now);
  });
  if (found == rows.end()) return {};
  return {false, static_cast<std::size_t>(found - rows.begin())};
}

Standing standing_in(const AdviceBasis& of, const std::vector<PlanDraft>& options, const PlanDraft& now) {
  const auto found =
      std::find_if(options.begin(), options.end(), [&](const PlanDraft& option) { return same_wind(option, now); });
  if (found != options.end()) return {false, static_cast<std::size_t>(found - options.begin())};
  return {!same_wind(of.plan.asked(), now), std::nullopt};
}

}  // namespace

int advice_threads() { return std::max(1, threads_at_hand() - 1); }

Advice::Advice(const std::function<void()>& wake)
    : cause_("the search for the cause", wake),
      better_("the search for better settings", wake),
      study_("the study", wake),
      draws_("the verdict over several draws", wake),
      follow_("following the wind", wake) {}

void Advice::ask_cause(const WoundPtr& wound, std::uint64_t seed, std::size_t finding) {
  cause_.ask([=](Progress& progress) { return find_cause(wound, seed, finding, progress); });
}

void Advice::ask_better(const Plan& plan, std::uint64_t seed, const BetterRequest& request) {
  better_.ask([=](Progress& progress) { return find_better(plan, seed, request, progress); });
}

void Advice::ask_study(const Plan& plan, const StudySpec& spec) {
  study_.ask([=](Progress& progress) { return make_study(plan, spec, progress); });
}

void Advice::ask_draws(const WoundPtr& wound, std::uint64_t seed) {
  draws_.ask([=](Progress& progress) { return judge_draws(wound, seed, progress); });
}

void Advice::ask_follow(const Plan& plan, std::uint64_t seed, const TypedReadings& typed, const AsWound& wound) {
  follow_.ask([=](Progress& progress) { return follow_wind(plan, seed, typed, wound, progress); });
}

void Advice::stop(AdviceKind kind) {
  switch (kind) {
    case AdviceKind::cause: return cause_.stop();
    case AdviceKind::better: return better_.stop();
    case AdviceKind::study: return study_.stop();
    case AdviceKind::draws: return draws_.stop();
    case AdviceKind::follow: return follow_.stop();
  }
}

void Advice::stop_all() {
  for (const AdviceKind kind : all_kinds) stop(kind);
}

void Advice::forget(AdviceKind kind) {
  switch (kind) {
    case AdviceKind::cause: return cause_.forget();
    case AdviceKind::better: return better_.forget();
    case AdviceKind::study: return study_.forget();
    case AdviceKind::draws: return draws_.forget();
    case AdviceKind::follow: return follow_.forget();
  }
}

bool Advice::poll() {
  const bool cause = cause_.poll(), better = better_.poll(), study = study_.poll(), draws = draws_.poll(),
             follow = follow_.poll();
  return cause || better || study || draws || follow;
}

InquiryStatus Advice::status(AdviceKind kind) const {
  switch (kind) {
    case AdviceKind::cause: return cause_.status();
    case AdviceKind::better: return better_.status();
    case AdviceKind::study: return study_.status();
    case AdviceKind::draws: return draws_.status();
    case AdviceKind::follow: return follow_.status();
  }
  return {};
}

bool Advice::busy() const {
  return std::any_of(std::begin(all_kinds), std::end(all_kinds), [&](AdviceKind kind) { return status(kind).busy; });
}

const AdviceBasis* Advice::basis(AdviceKind kind) const {
  switch (kind) {
    case AdviceKind::cause: return cause() ? &cause()->of : nullptr;
    case AdviceKind::better: return better() ? &better()->of : nullptr;
    case AdviceKind::study: return study() ? &study()->of : nullptr;
    case AdviceKind::draws: return draws() ? &draws()->of : nullptr;
    case AdviceKind::follow: return follow() ? &follow()->of : nullptr;
  }
  return nullptr;
}

std::optional<Standing> Advice::standing(AdviceKind kind, const PlanDraft& now, std::uint64_t seed) const {
  const AdviceBasis* of = basis(kind);
  if (of == nullptr) return std::nullopt;
  if (of->seed != seed) return Standing{true, std::nullopt};
  switch (kind) {
    case AdviceKind::cause: return standing_in(*of, cause()->options, now);
    case AdviceKind::better: return standing_in(*of, better()->options, now);
    case AdviceKind::study: return standing_in(*study(), now);
    case AdviceKind::draws:
    case AdviceKind::follow: return standing_in(*of, {}, now);
  }
  return std::nullopt;
}

std::optional<PlanDraft> Advice::option(AdviceKind kind, std::size_t index) const {
  if (basis(kind) == nullptr || kind == AdviceKind::draws || kind == AdviceKind::follow) return std::nullopt;
  if (kind == AdviceKind::study) {
    const auto& rows = study()->study.rows;
    if (index >= rows.size() || rows[index].figures.empty()) return std::nullopt;
    return row_option(*study(), rows[index]);
  }
  if (kind == AdviceKind::cause) {
    const auto& remedies = cause()->explanation.remedies;
    if (index >= remedies.size() || !remedies[index].is_offered()) return std::nullopt;
  }
  const std::vector<PlanDraft>& options = kind == AdviceKind::cause ? cause()->options : better()->options;
  return index < options.size() ? std::optional(options[index]) : std::nullopt;
}

std::string Advice::option_name(AdviceKind kind, std::size_t index) {
  switch (kind) {
    case AdviceKind::cause: return fmt::format("remedy {}", index + 1);
    case AdviceKind::better: return fmt::format("proposal {}", index + 1);
    case AdviceKind::study: return fmt::format("build {} of the study", index + 1);
    case AdviceKind::draws:
    case AdviceKind::follow: return "";
  }
  return "";
}

std::optional<std::vector<double>> place_in(const Study& study, const PlanDraft& now) {
  std::vector<double> place;
  for (const StudyAxis& axis : study.spec.axes) {
    const std::optional<double> value = value_at(now, axis.path);
    if (!value) return std::nullopt;
    place.push_back(*value);
  }
  return place;
}

}  // namespace laywright
