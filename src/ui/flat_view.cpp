#include "ui/flat_view.h"

#include <algorithm>
#include <cmath>

namespace laywright {
namespace {
constexpr double flat_zoom_per_notch = 1.2;
constexpr double key_share = 0.1;

bool is_sensible(double width_mm) { return width_mm > 0.02 && width_mm < 1e5; }
}  // namespace

FaceWindow fitted(const FaceWindow& wanted, const ImVec2& size) {
  const double width = wanted.x_to - wanted.x_from, height = wanted.r_to - wanted.r_from;
  const double mm_per_px = std::max(width / std::max(1.0, static_cast<double>(size.x)),
                                    height / std::max(1.0, static_cast<double>(size.y)));
  const double x = 0.5 * (wanted.x_from + wanted.x_to), r = 0.5 * (wanted.r_from + wanted.r_to);
  const double half_x = 0.5 * mm_per_px * size.x, half_r = 0.5 * mm_per_px * size.y;
  return {x - half_x, x + half_x, r - half_r, r + half_r};
}

FaceWindow moved(const FlatView& view, bool& click) {
  const ImGuiIO& io = ImGui::GetIO();
  FaceWindow w = view.window;
  const ImVec2 pulled = ImGui::GetMouseDragDelta(ImGuiMouseButton_Left, 0.0F);
  click = ImGui::IsItemDeactivated() && std::hypot(pulled.x, pulled.y) < click_px && ImGui::IsItemHovered();
  if (ImGui::IsItemActive() && ImGui::IsMouseDragging(ImGuiMouseButton_Left, click_px)) {
    const double dx = io.MouseDelta.x / view.px_per_mm(), dr = io.MouseDelta.y / view.px_per_mm();
    w = {w.x_from - dx, w.x_to - dx, w.r_from + dr, w.r_to + dr};
  }
  if (ImGui::IsItemHovered() && io.MouseWheel != 0.0F) {
    const double f = std::pow(flat_zoom_per_notch, -io.MouseWheel);
    const double x = view.x_of(io.MousePos.x), r = view.r_of(io.MousePos.y);
    if (is_sensible((w.x_to - w.x_from) * f)) {
      w = {x + (w.x_from - x) * f, x + (w.x_to - x) * f, r + (w.r_from - r) * f, r + (w.r_to - r) * f};
    }
  }
  return w;
}

std::optional<KeyMove> move_of_key(std::string_view keys) {
  if (keys == "Left") return KeyMove{-key_share, 0.0, 1.0};
  if (keys == "Right") return KeyMove{key_share, 0.0, 1.0};
  if (keys == "Up") return KeyMove{0.0, key_share, 1.0};
  if (keys == "Down") return KeyMove{0.0, -key_share, 1.0};
  if (keys == "+") return KeyMove{0.0, 0.0, 1.0 / flat_zoom_per_notch};
  if (keys == "-") return KeyMove{0.0, 0.0, flat_zoom_per_notch};
  return std::nullopt;
}

FaceWindow moved(const FaceWindow& window, const KeyMove& by) {
  const double width = window.x_to - window.x_from, height = window.r_to - window.r_from;
  const double factor = is_sensible(width * by.factor) ? by.factor : 1.0;
  const double x = window.x_from + (0.5 + by.right) * width, r = window.r_from + (0.5 + by.up) * height;
  return {x - 0.5 * factor * width, x + 0.5 * factor * width, r - 0.5 * factor * height, r + 0.5 * factor * height};
}

}  // namespace laywright
