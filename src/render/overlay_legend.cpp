#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "render/overlay_parts.h"

namespace laywright {
namespace {

struct KindWords {
  FindingKind kind;
  const char* words;
};
constexpr std::array<KindWords, 9> kind_words{{
    {FindingKind::gap, "gap"},
    {FindingKind::flange_gap, "gap at the flange"},
    {FindingKind::pile_up, "pile-up"},
    {FindingKind::edge_valley, "edge valley"},
    {FindingKind::ride_up, "ride-up"},
    {FindingKind::dropped_turn, "dropped turn"},
    {FindingKind::bridge, "bridge"},
    {FindingKind::ribbon, "ribbon"},
    {FindingKind::rim_overrun, "rim overrun"},
}};

std::string heading(const Legend& legend) {
  return legend.unit.empty() ? legend.title : legend.title + ", " + legend.unit;
}

// The first mark of a kind; null when there is none.
const Mark* shown(const Scene& scene, FindingKind kind) {
  const auto mark = std::find_if(scene.marks.begin(), scene.marks.end(),
                                 [&](const Mark& candidate) { return candidate.kind == kind; });
  return mark == scene.marks.end() ? nullptr : &*mark;
}

// Each part draws upward from y and returns where it ends.
double draw_scale_column(Canvas& canvas, const Legend& legend, double x, double y, const OverlayStyle& style) {
  const double u = style.unit, height = 150 * u, width = 16 * u;
  const double top = y - height;
  const auto steps = static_cast<double>(legend.scale.size());
  for (std::size_t i = 0; i < legend.scale.size(); ++i) {
    const double low = y - height * static_cast<double>(i) / steps;
    canvas.box({x, low - height / steps - 0.5}, {width, height / steps + 0.5}, 0.0, ink_of(legend.scale[i]));
  }
  canvas.frame({x, top}, {width, height}, 0.0, style.faint, u);
  for (const LegendTick& tick : legend.ticks) {
    const double at = y - height * tick.share;
    canvas.line({{x + width, at}, {x + width + 5 * u, at}}, style.faint, u);
    canvas.text({x + width + 9 * u, at + 4.5 * u}, tick.text, style.letters(), style.ink);
  }
  return top - 10 * u;
}

double draw_entries(Canvas& canvas, const std::vector<LegendEntry>& entries, double x, double y,
                    const OverlayStyle& style) {
  const double u = style.unit;
  for (auto entry = entries.rbegin(); entry != entries.rend(); ++entry) {
    canvas.box({x, y - 12 * u}, {16 * u, 12 * u}, 2 * u, ink_of(entry->colour));
    canvas.text({x + 24 * u, y - 1.5 * u}, entry->text, style.letters(), style.ink);
    y -= 19 * u;
  }
  return y;
}

void draw_mark_swatch(Canvas& canvas, const Mark& mark, double x, double y, const OverlayStyle& style) {
  const double u = style.unit;
  const Ink color = ink_of(mark.colour);
  const glm::dvec2 corner(x, y - 12 * u), size(16 * u, 12 * u);
  if (mark.shape == MarkShape::glyph) {
    draw_sign(canvas, mark.glyph, {x + 8 * u, y - 6 * u}, 7 * u, color, style);
    return;
  }
  if (mark.shape != MarkShape::zone) canvas.box(corner, size, 0.0, {color.color, 0.3});
  if (mark.shape == MarkShape::hatch)
    for (const double at : {0.0, 6.0, 12.0})
      canvas.line({{x + at * u, y}, {x + std::min(at + 8.0, 16.0) * u, y - (at > 8.0 ? 4.0 : 12.0) * u}}, color,
                  2 * u);
  const std::vector<glm::dvec2> outline{corner, corner + glm::dvec2(size.x, 0), corner + size,
                                        corner + glm::dvec2(0, size.y), corner};
  canvas.line(outline, color, 1.6 * u, mark.dashed);
}

struct Words {
  double width = 0.0;
  std::size_t kinds = 0;
};

Words measure_words(const Canvas& canvas, const Scene& scene, const OverlayStyle& style) {
  Words words;
  const auto add = [&](const std::string& text, double indent, bool bold) {
    words.width = std::max(words.width, indent * style.unit + canvas.text_width(text, style.letters(), bold));
  };
  add(heading(scene.legend), 0.0, true);
  for (const LegendEntry& entry : scene.legend.entries) add(entry.text, 24.0, false);
  for (const LegendTick& tick : scene.legend.ticks) add(tick.text, 25.0, false);
  for (const KindWords& kind : kind_words)
    if (shown(scene, kind.kind) != nullptr) {
      add(kind.words, 24.0, false);
      ++words.kinds;
    }
  return words;
}

// A patch of ground under the words, so that they can be read over anything.
void draw_panel(Canvas& canvas, const Scene& scene, const OverlayStyle& style) {
  const Words words = measure_words(canvas, scene, style);
  const double u = style.unit, pad = 10.0 * u;
  const auto rows = static_cast<double>(scene.legend.entries.size());
  double height = (scene.legend.scale.empty() ? 19.0 * rows : 164.0) * u + style.letters();
  if (words.kinds > 0) height += (26.0 + 19.0 * static_cast<double>(words.kinds)) * u;
  const glm::dvec2 corner(style.margin() - pad, canvas.height() - style.margin() - height - pad + 2 * u);
  canvas.box(corner, {words.width + 2 * pad, height + 2 * pad - 2 * u}, 6.0 * u, {style.ground.color, 0.82});
}

}  // namespace

void draw_legend(Canvas& canvas, const Scene& scene, const OverlayStyle& style) {
  draw_panel(canvas, scene, style);
  const double x = style.margin(), u = style.unit;
  double y = canvas.height() - style.margin();
  const Legend& legend = scene.legend;
  y = legend.scale.empty() ? draw_entries(canvas, legend.entries, x, y, style)
                           : draw_scale_column(canvas, legend, x, y - 4 * u, style);
  canvas.text({x, y}, heading(legend), style.letters(), style.ink, TextAlign::start, true);
  y -= 26 * u;

  bool any = false;
  for (auto kind = kind_words.rbegin(); kind != kind_words.rend(); ++kind) {
    const Mark* mark = shown(scene, kind->kind);
    if (mark == nullptr) continue;
    draw_mark_swatch(canvas, *mark, x, y, style);
    canvas.text({x + 24 * u, y - 1.5 * u}, kind->words, style.letters(), style.ink);
    y -= 19 * u;
    any = true;
  }
  if (any) canvas.text({x, y}, "Findings", style.letters(), style.ink, TextAlign::start, true);
}

void draw_scale(Canvas& canvas, const ScaleBar& bar, const OverlayStyle& style) {
  if (bar.length_px <= 0.0) return;
  const double u = style.unit;
  const double right = canvas.width() - style.margin(), y = canvas.height() - style.margin() - 3 * u;
  const double left = right - bar.length_px;
  canvas.box({left - 10 * u, y - 26 * u}, {bar.length_px + 20 * u, 38 * u}, 6 * u, {style.ground.color, 0.82});
  canvas.line({{left, y}, {right, y}}, style.ink, 2 * u);
  for (const double end : {left, right}) canvas.line({{end, y - 5 * u}, {end, y + 5 * u}}, style.ink, 2 * u);
  canvas.text({(left + right) / 2, y - 9 * u}, bar.text, style.letters(), style.ink, TextAlign::middle);
}

}  // namespace laywright
