#include "render/strand_layer.h"

#include <cstddef>

namespace laywright {

void StrandLayer::load(const Strands& strands, const std::vector<Sector>& shown) {
  const std::vector<StrandPiece> pieces = pieces_of(strands, shown);
  constexpr std::size_t stride = sizeof(StrandPiece);
  stations_ = static_cast<int>(strands.stations);
  pieces_.load(pieces.data(), pieces.size() * stride, pieces.size());
  pieces_.floats(1, 4, stride, offsetof(StrandPiece, before_x));
  pieces_.floats(2, 4, stride, offsetof(StrandPiece, to_x));
  pieces_.floats(3, 2, stride, offsetof(StrandPiece, shown_from));
  pieces_.whole(4, stride, offsetof(StrandPiece, node));
  pieces_.color(5, stride, offsetof(StrandPiece, from_colour));
  pieces_.color(6, stride, offsetof(StrandPiece, to_colour));
}

void StrandLayer::draw(const Frame& frame, double opacity) const {
  if (empty()) return;
  frame.use(program_);
  program_.set("radius", frame.fiber_radius_mm);
  program_.set("stations", stations_);
  program_.set("opacity", opacity);
  program_.set("x_range", frame.x_range);
  const glm::mat4& m = frame.from_eye;
  program_.set("x_row", glm::vec4(m[0][0], m[1][0], m[2][0], m[3][0]));
  program_.set("ground", rgb_of(frame.colours.spool));
  program_.set("sheen", glm::vec2(frame.sheen.metal, frame.sheen.clear));
  pieces_.draw();
}

}  // namespace laywright
