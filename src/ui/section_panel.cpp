#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "scene/face.h"
#include "scene/palette.h"
#include "ui/drawer_panels.h"
#include "ui/flat_view.h"
#include "ui/style.h"
#include "ui/texts.h"

namespace laywright {
namespace {

// From so many pixels a turn on it is drawn as a circle of its own; below, all as one image.
constexpr double circle_px = 5.0;
constexpr std::size_t most_circles = 20'000;

// What the drawing depends on, but for the build.
std::string key_of(const View& v, double angle_deg, const FaceWindow& w) {
  const auto n = [](const auto& o) { return o ? fmt::format("{}", *o) : std::string("-"); };
  return fmt::format("{} {} {} {} {} {} {} {} {} {} {} {}", angle_deg, w.x_from, w.x_to, w.r_from, w.r_to,
                     v.first_layer, n(v.last_layer), n(v.until_turn), static_cast<int>(v.outside),
                     static_cast<int>(v.colouring), static_cast<int>(v.units), static_cast<int>(v.theme));
}

void prepare(const WoundPtr& wound, const View& view, const FlatView& flat, SectionState& state) {
  const std::string key = key_of(view, state.angle_deg, flat.window);
  if (state.wound.lock() == wound && state.key == key) return;
  state.wound = wound;
  state.key = key;
  state.discs.clear();
  state.image.pixels.clear();
  const double angle = state.angle_deg * std::numbers::pi / 180.0;
  if (wound->source.d() * flat.px_per_mm() >= circle_px) {
    state.discs = face_discs(wound->source, view, angle, flat.window);
    if (state.discs.size() <= most_circles) return;
    state.discs.clear();
  }
  FaceImageSettings settings;
  settings.px_per_d = std::clamp(2.0 * wound->source.d() * flat.px_per_mm(), 1.0, 8.0);
  FaceImage image = face_image(wound->source, view, angle, whole_face(wound->source), settings);
  state.drawn = image.window;
  state.px_mm = image.px_mm;
  ++state.image.version;
  state.image.width = static_cast<int>(image.width);
  state.image.height = static_cast<int>(image.height);
  state.image.pixels = std::move(image.colour);
  state.nodes = std::move(image.node);
}

void draw_spool(ImDrawList& canvas, const FlatView& flat, const Plan& plan, const ThemeColours& colours) {
  const Spool& s = plan.spool();
  const ImU32 fill = ImGui::GetColorU32(color_of(colours.spool)),
              line = ImGui::GetColorU32(color_of(colours.ink, 0.6F));
  const double left_r = 0.5 * s.barrel_diameter_mm, right_r = left_r + 0.5 * s.barrel_taper_mm;
  const double rim = 0.5 * s.flange_diameter_mm, thick = std::max(2.0, 0.03 * s.inside_width_mm);
  const double open_left = (rim - left_r) * std::tan(s.flange_taper_rad);
  const double open_right = (rim - right_r) * std::tan(s.flange_taper_rad);
  const double width = s.inside_width_mm;
  const auto shape = [&](std::initializer_list<ImVec2> points) {
    canvas.AddConvexPolyFilled(points.begin(), static_cast<int>(points.size()), fill);
    canvas.AddPolyline(points.begin(), static_cast<int>(points.size()), line, ImDrawFlags_Closed, 1.0F);
  };
  const double bottom = std::min(left_r, right_r) - 2.0 * thick;
  shape({flat.at(0.0, bottom), flat.at(0.0, left_r), flat.at(width, right_r), flat.at(width, bottom)});
  shape({flat.at(-thick, bottom), flat.at(-thick - open_left, rim), flat.at(-open_left, rim), flat.at(0.0, left_r),
         flat.at(0.0, bottom)});
  shape({flat.at(width, bottom), flat.at(width, right_r), flat.at(width + open_right, rim),
         flat.at(width + thick + open_right, rim), flat.at(width + thick, bottom)});
}

// All of it, flanges included.
FaceWindow with_flanges(const Wound& wound) {
  FaceWindow all = whole_face(wound.source);
  const double slack = std::max(3.0, 0.05 * (all.x_to - all.x_from));
  return {all.x_from - slack, all.x_to + slack, all.r_from - 1.5 * slack, all.r_to};
}

std::optional<std::size_t> node_under(const WoundPtr& wound, const FlatView& flat, const SectionState& state) {
  const ImVec2 mouse = ImGui::GetIO().MousePos;
  const double x = flat.x_of(mouse.x), r = flat.r_of(mouse.y), radius = 0.5 * wound->source.d();
  for (const FaceDisc& disc : state.discs) {
    if (std::hypot(disc.x_mm - x, disc.r_mm - r) <= radius) return disc.node;
  }
  if (state.image.pixels.empty() || state.px_mm <= 0.0) return std::nullopt;
  const double i = (x - state.drawn.x_from) / state.px_mm, j = (r - state.drawn.r_from) / state.px_mm;
  if (i < 0.0 || j < 0.0 || i >= state.image.width || j >= state.image.height) return std::nullopt;
  const auto at =
      static_cast<std::size_t>(j) * static_cast<std::size_t>(state.image.width) + static_cast<std::size_t>(i);
  return state.nodes[at] == no_node ? std::nullopt : std::optional<std::size_t>(state.nodes[at]);
}

void draw_turns(ImDrawList& canvas, const WoundPtr& wound, const FlatView& flat, const View& view,
                PanelState& panels) {
  const SectionState& state = panels.section;
  if (!state.image.pixels.empty() && panels.show_image) {
    canvas.AddImage(panels.show_image(ImageSlot::section, state.image),
                    flat.at(state.drawn.x_from, state.drawn.r_to), flat.at(state.drawn.x_to, state.drawn.r_from),
                    {0.0F, 1.0F}, {1.0F, 0.0F});
  }
  const auto radius = static_cast<float>(0.5 * wound->source.d() * flat.px_per_mm());
  const ImU32 rim = ImGui::GetColorU32(color_of(theme_colours(view.theme).ink, 0.55F));
  for (const FaceDisc& disc : state.discs) {
    const ImVec2 centre = flat.at(disc.x_mm, disc.r_mm);
    canvas.AddCircleFilled(centre, radius, ImGui::GetColorU32(color_of(disc.colour)));
    if (radius > 4.0F) canvas.AddCircle(centre, radius, rim, 0, 1.0F);
  }
}

void tell(const WoundPtr& wound, std::size_t node, Units units) {
  const NodeFacts f = facts_of(wound->source, node);
  ImGui::SetTooltip(
      "%s", fmt::format("turn {:.1f}, layer {}\nx {}, radius {}\n{} from the start", f.turn, f.layer,
                        size_text(f.x_mm, units), size_text(f.r_mm, units), fiber_length_text(f.length_mm, units))
                .c_str());
}

void controls(const WoundPtr& wound, PanelState& panels) {
  SectionState& state = panels.section;
  auto angle = static_cast<float>(state.angle_deg);
  ImGui::SetNextItemWidth(em(11.0F));
  if (ImGui::SliderFloat("##angle", &angle, 0.0F, 360.0F, "at %.0f\u00B0")) state.angle_deg = angle;
  panels.places.note_item("section angle");
  ImGui::SameLine();
  if (ImGui::SmallButton("All")) state.window.reset();
  ImGui::SameLine();
  const auto corner = [&](const char* name, double x) {
    if (ImGui::SmallButton(name)) {
      const double side = 14.0 * wound->source.d();
      const double r = 0.5 * wound->plan().spool().barrel_diameter_mm;
      const double outer =
          std::max(r + side, 0.5 * wound->measurements().outer_diameter.greatest_mm + wound->source.d());
      state.window = FaceWindow{x - side, x + side, outer - side, outer};
    }
    ImGui::SameLine();
  };
  corner("Left edge", 0.0);
  corner("Right edge", wound->plan().spool().inside_width_mm);
  ImGui::TextDisabled("wheel zooms, drag moves");
}

}  // namespace

void section_panel(const Workbench& bench, PanelState& panels, Commands& out) {
  const WoundPtr wound = bench.wound();
  const Stage& stage = bench.active()->stage;
  SectionState& state = panels.section;
  controls(wound, panels);
  const ImVec2 room = ImGui::GetContentRegionAvail();
  if (room.x < 8.0F || room.y < 8.0F) return;
  ImGui::InvisibleButton("section", room);
  panels.places.note_item("section");
  FlatView flat{ImGui::GetItemRectMin(), ImGui::GetItemRectMax(), {}};
  flat.window = fitted(state.window.value_or(with_flanges(*wound)), room);
  bool click = false;
  const FaceWindow after = moved(flat, click);
  if (after.x_from != flat.window.x_from || after.x_to != flat.window.x_to || after.r_from != flat.window.r_from) {
    state.window = flat.window = after;
  }
  prepare(wound, stage.view, flat, state);
  ImDrawList& canvas = *ImGui::GetWindowDrawList();
  canvas.PushClipRect(flat.low, flat.high, true);
  const ThemeColours colours = theme_colours(stage.view.theme);
  canvas.AddRectFilled(flat.low, flat.high, ImGui::GetColorU32(color_of(colours.ground_top)));
  draw_spool(canvas, flat, wound->plan(), colours);
  draw_turns(canvas, wound, flat, stage.view, panels);
  canvas.PopClipRect();
  if (!ImGui::IsItemHovered() && !click) return;
  const std::optional<std::size_t> node = node_under(wound, flat, state);
  if (node) tell(wound, *node, stage.view.units);
  if (!click) return;
  if (node) panels.wanted_tab = "Turn";
  out.push_back(cmd::PickNode{node});
}

}  // namespace laywright
