#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "render/overlay_parts.h"
#include "render/overlay_shade.h"

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

void draw_mark_swatch(Canvas& canvas, const Mark& mark, double x, double y, const OverlayStyle& style) {
  const double u = style.unit;
  const Ink color = ink_of(mark.colour);
  const glm::dvec2 corner(x, y - 12 * u), size(16 * u, 12 * u);
  if (mark.shape == MarkShape::glyph) {
    draw_sign(canvas, mark.glyph, {x + 8 * u, y - 6 * u}, 7 * u, color, style);
    return;
  }
  // An outline stands on light, as it does on fiber.
  canvas.box(corner, size, 0.0, mark.shape == MarkShape::zone ? Ink{glm::vec3(0.85F), 0.6} : Ink{color.color, 0.3});
  if (mark.shape == MarkShape::hatch)
    for (const double at : {0.0, 6.0, 12.0})
      canvas.line({{x + at * u, y}, {x + std::min(at + 8.0, 16.0) * u, y - (at > 8.0 ? 4.0 : 12.0) * u}}, color,
                  2 * u);
  const std::vector<glm::dvec2> outline{corner, corner + glm::dvec2(size.x, 0), corner + size,
                                        corner + glm::dvec2(0, size.y), corner};
  canvas.line(outline, color, 1.6 * u, mark.dashed);
}

// A line of the legend: a swatch and words.
struct Line {
  std::string words;
  Rgba colour;
  const Mark* mark = nullptr;  // of findings
};

std::vector<Line> finding_lines(const Scene& scene) {
  std::vector<Line> lines;
  for (const KindWords& kind : kind_words)
    if (const Mark* mark = shown(scene, kind.kind)) lines.push_back({kind.words, mark->colour, mark});
  return lines;
}

std::vector<Line> colour_lines(const Legend& legend) {
  std::vector<Line> lines;
  for (const LegendEntry& entry : legend.entries) lines.push_back({entry.text, entry.colour, nullptr});
  return lines;
}

constexpr double row_height = 19.0, swatch_room = 24.0, scale_height = 150.0;  // in units

void draw_line(Canvas& canvas, const Line& line, glm::dvec2 at, const OverlayStyle& style) {
  const double u = style.unit;
  if (line.mark != nullptr)
    draw_mark_swatch(canvas, *line.mark, at.x, at.y, style);
  else
    canvas.box({at.x, at.y - 12 * u}, {16 * u, 12 * u}, 2 * u, ink_of(line.colour));
  canvas.text({at.x + swatch_room * u, at.y - 1.5 * u}, line.words, style.letters(), style.ink);
}

// The colours of a scale, upward or to the right, with its ticks.
void draw_scale_colours(Canvas& canvas, const Legend& legend, glm::dvec2 corner, glm::dvec2 size, bool upright,
                        const OverlayStyle& style) {
  const double u = style.unit;
  const auto steps = static_cast<double>(legend.scale.size());
  for (std::size_t i = 0; i < legend.scale.size(); ++i) {
    const double share = static_cast<double>(i) / steps;
    if (upright)
      canvas.box({corner.x, corner.y + size.y * (1.0 - share - 1.0 / steps) - 0.5}, {size.x, size.y / steps + 0.5},
                 0.0, ink_of(legend.scale[i]));
    else
      canvas.box({corner.x + size.x * share, corner.y}, {size.x / steps + 0.5, size.y}, 0.0,
                 ink_of(legend.scale[i]));
  }
  canvas.frame(corner, size, 0.0, style.faint, u);
  double free_from = corner.x - 1e9;  // ticks side by side must not run into each other
  for (const LegendTick& tick : legend.ticks) {
    if (upright) {
      const double at = corner.y + size.y * (1.0 - tick.share), right = corner.x + size.x;
      canvas.line({{right, at}, {right + 5 * u, at}}, style.faint, u);
      canvas.text({right + 9 * u, at + 4.5 * u}, tick.text, style.letters(), style.ink);
      continue;
    }
    const double at = corner.x + size.x * tick.share, foot = corner.y + size.y;
    const double half = canvas.text_width(tick.text, style.letters()) / 2;
    canvas.line({{at, foot}, {at, foot + 4 * u}}, style.faint, u);
    if (at - half < free_from) continue;
    canvas.text({at, foot + 15 * u}, tick.text, style.letters(), style.ink, TextAlign::middle);
    free_from = at + half + 6 * u;
  }
}

