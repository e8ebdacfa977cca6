// A window onto a flat drawing: what part is seen, moved and zoomed with the mouse.
#pragma once

#include <optional>
#include <string_view>

#include <imgui.h>

#include "scene/face.h"

namespace laywright {

inline constexpr float click_px = 4.0F;  // a press that moves less is a click

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

// What a key does to a drawing: shares of what is seen by which it goes to the right and up, and the factor by which
// what is seen grows. None for another key.
struct KeyMove {
  double right = 0.0, up = 0.0, factor = 1.0;
};
[[nodiscard]] std::optional<KeyMove> move_of_key(std::string_view keys);

[[nodiscard]] FaceWindow moved(const FaceWindow& window, const KeyMove& by);

}  // namespace laywright
