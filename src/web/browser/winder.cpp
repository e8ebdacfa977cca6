#include "web/browser/winder.h"

#include <chrono>
#include <stdexcept>
#include <utility>

#include <emscripten.h>

#include "desk/wound_bytes.h"
#include "lay/lay.h"
#include "measure/measurements.h"

namespace laywright {
namespace {

// Of the time for a pass, the part that laying takes; the rest is measuring.
constexpr double laying_part = 0.7;

// clang-format off
EM_JS(void, tell_share, (double share), { Module.tellShare(share); })
// clang-format on

}  // namespace

Winder::Winder(const Plan& plan, std::uint64_t seed, const LayCost& cost)
    : plan_(plan), seed_(seed), cost_(cost), passes_(passes_for(plan, cost)) {}

void Winder::wind(std::size_t index) {
  using Clock = std::chrono::steady_clock;
  const Pass& pass = passes_.at(index);
  const Plan plan = plan_for(plan_, pass);
  const Clock::time_point began = Clock::now();
  build_ = Build();
  bytes_ = {};
  Progress laying([](double share) { tell_share(laying_part * share); });
  Result<Build> laid = lay(plan, {seed_, pass.fidelity, pass.full()}, laying);
  if (!laid) throw std::runtime_error(laid.issues().front().what);
  build_ = std::move(laid).value();
  Progress measuring([](double share) { tell_share(laying_part + (1.0 - laying_part) * share); });
  const Measurements measurements = measure(plan, build_, measuring);
  const double seconds = std::chrono::duration<double>(Clock::now() - began).count();
  if (index == 0) cost_.learn(seconds, static_cast<double>(build_.nodes.size()));
  bytes_ = to_bytes(build_, measurements);
}

}  // namespace laywright