// The legend as a column in a corner, or as rows along the lower edge.
class LegendSheet {
 public:
  LegendSheet(Canvas& canvas, const Scene& scene, const OverlayStyle& style, double foot)
      : canvas_(canvas),
        legend_(scene.legend),
        style_(style),
        findings_(finding_lines(scene)),
        colours_(colour_lines(scene.legend)),
        foot_(foot) {}

  void draw_column(const OverlayBox& box) {
    draw_ground(box.corner, box.size);
    const double u = style_.unit, x = box.corner.x + pad();
    double y = box.corner.y + box.size.y - pad();
    if (legend_.scale.empty()) {
      y = draw_lines(colours_, x, y);
    } else {
      draw_scale_colours(canvas_, legend_, {x, y - 4 * u - scale_height * u}, {16 * u, scale_height * u}, true,
                         style_);
      y -= (scale_height + 14) * u;
    }
    draw_heading(heading(legend_), {x, y});
    if (findings_.empty()) return;
    y = draw_lines(findings_, x, y - 26 * u);
    draw_heading("Findings", {x, y});
  }

  [[nodiscard]] glm::dvec2 column_size() const {
    const double u = style_.unit;
    double width = words_width(heading(legend_), true);
    for (const auto* lines : {&findings_, &colours_})
      for (const Line& line : *lines) width = std::max(width, swatch_room * u + words_width(line.words, false));
    for (const LegendTick& tick : legend_.ticks) width = std::max(width, 25 * u + words_width(tick.text, false));
    const auto rows = [](const std::vector<Line>& lines) { return static_cast<double>(lines.size()); };
    double height = (legend_.scale.empty() ? row_height * rows(colours_) : scale_height + 14) * u + style_.letters();
    if (!findings_.empty()) height += (26.0 + row_height * rows(findings_)) * u;
    return {width + 2 * pad(), height + 2 * pad() - 2 * u};
  }
  // In the corners of the picture, as far as it has room there.
  [[nodiscard]] std::vector<OverlayBox> columns(const OverlayRoom& taken, double foot) const {
    const glm::dvec2 size = column_size();
    const double near = style_.margin() - pad();
    const glm::dvec2 far = glm::dvec2(canvas_.width(), canvas_.height()) - near - size;
    // Under the caption.
    double top = near;
    for (const OverlayBox& words : taken.words)
      if (words.corner.x <= near && words.corner.y <= near) top = words.corner.y + words.size.y + pad();
    const double over_bar = canvas_.height() - foot - pad() - size.y;
    std::vector<OverlayBox> all{{{near, far.y}, size}};
    for (const glm::dvec2 corner : {glm::dvec2(far.x, over_bar), glm::dvec2(far.x, near), glm::dvec2(near, top)})
      if (corner.y >= near && corner.y + size.y <= canvas_.height()) all.push_back({corner, size});
    return all;
  }

  // Lays rows out; draws them when told to. Returns their height.
  double rows(bool draw) {
    const double u = style_.unit, left = style_.margin(), right = canvas_.width() - style_.margin();
    double height = measure_rows(left, right);
    if (!draw) return height + 2 * pad();
    const double top = canvas_.height() - foot_ - height;
    draw_ground({left - pad(), top - pad()}, {right - left + 2 * pad(), height + 2 * pad()});
    glm::dvec2 at(left, top + 13 * u);
    flow("Findings", findings_, left, right, at, true);
    if (!findings_.empty()) at = {left, at.y + row_height * u};
    flow(heading(legend_), colours_, left, right, at, true);
    if (!legend_.scale.empty())
      draw_scale_colours(canvas_, legend_, {at.x, at.y - 10 * u}, {right - at.x - 16 * u, 10 * u}, false, style_);
    return height + 2 * pad();
  }

