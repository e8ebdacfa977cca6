#include "paper/section_view.h"

#include <array>
#include <cmath>
#include <map>

#include "paper/drafting.h"
#include "paper/layer_colors.h"

namespace laywright {
namespace {

constexpr Color spool_fill{0.90, 0.90, 0.92};
constexpr Color spool_hatch{0.66, 0.66, 0.70};
const Pen outline{ink, 0.35, {}};

// A part of the spool that is cut: clipped to the view, hatched, and outlined where it bounds the winding.
void draw_spool(Drawing& drawing, const SectionCut& cut, const SectionView& view) {
  const Box box = view.box();
  drawing.add(ClipBegin{box});
  draw_box(drawing, box, spool_fill, {});
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
                    outline});
  drawing.add(ClipEnd{});
}

// Dots of a colour go on the page together, those of one diameter: in steps of half a percent, finer than is seen.
class TurnDots {
 public:
  TurnDots(double d_mm, double scale) : d_mm_(d_mm), scale_(scale) {}

  void add(Point centre, const SectionCut::Turn& turn) {
    const int step = static_cast<int>(std::lround((2.0 * turn.half_mm / d_mm_ - 1.0) / step_));
    Level& level = levels_[step];
    if (level.rims.centres.empty()) begin(level, (1.0 + step * step_) * d_mm_ * scale_);
    level.rims.centres.push_back(centre);
    level.fills[(turn.layer - 1) % level.fills.size()].centres.push_back(centre);
  }

  void draw(Drawing& drawing) {
    for (auto& [step, level] : levels_) drawing.add(std::move(level.rims));
    for (auto& [step, level] : levels_) {
      for (Dots& fill : level.fills) drawing.add(std::move(fill));
    }
  }

 private:
  struct Level {
    Dots rims;
    std::array<Dots, layer_colors.size()> fills;
  };

  static void begin(Level& level, double diameter) {
    level.rims = {{}, diameter, ink};
    for (std::size_t i = 0; i < level.fills.size(); ++i) level.fills[i] = {{}, 0.86 * diameter, layer_colors[i]};
  }

  static constexpr double step_ = 0.005;
  double d_mm_, scale_;
  std::map<int, Level> levels_;
};

void draw_turns(Drawing& drawing, const SectionCut& cut, const SectionView& view) {
  const double d = cut.fiber_diameter_mm;
  TurnDots dots(d, view.scale);
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

}  // namespace

void draw_section(Drawing& drawing, const SectionCut& cut, const SectionView& view) {
  draw_spool(drawing, cut, view);
  draw_turns(drawing, cut, view);
}

}  // namespace laywright
