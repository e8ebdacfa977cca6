// Advice on an open plan: why a finding is there, better settings, a study of settings, what other draws come to, whether a wind goes by the plan. Each answer belongs to the plan it
// was made of, and most have options: settings that the plan can be set to.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "advise/cause.h"
#include "advise/improve.h"
#include "advise/robust.h"
#include "advise/study.h"
#include "desk/wound.h"
#include "follow/follow.h"
#include "session/advice_request.h"
#include "session/inquiry.h"
#include "session/typed_readings.h"

namespace laywright {

// What an answer was made of.
struct AdviceBasis {
  Plan plan;
  std::uint64_t seed = 1;
};

struct CauseAnswer {
  AdviceBasis of;
  std::size_t finding = 0;  // of the build
  Explanation explanation;
  std::vector<PlanDraft> options;  // by remedy
};

struct BetterAnswer {
  AdviceBasis of;
  Improvement improvement;
  std::vector<PlanDraft> options;  // by proposal
};

struct StudyAnswer {
  AdviceBasis of;
  Study study;  // a complete grid; options are its rows
};

// A build judged over several draws; it has no options.
struct DrawsAnswer {
  AdviceBasis of;
  VerdictPtr verdict;
};

// A wind that is followed; it has no options. What it will be is laid as a build is, to be looked at.
struct FollowAnswer {
  AdviceBasis of;
  double fidelity = 1.0;  // with which its winds were laid
  TypedReadings typed;    // as the readings stood when it was asked; lines of `wound` are its rows, from 2 on
  AsWound wound;
  Followed followed;
  WoundPtr unchanged, changed;  // the second null where nothing is to be changed
};

class Advice {
 public:
  // `wake`: see Inquiry.
  explicit Advice(const std::function<void()>& wake);

  // Precondition: the wound is a full one, and has that finding.
  void ask_cause(const WoundPtr& wound, std::uint64_t seed, std::size_t finding);
  void ask_better(const Plan& plan, std::uint64_t seed, const BetterRequest& request);
  // Precondition: check_study() has nothing against the spec.
  void ask_study(const Plan& plan, const StudySpec& spec);
  // Precondition: the wound is a full one, and has its verdict.
  void ask_draws(const WoundPtr& wound, std::uint64_t seed);

  // Precondition: what was read is of a spool wound by that plan.
  void ask_follow(const Plan& plan, std::uint64_t seed, const TypedReadings& typed, const AsWound& wound);

  void stop(AdviceKind kind);
  void stop_all();
  void forget(AdviceKind kind);
  bool poll();

  [[nodiscard]] InquiryStatus status(AdviceKind kind) const;
  [[nodiscard]] bool busy() const;

  // The newest of each; null until there is one.
  [[nodiscard]] const std::shared_ptr<const CauseAnswer>& cause() const { return cause_.answer(); }
  [[nodiscard]] const std::shared_ptr<const BetterAnswer>& better() const { return better_.answer(); }
  [[nodiscard]] const std::shared_ptr<const StudyAnswer>& study() const { return study_.answer(); }
  [[nodiscard]] const std::shared_ptr<const DrawsAnswer>& draws() const { return draws_.answer(); }

  [[nodiscard]] const std::shared_ptr<const FollowAnswer>& follow() const { return follow_.answer(); }

  // None where there is no answer.
  [[nodiscard]] std::optional<Standing> standing(AdviceKind kind, const PlanDraft& now, std::uint64_t seed) const;
  // The plan as an answer would have it. None: there is no such option, no sound plan with it, or
  // nobody can set it (a flaw).
  [[nodiscard]] std::optional<PlanDraft> option(AdviceKind kind, std::size_t index) const;
  // For the history: "remedy 1".
  [[nodiscard]] static std::string option_name(AdviceKind kind, std::size_t index);
  // Null where there is no answer.
  [[nodiscard]] const AdviceBasis* basis(AdviceKind kind) const;

 private:
  Inquiry<CauseAnswer> cause_;
  Inquiry<BetterAnswer> better_;
  Inquiry<StudyAnswer> study_;
  Inquiry<DrawsAnswer> draws_;
  Inquiry<FollowAnswer> follow_;
};

// Threads for trials: one is left to the window.
[[nodiscard]] int advice_threads();

// Where the plan stands on the axes of a study, in their order. None where it has no value there.
[[nodiscard]] std::optional<std::vector<double>> place_in(const Study& study, const PlanDraft& now);

}  // namespace laywright
