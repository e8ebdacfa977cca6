#include "paper/section_view.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "paper/colors.h"
#include "paper/drafting.h"
#include "paper/typeset.h"

namespace laywright {
namespace {

constexpr Color flange_fill{0.90, 0.90, 0.92};
constexpr Color spool_hatch{0.66, 0.66, 0.70};
const Pen flange_outline{ink, 0.35, {}};

// A part of the spool that is cut: clipped to the view, hatched, and outlined where it bounds the winding.
void draw_spool(Drawing& drawing, const SectionCut& cut, const SectionView& view) {
  const Box box = view.box();
  drawing.add(ClipBegin{box});
  draw_box(drawing, box, flange_fill, {});
  draw_hatch(drawing, box, 1.6, {spool_hatch, 0.12, {}});

  // The winding space, and the open space above the rim, cut out of it.
  const double rim = cut.rim_radius_mm, top = std::max(rim, view.to_r_mm) + 1.0 / view.scale;
  const auto left_foot = view.at(cut.left_face(cut.barrel_left_mm), cut.barrel_left_mm);
  const auto right_foot = view.at(cut.right_face(cut.barrel_right_mm), cut.barrel_right_mm);
  const auto left_rim = view.at(cut.left_face(rim), rim), right_rim = view.at(cut.right_face(rim), rim);
  const double page_top = view.at(0.0, top).y;
  drawing.add(Shape{{left_foot, left_rim, right_rim, right_foot}, true, paper, {}});
  draw_box(drawing, {box.left, page_top, box.width, left_rim.y - page_top}, paper, {});
  drawing.add(Shape{{{box.left, left_rim.y}, left_rim, left_foot, right_foot, right_rim, {box.right(), right_rim.y}},
                    false,
                    {},
                    flange_outline});
  drawing.add(ClipEnd{});
}

// Dots of a colour go on the page together, those of one diameter: in steps of half a percent, finer than is seen.
class TurnDots {
 public:
  TurnDots(const SectionCut& cut, double scale) : d_mm_(cut.fiber_diameter_mm), scale_(scale), layers_(cut.layers) {}

  void add(Point centre, const SectionCut::Turn& turn) {
    const int step = static_cast<int>(std::lround((2.0 * turn.half_mm / d_mm_ - 1.0) / step_));
    Level& level = levels_[step];
    const double diameter = (1.0 + step * step_) * d_mm_ * scale_;
    if (level.rims.centres.empty()) level.rims = {{}, diameter, ink};
    level.rims.centres.push_back(centre);
    Dots& fill = level.fills[turn.layer];
    if (fill.centres.empty()) fill = {{}, 0.86 * diameter, layer_color(turn.layer, layers_)};
    fill.centres.push_back(centre);
  }

  void draw(Drawing& drawing) {
    for (auto& [step, level] : levels_) drawing.add(std::move(level.rims));
    for (auto& [step, level] : levels_) {
      for (auto& [layer, fill] : level.fills) drawing.add(std::move(fill));
    }
  }

 private:
  struct Level {
    Dots rims;
    std::map<std::size_t, Dots> fills;  // by layer
  };

  static constexpr double step_ = 0.005;
  double d_mm_, scale_;
  std::size_t layers_;
  std::map<int, Level> levels_;
};

void draw_turns(Drawing& drawing, const SectionCut& cut, const SectionView& view) {
  const double d = cut.fiber_diameter_mm;
  TurnDots dots(cut, view.scale);
  for (const SectionCut::Turn& turn : cut.turns) {
    const bool seen = turn.x_mm > view.from_x_mm - d && turn.x_mm < view.to_x_mm + d &&
                      turn.r_mm > view.from_r_mm - d && turn.r_mm < view.to_r_mm + d;
    if (!seen) continue;
    dots.add(view.at(turn.x_mm, turn.r_mm), turn);
  }
  drawing.add(ClipBegin{view.box()});
  dots.draw(drawing);
  drawing.add(ClipEnd{});
}

// Of each layer that passes the middle of the view, the turn nearest to it.
std::map<std::size_t, SectionCut::Turn> middle_turns(const SectionCut& cut, const SectionView& view) {
  const double middle = 0.5 * (view.from_x_mm + view.to_x_mm), near = 0.25 * (view.to_x_mm - view.from_x_mm);
  const auto off = [&](const SectionCut::Turn& turn) { return std::abs(turn.x_mm - middle); };
  std::map<std::size_t, SectionCut::Turn> nearest;
  for (const SectionCut::Turn& turn : cut.turns) {
    if (off(turn) > near || turn.r_mm < view.from_r_mm || turn.r_mm > view.to_r_mm) continue;
    const auto [at, is_new] = nearest.try_emplace(turn.layer, turn);
    if (!is_new && off(turn) < off(at->second)) at->second = turn;
  }
  return nearest;
}

}  // namespace

void draw_layer_numbers(Drawing& drawing, const SectionCut& cut, const SectionView& view) {
  constexpr double pad = 0.35;
  const std::map<std::size_t, SectionCut::Turn> turns = middle_turns(cut, view);
  if (turns.empty()) return;
  const auto& [first, inner] = *turns.begin();
  const auto& [last, outer] = *turns.rbegin();
  const double each =
      last > first ? (outer.r_mm - inner.r_mm) / static_cast<double>(last - first) : 2.0 * inner.half_mm;
  const auto step = static_cast<std::size_t>(layers_to_a_number(each * view.scale, 1.6 * smallest_print_mm));
  const Type type{smallest_print_mm, false, Align::middle, ink};
  for (const auto& [layer, turn] : turns) {
    if (layer % step != 0) continue;
    const Point at = view.at(turn.x_mm, turn.r_mm);
    const std::string words = std::to_string(layer);
    const double width = width_of(words, type) + 2.0 * pad, height = 0.72 * type.height_mm + 2.0 * pad;
    const Box patch{at.x - 0.5 * width, at.y - 0.5 * height, width, height}, box = view.box();
    if (patch.left < box.left || patch.top < box.top || patch.right() > box.right() || patch.bottom() > box.bottom())
      continue;
    draw_box(drawing, patch, paper, {});
    put(drawing, {at.x, at.y + 0.36 * type.height_mm}, words, type);
  }
}

void draw_section(Drawing& drawing, const SectionCut& cut, const SectionView& view) {
  draw_spool(drawing, cut, view);
  draw_turns(drawing, cut, view);
}

}  // namespace laywright
