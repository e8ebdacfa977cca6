// Sources of scenes for the tests, and what a scene is held against: slow, plain searches through all nodes.
#pragma once

#include <algorithm>
#include <cmath>
#include <memory>
#include <optional>
#include <random>

#include "lay/random_plans.h"
#include "measure/synthetic_build.h"
#include "scene/scene.h"

namespace laywright::scenes {

class Draw {
 public:
  explicit Draw(std::uint64_t seed) : engine_(seed) {}
  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(engine_() >> 11) * 0x1.0p-53;
  }
  std::size_t below(std::size_t count) { return static_cast<std::size_t>(engine_() % count); }

 private:
  std::mt19937_64 engine_;
};

inline SceneSource source_of(const Plan& plan, Build build, const ShellSettings& settings = {}) {
  Progress progress;
  auto measured = std::make_shared<const Measurements>(measure(plan, build, progress));
  return SceneSource(plan, std::make_shared<const Build>(std::move(build)), measured, settings);
}

// A plan at random, laid coarsely.
inline SceneSource random_source(std::uint64_t seed, double turns = 120.0, const ShellSettings& settings = {}) {
  random_plans::Wanted wanted;
  wanted.turns = turns;
  PlanDraft draft = random_plans::draft(seed, wanted);
  draft.fiber.section = FiberSection::flat;  // layers that lie in their order, nearly everywhere
  const Plan plan = random_plans::plan_of(draft);
  return source_of(plan, random_plans::laid(plan, seed, 0.5), settings);
}

// Outer radius of a circle at x; none where it does not reach. A circle narrower than a column counts as a column wide.
inline std::optional<double> top_at(const SceneSource& source, std::size_t node, double x) {
  const double radius = 0.5 * source.d();
  const double off = std::abs(x - source.build().nodes.x(node));
  if (off > std::max(radius, 0.5 * source.shells().grid().column_mm)) return std::nullopt;
  const double in = std::min(off, radius);
  return source.build().nodes.r(node) + std::sqrt(std::max(0.0, radius * radius - in * in));
}

}  // namespace laywright::scenes
