// Which fiber shows on the faces of cuts.
#pragma once

#include "scene/colouring.h"
#include "scene/palette.h"
#include "scene/scene_source.h"

namespace laywright {

// The chosen layers in their colours; the others faded, or not at all, as the view says.
class FaceFiber {
 public:
  FaceFiber(const SceneSource& source, const View& view)
      : source_(source),
        view_(view),
        fiber_(visible_fiber(source, view)),
        colourer_(source, view),
        begin_(view.outside == Outside::faded ? 0 : fiber_.first),
        end_(view.outside == Outside::faded ? fiber_.wind_end : fiber_.end) {}

  [[nodiscard]] std::size_t begin_turn() const { return begin_ / source_.stations(); }
  [[nodiscard]] std::size_t end_turn() const { return end_ == 0 ? 0 : (end_ - 1) / source_.stations() + 1; }
  [[nodiscard]] bool has(std::size_t node, bool piece) const {
    return node >= begin_ && node + (piece ? 1 : 0) < end_;
  }
  [[nodiscard]] Rgba colour(std::size_t node) const {
    const Rgba colour = colourer_.colour(node);
    return fiber_.shows(node) ? colour : faded(colour, view_.theme);
  }

 private:
  const SceneSource& source_;
  const View& view_;
  VisibleFiber fiber_;
  Colourer colourer_;
  std::size_t begin_, end_;
};

}  // namespace laywright
