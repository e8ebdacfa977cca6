#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "render/overlay_parts.h"
#include "render/overlay_shade.h"

namespace laywright {
namespace {

void draw_arrow(Canvas& canvas, glm::dvec2 tip, glm::dvec2 onward, const OverlayStyle& style, OverlayRoom& taken) {
  const double length = 9.0 * style.unit, half = 2.8 * style.unit;
  const glm::dvec2 side(-onward.y, onward.x), foot = tip - onward * length;
  canvas.fill({tip, foot + side * half, foot - side * half}, style.ink);
  const glm::dvec2 low = glm::min(tip, foot) - glm::abs(side) * half;
  taken.arrows.push_back({low, glm::max(tip, foot) + glm::abs(side) * half - low});
}

// How many lines stand on each side of the spool already.
struct Sides {
  int left = 0, right = 0, above = 0;
  int all_above = 0;            // that will stand there
  std::vector<double> helpers;  // x of helper lines that run up from the spool
};

constexpr double row_gap = 22.0, row_step = 30.0, edge_gap = 12.0, shortest_arrow = 24.0;  // in units

// The height of the next row above the spool: each farther from it than the one before, but below the picture's edge,
// and below the caption where the words around x would meet it, with room for the rows that are still to come.
double next_row_above(const SpoolShade& shade, double x, double half_width, Sides& sides,
                      const OverlayStyle& style) {
  const double edge = edge_gap * style.unit;
  const double top = x - half_width < style.caption.x + edge ? std::max(edge, style.caption.y + edge) : edge;
  const int row = sides.above++;
  const int to_come = std::max(0, sides.all_above - 1 - row);
  return std::max(shade.low().y - (row_gap + row_step * row) * style.unit, top + 20.0 * style.unit * to_come);
}

// A line that would cross the spool is moved clear of it, straight across its own direction as far as the screen goes,
// but not out of the picture: upright ones to the side that they are nearer to, others upward.
glm::dvec2 clear_of(const SpoolShade& shade, glm::dvec2 from, glm::dvec2 to, const Canvas& canvas,
                    double words_width, Sides& sides, const OverlayStyle& style) {
  const double gap = row_gap * style.unit, step = row_step * style.unit, edge = edge_gap * style.unit;
  const glm::dvec2 run = glm::abs(to - from), low = glm::min(from, to), high = glm::max(from, to);
  if (run.y > run.x) {
    const double middle = (shade.low().x + shade.high().x) / 2;
    // In a perspective the line leans: both its ends stay in the picture.
    if ((from.x + to.x) / 2 < middle)
      return {std::max(shade.low().x - gap - step * sides.left++ - high.x, edge - low.x), 0.0};
    return {std::min(shade.high().x + gap + step * sides.right++ - low.x, canvas.width() - edge - high.x), 0.0};
  }
  const double y = next_row_above(shade, (from.x + to.x) / 2.0, words_width / 2.0, sides, style);
  return {0.0, std::max(y - high.y, edge - low.y)};
}

struct InkedLine {
  OverlayLine line;
  Ink ink;
  double width = 1.0;
};

struct Label {
  std::string words;
  glm::dvec2 middle{0.0};
  bool upward = false;
  glm::dvec2 line{0.0};  // along which it may stand elsewhere, from end to end; none for words beside an arrow
  glm::dvec2 away{0.0};  // square to the line, away from the spool, of length 1
  std::optional<glm::dvec2> tip;  // of an arrow that the words stand beside the foot of; `side` of it, -1 or 1
  double side = 1.0;
};

// Words on a patch of ground, level or upward, kept within the picture.
OverlayBox box_of(const Canvas& canvas, const Label& label, const OverlayStyle& style) {
  const double pad = 4.0 * style.unit;
  const double along = canvas.text_width(label.words, style.letters()) + 2 * pad, high = style.letters() + 2 * pad;
  const glm::dvec2 size = label.upward ? glm::dvec2(high, along) : glm::dvec2(along, high);
  const glm::dvec2 picture(canvas.width(), canvas.height()), room = size / 2.0 + 2.0;
  const glm::dvec2 middle = glm::max(room, glm::min(label.middle, picture - room));
  return {middle - size / 2.0, size};
}

// How much a label hides where it stands so: what cannot be read any more weighs more than a line that goes on.
double hidden_by(const OverlayBox& box, const Label& label, const OverlayRoom& taken) {
  const auto overlaps = [&](const OverlayBox& other) { return overlap(box, other); };
  const glm::dvec2 half = label.line / 2.0;
  // Its own line goes on behind it.
  const auto is_own = [&](const OverlayLine& line) {
    return glm::distance(line.from, label.middle - half) + glm::distance(line.to, label.middle + half) < 0.01;
  };
  const auto covers = [&](const OverlayLine& line) { return !is_own(line) && crosses(line, box); };
  return 8.0 * static_cast<double>(std::count_if(taken.words.begin(), taken.words.end(), overlaps)) +
         4.0 * static_cast<double>(std::count_if(taken.arrows.begin(), taken.arrows.end(), overlaps)) +
         (taken.is_crossed(box) ? 4.0 : 0.0) +
         static_cast<double>(std::count_if(taken.lines.begin(), taken.lines.end(), covers));
}

// On its line, if that leaves both arrows and all other words free: in the middle or nearer to an end. Else above it, or beside
// it, on the side away from the spool; or beyond an end.
OverlayBox free_box_of(const Canvas& canvas, const Label& label, const OverlayStyle& style,
                       const OverlayRoom& taken) {
  OverlayBox best = box_of(canvas, label, style);
  const double length = std::max(1.0, glm::length(label.line)), gap = 6.0 * style.unit;
  const double beyond = 0.5 + (0.5 * std::max(best.size.x, best.size.y) + gap) / length;
  const double off = 0.5 * std::min(best.size.x, best.size.y) + gap;
  double least = hidden_by(best, label, taken);
  for (const glm::dvec2 way : {glm::dvec2(0.2, 0.0),
                               {-0.2, 0.0},
                               {0.3, 0.0},
                               {-0.3, 0.0},
                               {0.0, off},
                               {0.2, off},
                               {-0.2, off},
                               {beyond, 0.0},
                               {-beyond, 0.0}}) {
    Label elsewhere = label;
    elsewhere.middle += label.line * way.x + label.away * way.y;
    const OverlayBox box = box_of(canvas, elsewhere, style);
    const double hidden = hidden_by(box, label, taken);
    if (hidden >= least) continue;
    best = box;
    least = hidden;
  }
  return best;
}

// Words beside the foot of their arrow: a little higher or lower, or on its other side, where they hide less; with the line from
// them to the arrow.
OverlayBox free_box_beside(Canvas& canvas, const Label& label, const OverlayStyle& style, OverlayRoom& taken) {
  const double edge = edge_gap * style.unit;
  const auto is_room = [&](double y) {
    return y >= edge && y <= canvas.height() - edge && std::abs(label.tip->y - y) >= shortest_arrow * style.unit;
  };
  OverlayBox best = box_of(canvas, label, style);
  double least = hidden_by(best, label, taken), side = label.side, y = label.middle.y;
  for (const double way : {label.side, -label.side}) {
    for (const double off : {0.0, -10.0, -20.0, 10.0, 20.0, 30.0}) {
      Label elsewhere = label;
      elsewhere.middle = {label.tip->x + way * label.side * (label.middle.x - label.tip->x),
                          label.middle.y + off * style.unit};
      const OverlayBox box = box_of(canvas, elsewhere, style);
      const double hidden = hidden_by(box, label, taken);
      if (hidden >= least || !is_room(elsewhere.middle.y)) continue;
      best = box;
      least = hidden;
      side = way;
      y = elsewhere.middle.y;
    }
  }
  const glm::dvec2 foot(label.tip->x, y), beside(foot.x + side * 8.0 * style.unit, y);
  taken.lines.push_back({foot, *label.tip});
  canvas.line({foot, *label.tip}, {style.ground.color, 0.7}, 3.0 * style.unit);
  canvas.line({beside, foot, *label.tip}, style.ink, 1.2 * style.unit);
  return best;
}

void draw_label(Canvas& canvas, const Label& label, const OverlayBox& box, const OverlayStyle& style) {
  const glm::dvec2 middle = box.corner + box.size / 2.0;
  canvas.box(box.corner, box.size, 3.0 * style.unit, {style.ground.color, 0.9});
  const double down = 0.36 * style.letters();
  if (label.upward)
    canvas.text_upward({middle.x + down, middle.y}, label.words, style.letters(), style.ink);
  else
    canvas.text({middle.x, middle.y + down}, label.words, style.letters(), style.ink, TextAlign::middle);
}

// Draws its arrows alone; returns its words, if it is drawn at all. Its lines are drawn once it is known where all words stand.
std::optional<Label> draw_between(Canvas& canvas, const DimensionLine& line, const View& view,
                                  const SpoolShade& shade, Sides& sides, const OverlayStyle& style,
                                  OverlayRoom& taken, std::vector<InkedLine>& lines) {
  const auto first = in_picture(view, line.from), second = in_picture(view, line.to);
  const auto measured_from = in_picture(view, line.measured_from), measured_to = in_picture(view, line.measured_to);
  if (!first || !second || !measured_from || !measured_to) return std::nullopt;
  const double length = glm::length(*second - *first);
  // Seen from near its end it says nothing.
  const double unforeshortened = glm::length(line.to - line.from) / mm_per_px(view);
  if (length < 24.0 * style.unit || length < 0.3 * unforeshortened) return std::nullopt;
  const double words_width = canvas.text_width(line.text, style.letters());
  const glm::dvec2 shift = clear_of(shade, *first, *second, canvas, words_width, sides, style);
  const glm::dvec2 from = *first + shift, to = *second + shift;
  const glm::dvec2 onward = (to - from) / length;
  const double thin = 0.8 * style.unit;
  for (const InkedLine& drawn : {InkedLine{{*measured_from, from}, style.faint, thin},
                                 {{*measured_to, to}, style.faint, thin},
                                 {{from, to}, style.ink, 1.2 * style.unit}}) {
    taken.lines.push_back(drawn.line);
    lines.push_back(drawn);
  }
  draw_arrow(canvas, from, -onward, style, taken);
  draw_arrow(canvas, to, onward, style, taken);
  // Along its line, as on a drawing, where that is longer than the words; so no margin must be as wide as they are.
  const bool upward = std::abs(onward.y) > std::abs(onward.x);
  const glm::dvec2 middle = (from + to) / 2.0, square(-onward.y, onward.x);
  const glm::dvec2 off = middle - (shade.low() + shade.high()) / 2.0;
  return Label{line.text, middle, upward, to - from, glm::dot(square, off) < 0.0 ? -square : square, {}, 1.0};
}

// An arrow onto a surface, and the words above or below the spool: beside the arrow's
// foot on the side of the spool's middle, so that they do not meet the helper lines of its width.
std::optional<Label> draw_pointed(Canvas& canvas, const DimensionLine& line, const View& view,
                                  const SpoolShade& shade, Sides& sides, const OverlayStyle& style,
                                  OverlayRoom& taken) {
  const bool from_above = view.camera.elevation_deg >= 0.0;
  const auto tip = in_picture(view, from_above ? line.measured_from : line.measured_to);
  const auto outside = in_picture(view, from_above ? line.from : line.to);
  if (!tip || !outside) return std::nullopt;
  const bool above = outside->y <= tip->y;
  const double half_width = canvas.text_width(line.text, style.letters()) / 2.0;
  const auto middle_at = [&](double way) { return tip->x + way * (12.0 * style.unit + half_width); };
  double inward = tip->x < (shade.low().x + shade.high().x) / 2.0 ? 1.0 : -1.0;
  // No helper line is to run through the words.
  const auto is_met = [&](double way) {
    return std::any_of(sides.helpers.begin(), sides.helpers.end(),
                       [&](double x) { return std::abs(x - middle_at(way)) < half_width + 6.0 * style.unit; });
  };
  if (is_met(inward) && !is_met(-inward)) inward = -inward;
  const double middle = middle_at(inward);
  const double lowest = std::max(1.0, canvas.height() - edge_gap * style.unit);
  const double y = std::min(
      above ? next_row_above(shade, middle, half_width, sides, style) : shade.high().y + row_gap * style.unit,
      lowest);
  if (std::abs(tip->y - y) < shortest_arrow * style.unit) return std::nullopt;
  draw_arrow(canvas, *tip, {0.0, tip->y > y ? 1.0 : -1.0}, style, taken);
  return Label{line.text, {middle, y}, false, {}, {}, *tip, inward};
}

}  // namespace

void draw_dimension_lines(Canvas& canvas, const Scene& scene, const View& view, const SpoolShade& shade,
                          const OverlayStyle& style, OverlayRoom& taken) {
  if (scene.dimensions.empty()) return;
  Sides sides;
  // One level line, and one that points from above.
  for (const DimensionLine& line : scene.dimensions) {
    const bool level = std::abs(line.to.x - line.from.x) > std::abs(line.to.y - line.from.y);
    sides.all_above += level || (line.pointed && view.camera.elevation_deg >= 0.0) ? 1 : 0;
    if (!level || line.pointed) continue;
    for (const Vec3& end : {line.from, line.to, line.measured_from, line.measured_to})
      if (const auto at = in_picture(view, end)) sides.helpers.push_back(at->x);
  }
  // Words last, so that no line crosses any.
  std::vector<Label> labels;
  std::vector<InkedLine> lines;
  for (const DimensionLine& line : scene.dimensions) {
    const auto label = line.pointed ? draw_pointed(canvas, line, view, shade, sides, style, taken)
                                    : draw_between(canvas, line, view, shade, sides, style, taken, lines);
    if (label) labels.push_back(*label);
  }
  // Those that cannot give way come first.
  std::stable_partition(labels.begin(), labels.end(),
                        [](const Label& label) { return label.line == glm::dvec2(0.0); });
  for (const Label& label : labels) {
    taken.words.push_back(label.tip ? free_box_beside(canvas, label, style, taken)
                                    : free_box_of(canvas, label, style, taken));
  }
  // A line ends before words: their ground lets it through.
  for (const InkedLine& each : lines) {
    for (const OverlayLine& part : parts_outside(each.line, taken.words))
      canvas.line({part.from, part.to}, each.ink, each.width);
  }
  const std::size_t first = taken.words.size() - labels.size();
  for (std::size_t i = 0; i < labels.size(); ++i) draw_label(canvas, labels[i], taken.words[first + i], style);
}

}  // namespace laywright
