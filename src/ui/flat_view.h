// A window onto a flat drawing: what part is seen, moved and zoomed with the mouse.
#pragma once

#include <imgui.h>

#include "scene/face.h"

namespace laywright {

// x to the right, r upward, the same scale for both.
struct FlatView {
  ImVec2 low, high;  // corners on the screen
  FaceWindow window;

  [[nodiscard]] double px_per_mm() const { return (high.x - low.x) / (window.x_to - window.x_from); }
  [[nodiscard]] ImVec2 at(double x, double r) const {
    return {low.x + static_cast<float>((x - window.x_from) * px_per_mm()),
            high.y - static_cast<float>((r - window.r_from) * px_per_mm())};
  }
  [[nodiscard]] double x_of(float px) const { return window.x_from + (px - low.x) / px_per_mm(); }
  [[nodiscard]] double r_of(float py) const { return window.r_from + (high.y - py) / px_per_mm(); }
};

// The part of the section that fills the rectangle and shows all of `wanted`.
[[nodiscard]] FaceWindow fitted(const FaceWindow& wanted, const ImVec2& size);

// After the mouse's drag and wheel on the item drawn last; the same when it did neither. `click`: it was clicked.
[[nodiscard]] FaceWindow moved(const FlatView& view, bool& click);

}  // namespace laywright
