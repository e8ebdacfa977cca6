#include "scene/node_value.h"

#include <algorithm>
#include <cmath>

#include "base/inch.h"
#include "scene/turns_beside.h"
#include "takeup/formulas.h"

namespace laywright {

namespace {

constexpr double mm_per_metre = 1000.0;

double length_unit(Units units) { return units == Units::metric ? mm_per_metre : mm_per_foot; }
double force_unit(Units units) { return units == Units::metric ? 1.0 : newtons_per_pound_force; }

std::optional<double> tension_N(const SceneSource& source, std::size_t node) {
  const Plan& plan = source.plan();
  if (!plan.takeup() || !plan.wind().tension_N) return std::nullopt;
  const NodeStore& nodes = source.build().nodes;
  return tension_at(*plan.takeup(), *plan.wind().tension_N, nodes.r(0), nodes.r(node));
}

std::vector<std::size_t> evenly(std::size_t from, std::size_t end) {
  constexpr std::size_t wanted = 4000;
  // Odd, and so unlikely to fall on the same stations turn after turn.
  const std::size_t step = std::max<std::size_t>(1, (end - from) / wanted) | 1U;
  std::vector<std::size_t> nodes;
  for (std::size_t node = from; node < end; node += step) nodes.push_back(node);
  return nodes;
}

double mean_middle(const SceneSource& source, const std::vector<std::size_t>& visible) {
  const double width = source.plan().spool().inside_width_mm;
  double sum = 0.0, count = 0.0;
  for (const std::size_t node : visible) {
    const double x = source.build().nodes.x(node);
    if (x < 0.25 * width || x > 0.75 * width) continue;
    sum += source.build().nodes.r(node) + 0.5 * source.d();
    count += 1.0;
  }
  return count > 0.0 ? sum / count : source.barrel_radius(0.5 * width);
}

}  // namespace

double height_unit_mm(Units units) { return units == Units::metric ? 1.0 : mm_per_inch; }

std::optional<DrawOff> payoff_way(Colouring colouring) {
  switch (colouring) {
    case Colouring::payoff: return DrawOff::side;
    case Colouring::payoff_left: return DrawOff::over_left;
    case Colouring::payoff_right: return DrawOff::over_right;
    default: return std::nullopt;
  }
}

std::vector<std::size_t> newest_layers(const SceneSource& source, const View& view) {
  const VisibleFiber fiber = visible_fiber(source, view);
  if (fiber.first == fiber.end) return {};
  const std::size_t stroke = source.stroke_of(fiber.end - 1);
  const std::size_t from =
      std::max(fiber.first, source.build().strokes[stroke - std::min<std::size_t>(stroke, 1)].first_node);
  return evenly(from, fiber.end);
}

std::vector<std::size_t> all_along(const SceneSource& source) { return evenly(0, source.build().nodes.size()); }

std::optional<double> rise_d(const SceneSource& source, std::size_t node) {
  const std::size_t stroke = source.stroke_of(node);
  if (stroke == 0) return std::nullopt;
  const TurnsBeside below = turns_beside(source, node, stroke - 1);
  if (!below.left || !below.right) return std::nullopt;
  const NodeStore& nodes = source.build().nodes;
  const double x0 = nodes.x(*below.left), x1 = nodes.x(*below.right);
  const double share = (nodes.x(node) - x0) / (x1 - x0);
  const double r = nodes.r(*below.left) + share * (nodes.r(*below.right) - nodes.r(*below.left));
  return (nodes.r(node) - r) / source.d();
}

std::optional<double> gap_d(const SceneSource& source, std::size_t node) {
  const TurnsBeside beside = turns_beside(source, node, source.stroke_of(node));
  const NodeStore& nodes = source.build().nodes;
  std::optional<double> widest;
  for (const auto& other : {beside.left, beside.right}) {
    if (!other) continue;
    const double gap = std::max(0.0, std::abs(nodes.x(*other) - nodes.x(node)) / source.d() - 1.0);
    widest = std::max(widest.value_or(0.0), gap);
  }
  return widest;
}

NodeValue::NodeValue(const SceneSource& source, const View& view)
    : source_(source), colouring_(view.colouring), units_(view.units) {
  if (const std::optional<DrawOff> way = payoff_way(colouring_)) {
    Progress none;  // whoever can be stopped has asked for it before: make_ready
    forces_ = source.payoff_forces(*way, none);
  }
  if (colouring_ == Colouring::height) middle_mm_ = mean_middle(source, newest_layers(source, view));
}

std::optional<double> NodeValue::operator()(std::size_t node) const {
  switch (colouring_) {
    case Colouring::rise: return rise_d(source_, node);
    case Colouring::gap: return gap_d(source_, node);
    case Colouring::height:
      return (source_.build().nodes.r(node) + 0.5 * source_.d() - middle_mm_) / height_unit_mm(units_);
    case Colouring::length: return source_.line().at(node) / length_unit(units_);
    case Colouring::tension: {
      const std::optional<double> pull = tension_N(source_, node);
      return pull ? std::optional(*pull / force_unit(units_)) : std::nullopt;
    }
    case Colouring::payoff:
    case Colouring::payoff_left:
    case Colouring::payoff_right: return (*forces_)[node];
    default: return std::nullopt;
  }
}

}  // namespace laywright
