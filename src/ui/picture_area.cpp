#include "ui/panels.h"

#include <cmath>

#include <fmt/format.h>

#include "scene/camera.h"
#include "scene/marks.h"
#include "scene/pick.h"
#include "scene/scene_source.h"
#include "session/camera_commands.h"
#include "session/compare_commands.h"
#include "session/scrub_commands.h"
#include "ui/flat_view.h"
#include "ui/style.h"

namespace laywright {
namespace {

constexpr double degrees_per_px = 0.35;
constexpr double zoom_per_notch = 1.15;

// The places of a box in the window and of the view's picture.
struct Mapping {
  Box2 box;
  const View& view;

  [[nodiscard]] glm::dvec2 to_picture(const ImVec2& at) const {
    return glm::dvec2(at.x - box.x, at.y - box.y) * glm::dvec2(view.width_px, view.height_px) /
           glm::dvec2(box.width, box.height);
  }
  [[nodiscard]] ImVec2 to_window(const glm::dvec2& at) const {
    return {box.x + static_cast<float>(at.x * box.width / view.width_px),
            box.y + static_cast<float>(at.y * box.height / view.height_px)};
  }
};

void pan(const Mapping& map, const ImVec2& by, Commands& out) {
  Camera camera = map.view.camera;
  const double mm = mm_per_px(map.view) * map.view.width_px / static_cast<double>(map.box.width);
  camera.target += right_of(camera) * (-by.x * mm) + up_of(camera) * (by.y * mm);
  out.push_back(cmd::set_camera(camera));
}

// Nearer, such that what lies under the pointer stays there.
void zoom(const Mapping& map, double notches, const ImVec2& at, Commands& out) {
  Camera camera = map.view.camera;
  const double factor = std::pow(zoom_per_notch, notches);
  const glm::dvec2 off = map.to_picture(at) - glm::dvec2(map.view.width_px, map.view.height_px) * 0.5;
  const double shift = mm_per_px(map.view) * (1.0 - 1.0 / factor);
  camera.target += right_of(camera) * (off.x * shift) - up_of(camera) * (off.y * shift);
  camera.distance_mm /= factor;
  out.push_back(cmd::set_camera(camera));
}

void click(const Mapping& map, const Wound& wound, const Wound& in_hand, const ImVec2& at, PanelState& state,
           Commands& out) {
  const glm::dvec2 place = map.to_picture(at);
  const std::optional<FiberHit> hit = pick_fiber(wound.source, map.view, ray_through(map.view, place.x, place.y));
  if (hit && state.lesson_page.empty()) state.wanted_tab = "Turn";
  if (!hit) {
    out.push_back(cmd::pick_node());
    return;
  }
  // Of two linked pictures, what was hit may be of the other build: the same place along the fiber is meant.
  const double turn = static_cast<double>(hit->node) / static_cast<double>(wound.source.stations());
  const Stage picked{{}, {}, turn, {}, {}};
  out.push_back(cmd::pick_node(&wound == &in_hand ? std::optional(hit->node) : picked_node(picked, in_hand)));
}

void mouse(const Mapping& map, const Wound& wound, const Wound& in_hand, PanelState& state, Commands& out) {
  const ImGuiIO& io = ImGui::GetIO();
  if (ImGui::IsItemHovered() && io.MouseWheel != 0.0F) zoom(map, io.MouseWheel, io.MousePos, out);
  if (ImGui::IsItemActivated()) state.pressed_at = io.MousePos;
  const bool moved = io.MouseDelta.x != 0.0F || io.MouseDelta.y != 0.0F;
  if (ImGui::IsItemActive() && moved && state.pressed_at) {
    const bool is_click =
        std::hypot(io.MousePos.x - state.pressed_at->x, io.MousePos.y - state.pressed_at->y) < click_px;
    const bool moves = !ImGui::IsMouseDown(ImGuiMouseButton_Left) || io.KeyShift;
    if (!is_click && moves) pan(map, io.MouseDelta, out);
    if (!is_click && !moves) {
      out.push_back(cmd::orbit(-io.MouseDelta.x * degrees_per_px, io.MouseDelta.y * degrees_per_px));
    }
  }
  if (ImGui::IsItemDeactivated() && state.pressed_at) {
    const ImVec2 from = *state.pressed_at;
    state.pressed_at.reset();
    if (ImGui::IsMouseReleased(ImGuiMouseButton_Left) &&
        std::hypot(io.MousePos.x - from.x, io.MousePos.y - from.y) < click_px) {
      click(map, wound, in_hand, io.MousePos, state, out);
    }
  }
}

void ring_at(ImDrawList& canvas, const Mapping& map, const Vec3& place, ImU32 color, float radius = em(0.6F)) {
  const std::optional<glm::dvec2> at = in_picture(map.view, place);
  if (!at) return;
  const ImVec2 centre = map.to_window(*at);
  const ImU32 rim = map.view.theme == Theme::light ? IM_COL32_WHITE : IM_COL32_BLACK;
  canvas.AddCircle(centre, radius, rim, 0, em(0.28F));
  canvas.AddCircle(centre, radius, color, 0, em(0.14F));
}

// The picked turn.
void signs(ImDrawList& canvas, const Mapping& map, const Wound& wound, const Stage& stage) {
  if (const std::optional<std::size_t> node = picked_node(stage, wound)) {
    const Build& build = wound.build();
    const double angle = 2.0 * std::numbers::pi * static_cast<double>(*node % wound.source.stations()) /
                         static_cast<double>(wound.source.stations());
    // What is cut or peeled away has no ring in the air.
    const bool seen =
        !is_removed(removed_sectors(map.view), angle) && visible_fiber(wound.source, map.view).shows(*node);
    if (seen)
      ring_at(canvas, map, in_space(build.nodes.x(*node), build.nodes.r(*node), angle),
              ImGui::GetColorU32(ImGuiCol_CheckMark));
  }
}

void centred_words(ImDrawList& canvas, const Box2& box, const std::string& words) {
  const float width = std::min(box.width - em(4.0F), em(34.0F));
  const ImVec2 size = ImGui::CalcTextSize(words.c_str(), nullptr, false, width);
  const ImVec2 at{box.x + 0.5F * (box.width - size.x), box.y + 0.42F * box.height};
  const float pad = em(0.9F);
  canvas.AddRectFilled({at.x - pad, at.y - pad}, {at.x + size.x + pad, at.y + size.y + pad},
                       ImGui::GetColorU32(ImGuiCol_PopupBg, 0.94F), em(0.4F));
  canvas.AddRect({at.x - pad, at.y - pad}, {at.x + size.x + pad, at.y + size.y + pad},
                 ImGui::GetColorU32(ImGuiCol_Border), em(0.4F));
  canvas.AddText(nullptr, 0.0F, at, ImGui::GetColorU32(ImGuiCol_Text), words.c_str(), nullptr, width);
}

}  // namespace

void picture_area(const Workbench& bench, const Box2& box, bool active, PanelState& state, Commands& out) {
  ImGui::SetCursorScreenPos({box.x, box.y});
  ImGui::InvisibleButton(
      active ? "picture" : "other picture", {box.width, box.height},
      ImGuiButtonFlags_MouseButtonLeft | ImGuiButtonFlags_MouseButtonRight | ImGuiButtonFlags_MouseButtonMiddle);
  ImDrawList& canvas = *ImGui::GetWindowDrawList();
  const ImVec4 clip{box.x, box.y, box.x + box.width, box.y + box.height};
  canvas.PushClipRect({clip.x, clip.y}, {clip.z, clip.w}, true);
  const WoundPtr wound = active ? bench.wound() : bench.other_wound();
  if (wound && bench.active() != nullptr) {
    const Stage stage = active ? bench.active()->stage : bench.other_stage();
    const Mapping map{box, stage.view};
    const bool apart = bench.comparison() && !bench.comparison()->linked;
    const bool touched = ImGui::IsItemActivated() || (ImGui::IsItemHovered() && ImGui::GetIO().MouseWheel != 0.0F);
    if (apart && touched && bench.other_in_hand() == active) out.push_back(cmd::take_in_hand(!active));
    const WoundPtr in_hand = apart ? wound : bench.wound();
    if (in_hand) mouse(map, *wound, *in_hand, state, out);
    signs(canvas, map, *wound, stage);
    if (active && bench.lesson() && bench.lesson()->place && !stage.flight && !stage.playback.playing) {
      ring_at(canvas, map, *bench.lesson()->place, ImGui::GetColorU32(ImGuiCol_CheckMark), em(1.6F));
    }
    // Which of the two the keys and panels are for.
    if (apart && bench.other_in_hand() != active) {
      canvas.AddRect({box.x, box.y}, {box.x + box.width, box.y + box.height}, ImGui::GetColorU32(ImGuiCol_CheckMark),
                     0.0F, 0, em(0.2F));
    }
  } else {
    centred_words(canvas, box, active ? bench.hint() : "The other build is being laid.");
  }
  canvas.PopClipRect();
}

}  // namespace laywright
