#include "ui/section_drawing.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/units.h"

namespace laywright {
namespace {

// More circles than that take longer to draw than a frame may.
constexpr std::size_t most_circles = 5'000;
// About what is seen, so that a small move needs nothing new.
constexpr double slack = 0.25;

// What the turns depend on, but for the build and the window.
std::string key_of(const View& v, double angle_deg) {
  const auto n = [](const auto& o) { return o ? fmt::format("{}", *o) : std::string("-"); };
  const ColourRange range = v.range.value_or(ColourRange{});
  return fmt::format("{} {} {} {} {} {} {} {} {} {} {}", angle_deg, v.first_layer, n(v.last_layer), n(v.until_turn),
                     static_cast<int>(v.outside), static_cast<int>(v.colouring), static_cast<int>(v.units),
                     static_cast<int>(v.theme), range.low, range.neutral, range.high);
}

FaceWindow both(const FaceWindow& a, const FaceWindow& b) {
  return {std::max(a.x_from, b.x_from), std::min(a.x_to, b.x_to), std::max(a.r_from, b.r_from),
          std::min(a.r_to, b.r_to)};
}

bool is_empty(const FaceWindow& w) { return w.x_to <= w.x_from || w.r_to <= w.r_from; }

}  // namespace

SectionDrawing promise_of(const SectionRequest& request) {
  SectionDrawing drawing;
  drawing.wound = request.wound;
  drawing.key = key_of(request.view, request.angle_deg);
  drawing.px_per_mm = request.px_per_mm;
  const FaceWindow& seen = request.window;
  const double dx = slack * (seen.x_to - seen.x_from), dr = slack * (seen.r_to - seen.r_from);
  const FaceWindow wide{seen.x_from - dx, seen.x_to + dx, seen.r_from - dr, seen.r_to + dr};
  drawing.window = both(wide, whole_face(request.wound->source));
  return drawing;
}

SectionDrawing draw_section(const SectionRequest& request) {
  SectionDrawing drawing = promise_of(request);
  const SceneSource& source = request.wound->source;
  const double angle = request.angle_deg * rad_per_deg;
  if (is_empty(drawing.window)) return drawing;
  const double d_px = source.d() * request.px_per_mm;
  if (d_px >= request.circle_px) {
    drawing.discs = face_discs(source, request.view, angle, drawing.window);
    if (drawing.discs.size() <= most_circles) return drawing;
    drawing.discs.clear();
  }
  FaceImageSettings settings;
  settings.px_per_d = std::clamp(2.0 * d_px, 1.0, 24.0);
  drawing.image = face_image(source, request.view, angle, drawing.window, settings);
  return drawing;
}

bool serves(const SectionDrawing& drawing, const SectionRequest& request) {
  if (drawing.wound.lock() != request.wound || drawing.key != key_of(request.view, request.angle_deg)) return false;
  if (std::abs(drawing.px_per_mm - request.px_per_mm) > 1e-6 * request.px_per_mm) return false;
  const FaceWindow needed = both(request.window, whole_face(request.wound->source)), &has = drawing.window;
  if (is_empty(needed)) return true;
  constexpr double rest = 1e-9;
  return needed.x_from >= has.x_from - rest && needed.x_to <= has.x_to + rest &&
         needed.r_from >= has.r_from - rest && needed.r_to <= has.r_to + rest;
}

}  // namespace laywright
