#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <span>
#include <string>

#include "measure/layer_shade.h"
#include "render/overlay_parts.h"

namespace laywright {
namespace {

// Of one face.
void draw_numbers(Canvas& canvas, std::span<const LayerNumber> numbers, const View& view,
                  const OverlayStyle& style) {
  const Projector project(view);
  const std::optional<glm::dvec2> first = project(numbers.front().place), last = project(numbers.back().place);
  if (!first || !last || numbers.size() < 2) return;
  const double letters = 11.0 * style.unit, pad = 2.0 * style.unit;
  const double high = glm::length(*last - *first);
  const int step = layers_to_a_number(high / static_cast<double>(numbers.size() - 1), 2.0 * letters);
  // Beside one another they lie in a row, where the face is seen from its end: then each is as wide as it is.
  for (const LayerNumber& number : numbers) {
    if (number.layer % step != 0) continue;
    const std::optional<glm::dvec2> at = project(number.place);
    if (!at || at->x < 0.0 || at->y < 0.0 || at->x > canvas.width() || at->y > canvas.height()) continue;
    const std::string words = std::to_string(number.layer);
    const glm::dvec2 size(canvas.text_width(words, letters) + 2.0 * pad, letters + pad);
    canvas.box(*at - size / 2.0, size, pad, {style.ground.color, 0.78});
    canvas.text({at->x, at->y + 0.36 * letters}, words, letters, style.ink, TextAlign::middle);
  }
}

}  // namespace

void draw_layer_numbers(Canvas& canvas, const Scene& scene, const View& view, const OverlayStyle& style) {
  const std::span<const LayerNumber> all(scene.layer_numbers);
  for (std::size_t first = 0; first < all.size();) {
    std::size_t end = first + 1;
    while (end < all.size() && all[end].facing == all[first].facing) ++end;
    if (faces_eye(view, all[first].place, all[first].facing))
      draw_numbers(canvas, all.subspan(first, end - first), view, style);
    first = end;
  }
}

void draw_zero(Canvas& canvas, const Scene& scene, const View& view, const OverlayStyle& style, OverlayRoom& taken) {
  const std::optional<glm::dvec2> from = in_picture(view, scene.axis.zero_from),
                                  to = in_picture(view, scene.axis.zero_to);
  if (!from || !to) return;
  const std::string words = "angle 0";
  const double letters = 11.0 * style.unit, gap = 5.0 * style.unit;
  const double wide = canvas.text_width(words, letters);
  const glm::dvec2 at(to->x - gap - wide, 0.5 * (from->y + to->y) + 0.36 * letters);
  if (at.x < 0.0 || at.y < letters || at.y > canvas.height()) return;
  const OverlayBox box{{at.x - 2.0 * style.unit, at.y - letters}, {wide + 4.0 * style.unit, 1.3 * letters}};
  if (taken.meets(box)) return;
  taken.words.push_back(box);
  canvas.box(box.corner, box.size, 2.0 * style.unit, {style.ground.color, 0.8});
  canvas.text(at, words, letters, style.faint);
}

}  // namespace laywright
