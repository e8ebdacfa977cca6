// What of the picture words and lines have taken already, so that what comes after keeps clear of it.
#pragma once

#include <vector>

#include <glm/glm.hpp>

namespace laywright {

struct OverlayLine {
  glm::dvec2 from{0.0}, to{0.0};
};

struct OverlayBox {
  glm::dvec2 corner{0.0}, size{0.0};

  [[nodiscard]] bool holds(glm::dvec2 place) const {
    const glm::dvec2 off = place - corner;
    return off.x >= 0.0 && off.y >= 0.0 && off.x <= size.x && off.y <= size.y;
  }
};

struct OverlayRoom {
  std::vector<OverlayLine> lines;
  std::vector<OverlayBox> arrows;   // of the lines
  std::vector<OverlayLine> fibers;  // free ones, between guide and spool, and the guide's eye
  std::vector<OverlayBox> words;
  std::vector<glm::dvec2> signs;  // of findings

  // Whether a line, a fiber or words reach into the box; whether a fiber does; and how many signs do.
  [[nodiscard]] bool meets(const OverlayBox& box) const;
  [[nodiscard]] bool is_crossed(const OverlayBox& box) const;
  [[nodiscard]] int signs_in(const OverlayBox& box) const;
};

// Twice the area of the triangle; positive where c lies on the same side of a to b as y of x.
[[nodiscard]] inline double turn_of(glm::dvec2 a, glm::dvec2 b, glm::dvec2 c) {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

[[nodiscard]] bool cross(const OverlayLine& a, const OverlayLine& b);
[[nodiscard]] bool crosses(const OverlayLine& line, const OverlayBox& box);
// What of a line no box holds, from one end to the other.
[[nodiscard]] std::vector<OverlayLine> parts_outside(const OverlayLine& line, const std::vector<OverlayBox>& boxes);
[[nodiscard]] bool overlap(const OverlayBox& a, const OverlayBox& b);

}  // namespace laywright