 private:
  [[nodiscard]] double pad() const { return 10.0 * style_.unit; }
  [[nodiscard]] double words_width(const std::string& words, bool bold) const {
    return canvas_.text_width(words, style_.letters(), bold);
  }
  // A patch of ground under the words, so that they can be read over anything.
  void draw_ground(glm::dvec2 corner, glm::dvec2 size) {
    canvas_.box(corner, size, 6.0 * style_.unit, {style_.ground.color, 0.82});
  }
  void draw_heading(const std::string& words, glm::dvec2 at) {
    canvas_.text(at, words, style_.letters(), style_.ink, TextAlign::start, true);
  }
  double draw_lines(const std::vector<Line>& lines, double x, double y) {
    for (auto line = lines.rbegin(); line != lines.rend(); ++line, y -= row_height * style_.unit)
      draw_line(canvas_, *line, {x, y}, style_);
    return y;
  }

  double measure_rows(double left, double right) {
    const double u = style_.unit;
    glm::dvec2 at(left, 13 * u);
    flow("Findings", findings_, left, right, at, false);
    if (!findings_.empty()) at = {left, at.y + row_height * u};
    flow(heading(legend_), colours_, left, right, at, false);
    return at.y + (legend_.scale.empty() ? 0.0 : 18 * u);
  }

  // A heading, and its lines side by side in as many rows as they need.
  void flow(const std::string& title, const std::vector<Line>& lines, double left, double right, glm::dvec2& at,
            bool draw) {
    const double u = style_.unit;
    if (lines.empty() && &lines == &findings_) return;
    if (draw) draw_heading(title, at);
    at.x += words_width(title, true) + 14 * u;
    for (const Line& line : lines) {
      const double width = swatch_room * u + words_width(line.words, false);
      if (at.x + width > right && at.x > left) at = {left, at.y + row_height * u};
      if (draw) draw_line(canvas_, line, at + glm::dvec2(0.0, 1.5 * u), style_);
      at.x += width + 14 * u;
    }
  }

  Canvas& canvas_;
  const Legend& legend_;
  const OverlayStyle& style_;
  std::vector<Line> findings_, colours_;
  double foot_;
};

}  // namespace

void draw_legend(Canvas& canvas, const Scene& scene, const SpoolShade& shade, const OverlayRoom& taken, double foot,
                 const OverlayStyle& style) {
  LegendSheet sheet(canvas, scene, style, foot);
  const double height = sheet.rows(false);
  // What a dimension or a sign of a finding says is lost where the legend lies over it.
  const auto hides = [&](const OverlayBox& box) {
    const double lost = (taken.meets(box) ? 0.6 : 0.0) + 0.2 * taken.signs_in(box);
    return shade.under(box.corner, box.size) + lost;
  };
  const std::vector<OverlayBox> columns = sheet.columns(taken, foot);
  const auto best = std::min_element(columns.begin(), columns.end(), [&](const OverlayBox& a, const OverlayBox& b) {
    return std::max(0.02, hides(a)) < std::max(0.02, hides(b));
  });
  const double column_hides = hides(*best);
  const double rows_hide =
      hides({{style.margin(), canvas.height() - foot - height}, {canvas.width() - 2 * style.margin(), height}});
  // Over a near view something is hidden anyhow, and a column hides less.
  const bool column = column_hides <= 0.02 || rows_hide > 0.5 * column_hides || rows_hide > 0.9;
  if (column)
    sheet.draw_column(*best);
  else
    sheet.rows(true);
}

}  // namespace laywright
