#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "base/units.h"
#include "measure/layer_shade.h"
#include "scene/face.h"
#include "scene/layer_numbers.h"
#include "scene/palette.h"
#include "session/scrub_commands.h"
#include "ui/flat_view.h"
#include "ui/focus.h"
#include "ui/panel_trouble.h"
#include "ui/panels.h"
#include "ui/style.h"

namespace laywright {
namespace {

void take_drawing(SectionState& state) {
  std::optional<SectionDrawing> made = state.work.take();
  if (!made) return;
  state.drawing = std::move(*made);
  ++state.image.version;
  state.image.width = static_cast<int>(state.drawing.image.width);
  state.image.height = static_cast<int>(state.drawing.image.height);
  state.image.pixels = std::move(state.drawing.image.colour);
}

// What was drawn stays, at its place, until what is seen now is drawn.
void prepare(const WoundPtr& wound, const View& view, const FlatView& flat, PanelState& panels) {
  SectionState& state = panels.section;
  take_drawing(state);
  const SectionRequest request{wound, view, state.angle_deg, flat.window, flat.px_per_mm(), em(0.36F)};
  if (serves(state.drawing, request) || serves(state.asked, request)) return;
  state.asked = promise_of(request);
  state.work.ask([request] { return draw_section(request); }, panels.wake);
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

std::optional<std::size_t> node_at(const WoundPtr& wound, const FlatView& flat, const ImVec2& at,
                                   const SectionState& state) {
  if (state.drawing.wound.lock() != wound) return std::nullopt;  // its nodes are another build's
  const double x = flat.x_of(at.x), r = flat.r_of(at.y), radius = 0.5 * wound->source.d();
  for (const FaceDisc& disc : state.drawing.discs) {
    if (std::hypot(disc.x_mm - x, disc.r_mm - r) <= radius) return disc.node;
  }
  const FaceImage& image = state.drawing.image;
  if (image.node.empty() || image.px_mm <= 0.0) return std::nullopt;
  const double i = (x - image.window.x_from) / image.px_mm, j = (r - image.window.r_from) / image.px_mm;
  if (i < 0.0 || j < 0.0 || i >= static_cast<double>(image.width) || j >= static_cast<double>(image.height))
    return std::nullopt;
  const auto pixel = static_cast<std::size_t>(j) * image.width + static_cast<std::size_t>(i);
  return image.node[pixel] == no_node ? std::nullopt : std::optional<std::size_t>(image.node[pixel]);
}

void draw_turns(ImDrawList& canvas, const WoundPtr& wound, const FlatView& flat, const View& view,
                PanelState& panels) {
  const SectionState& state = panels.section;
  const FaceImage& image = state.drawing.image;
  if (!state.image.pixels.empty() && panels.show_image) {
    canvas.AddImage(panels.show_image(ImageSlot::section, state.image),
                    flat.at(image.window.x_from, image.window.r_to), flat.at(image.window.x_to, image.window.r_from),
                    {0.0F, 1.0F}, {1.0F, 0.0F});
  }
  const auto radius = static_cast<float>(0.5 * wound->source.d() * flat.px_per_mm());
  const ImU32 rim = ImGui::GetColorU32(color_of(theme_colours(view.theme).ink, 0.55F));
  for (const FaceDisc& disc : state.drawing.discs) {
    const ImVec2 centre = flat.at(disc.x_mm, disc.r_mm);
    canvas.AddCircleFilled(centre, radius, ImGui::GetColorU32(color_of(disc.colour)));
    if (radius > 4.0F) canvas.AddCircle(centre, radius, rim, 0, 1.0F);
  }
}

// As many numbers of layers as there is room for, beside the middle of what is seen.
void draw_layer_numbers(ImDrawList& canvas, const WoundPtr& wound, const FlatView& flat, View view,
                        double angle_deg) {
  view.x_from_mm = flat.window.x_from;
  view.x_to_mm = flat.window.x_to;
  const auto numbers = layer_numbers(wound->source, view, angle_deg * rad_per_deg, false);
  if (numbers.empty()) return;
  const float high = ImGui::GetFontSize();
  const double wound_mm = radius_of(numbers.back().place) - radius_of(numbers.front().place);
  const double layer_px = flat.px_per_mm() * (numbers.size() > 1 ? wound_mm / static_cast<double>(numbers.size() - 1)
                                                                 : wound->source.d());
  const int step = layers_to_a_number(layer_px, 1.6 * high);
  const ThemeColours colours = theme_colours(view.theme);
  for (const LayerNumber& number : numbers) {
    if (number.layer % step != 0) continue;
    const std::string words = std::to_string(number.layer);
    const ImVec2 size = ImGui::CalcTextSize(words.c_str()), at = flat.at(number.place.x, radius_of(number.place));
    const ImVec2 low{at.x - 0.5F * size.x, at.y - 0.5F * size.y}, far{low.x + size.x, low.y + size.y};
    canvas.AddRectFilled({low.x - 2.0F, low.y}, {far.x + 2.0F, far.y},
                         ImGui::GetColorU32(color_of(colours.ground_top, 0.78F)), 2.0F);
    canvas.AddText(low, ImGui::GetColorU32(color_of(colours.ink)), words.c_str());
  }
}

void tell(const WoundPtr& wound, std::size_t node, Units units) {
  const NodeFacts f = facts_of(wound->source, node);
  const bool inch = units == Units::inch;
  ImGui::SetTooltip(
      "%s", fmt::format("turn {}, layer {}\nx {}, radius {}\n{} from the start", figure(f.turn, 1), f.layer,
                        size_text(f.x_mm, inch), size_text(f.r_mm, inch), fiber_length_text(f.length_mm, inch))
                .c_str());
}

// True: the turn at the cross is to be picked.
bool take_drawing_keys(FlatView& flat, PanelState& panels) {
  SectionState& state = panels.section;
  bool picks = false;
  for (const std::string& keys : panels.focus.drawing_keys) {
    if (const auto by = move_of_key(keys)) state.window = flat.window = moved(flat.window, *by);
    if (keys == "Home") state.window.reset();
    if (keys == "PageUp" || keys == "PageDown") {
      state.angle_deg = std::fmod(state.angle_deg + (keys == "PageUp" ? 5.0 : 355.0), 360.0);
    }
    picks |= keys == "Enter";
  }
  return picks;
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
  const char* words = "wheel zooms, drag moves";
  const bool room = ImGui::CalcTextSize(words).x < ImGui::GetContentRegionAvail().x;
  ImGui::TextDisabled("%s", room ? words : "");
}

}  // namespace

void section_panel(const Workbench& bench, PanelState& panels, Commands& out) {
  const WoundPtr wound = bench.wound_in_hand();
  const Stage& stage = *bench.stage_in_hand();
  SectionState& state = panels.section;
  controls(wound, panels);
  panel_trouble(state.work.trouble(), stage.view.theme);
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
  const bool has_keys = drawing_has_keys("Section", panels);
  const bool key_pick = has_keys && take_drawing_keys(flat, panels);
  if (!state.window) flat.window = fitted(with_flanges(*wound), room);
  state.seen = flat.window;
  prepare(wound, stage.view, flat, panels);
  ImDrawList& canvas = *ImGui::GetWindowDrawList();
  canvas.PushClipRect(flat.low, flat.high, true);
  const ThemeColours colours = theme_colours(stage.view.theme);
  canvas.AddRectFilled(flat.low, flat.high, ImGui::GetColorU32(color_of(colours.ground_top)));
  draw_spool(canvas, flat, wound->plan(), colours);
  draw_turns(canvas, wound, flat, stage.view, panels);
  if (stage.view.colouring == Colouring::layer) draw_layer_numbers(canvas, wound, flat, stage.view, state.angle_deg);
  canvas.PopClipRect();
  if (has_keys) draw_key_frame(flat.low, flat.high);
  if (!ImGui::IsItemHovered() && !click && !key_pick) return;
  const ImVec2 middle{0.5F * (flat.low.x + flat.high.x), 0.5F * (flat.low.y + flat.high.y)};
  const std::optional<std::size_t> node = node_at(wound, flat, key_pick ? middle : ImGui::GetIO().MousePos, state);
  if (node && !key_pick) tell(wound, *node, stage.view.units);
  if (!click && !key_pick) return;
  if (node) panels.wanted_tab = "Turn";
  out.push_back(cmd::pick_node(node));
}

}  // namespace laywright
