// A plan that has been laid and measured, as the window shows it. Never changed once made, but that the machine's side
// is added; any thread may read it for as long as it holds it.
#pragma once

#include <cstdint>
#include <memory>
#include <mutex>
#include <utility>

#include "scene/scene_source.h"
#include "takeup/takeup_run.h"
#include "verdict/verdict.h"

namespace laywright {

// How finely, and how much of a wind is laid.
struct Pass {
  double fidelity = 1.0;  // as LaySettings
  double share = 1.0;     // of the wind's length, turns or expected turns; below 1: only its beginning

  [[nodiscard]] bool whole() const { return share >= 1.0; }
  [[nodiscard]] bool full() const { return fidelity >= 1.0 && whole(); }
};

using TakeupPtr = std::shared_ptr<const TakeupRun>;
using VerdictPtr = std::shared_ptr<const WindVerdict>;

// What the machine does over a wind, and the verdict that takes it in. They are computed when the build can be seen already:
// null until then.
class LateTakeup {
 public:
  [[nodiscard]] TakeupPtr get() const {
    const std::lock_guard lock(mutex_);
    return run_;
  }
  [[nodiscard]] VerdictPtr verdict() const {
    const std::lock_guard lock(mutex_);
    return verdict_;
  }
  void set(TakeupPtr run, VerdictPtr verdict) {
    const std::lock_guard lock(mutex_);
    run_ = std::move(run);
    verdict_ = std::move(verdict);
  }

 private:
  mutable std::mutex mutex_;
  TakeupPtr run_;
  VerdictPtr verdict_;
};

struct Wound {
  SceneSource source;
  Pass pass;
  std::uint64_t revision = 0;  // of the plan, the newer the greater
  std::shared_ptr<LateTakeup> late = std::make_shared<LateTakeup>();

  // As laid: of a pass that is not whole, the plan of a shorter wind.
  [[nodiscard]] const Plan& plan() const { return source.plan(); }
  [[nodiscard]] const Build& build() const { return source.build(); }
  [[nodiscard]] const Measurements& measurements() const { return source.measurements(); }
  [[nodiscard]] TakeupPtr takeup() const { return late->get(); }
  // Of a full pass only: a part of a wind, or a coarse one, is not to be judged by.
  [[nodiscard]] VerdictPtr verdict() const { return late->verdict(); }
};

using WoundPtr = std::shared_ptr<const Wound>;

// The plan of a pass: the same, or one that winds only the beginning.
[[nodiscard]] Plan plan_for(const Plan& plan, const Pass& pass);

}  // namespace laywright
