#include "scene/face.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "scene/face_fiber.h"

namespace laywright {

namespace {

// Angle of a plane between two stations.
struct Between {
  std::size_t station = 0;
  double share = 0.0;  // of the way to the next
};

Between between_stations(double angle, std::size_t stations) {
  const double turn = angle / (2.0 * std::numbers::pi);
  const double at = (turn - std::floor(turn)) * static_cast<double>(stations);
  double before = std::floor(at);
  double share = at - before;
  // An angle that was computed from a station is that station's.
  constexpr double rounding = 1e-9;
  if (share > 1.0 - rounding) before += 1.0;
  if (share > 1.0 - rounding || share < rounding) share = 0.0;
  return {static_cast<std::size_t>(before) % stations, share};
}

double outside_of(double value, double from, double to) { return std::max({0.0, from - value, value - to}); }

class DiscPainter {
 public:
  DiscPainter(FaceImage& image, double d)
      : image_(image),
        radius_px_(0.5 * d / image.px_mm),
        most_(most_coverage(radius_px_)),
        best_(image.colour.size()) {}

  void paint(const FaceDisc& disc) {
    const double x = (static_cast<double>(disc.x_mm) - image_.window.x_from) / image_.px_mm;
    const double r = (static_cast<double>(disc.r_mm) - image_.window.r_from) / image_.px_mm;
    const double reach = radius_px_ + 0.5;
    const Span columns = span(x - reach, x + reach, image_.width), rows = span(r - reach, r + reach, image_.height);
    for (std::size_t j = rows.first; j < rows.end; ++j) {
      const auto dr = static_cast<float>(static_cast<double>(j) + 0.5 - r);
      for (std::size_t i = columns.first; i < columns.end; ++i) {
        const auto dx = static_cast<float>(static_cast<double>(i) + 0.5 - x);
        const float inside = static_cast<float>(reach) - std::sqrt(dx * dx + dr * dr);
        if (inside > 0.0F) blend(j * image_.width + i, disc, most_ * std::min(1.0F, inside));
      }
    }
  }

 private:
  struct Span {
    std::size_t first = 0, end = 0;
  };
  static Span span(double from, double to, std::size_t count) {
    const double last = static_cast<double>(count);
    return {static_cast<std::size_t>(std::clamp(from, 0.0, last)),
            static_cast<std::size_t>(std::clamp(to + 1.0, 0.0, last))};
  }

  // The edge of a disc is drawn a pixel wide. That makes discs of few pixels too large; they are drawn fainter, so that
  // they cover their area.
  static float most_coverage(double radius_px) {
    if (radius_px >= 1.0) return 1.0F;
    const double wide = radius_px + 0.5;
    const double drawn = radius_px < 0.5 ? wide * wide * wide / 3.0 : radius_px * radius_px + 1.0 / 12.0;
    return static_cast<float>(radius_px * radius_px / drawn);
  }

  // Discs lie beside each other, so that their shares of a pixel add up.
  void blend(std::size_t at, const FaceDisc& disc, float share) {
    const auto covers = static_cast<int>(255.0F * share + 0.5F);
    if (covers == 0) return;
    Rgba& colour = image_.colour[at];
    const int all = colour.a + covers;
    if (colour.a == 0) {
      colour = {disc.colour.r, disc.colour.g, disc.colour.b, static_cast<std::uint8_t>(covers)};
      best_[at] = colour.a;
      image_.node[at] = disc.node;
      return;
    }
    const auto mix = [&](std::uint8_t from, std::uint8_t to) {
      return static_cast<std::uint8_t>((from * colour.a + to * covers + all / 2) / all);
    };
    colour = {mix(colour.r, disc.colour.r), mix(colour.g, disc.colour.g), mix(colour.b, disc.colour.b),
              static_cast<std::uint8_t>(std::min(255, all))};
    if (covers > best_[at]) {
      best_[at] = static_cast<std::uint8_t>(covers);
      image_.node[at] = disc.node;
    }
  }

  FaceImage& image_;
  double radius_px_;
  float most_;
  std::vector<std::uint8_t> best_;  // share of the node that a pixel names
};

}  // namespace

FaceWindow whole_face(const SceneSource& source) {
  const TurnExtent& all = source.turns().levels().back().front();
  const double radius = 0.5 * source.d();
  return {all.x_min - radius, all.x_max + radius, all.r_min - radius, all.r_max + radius};
}

std::vector<FaceDisc> face_discs(const SceneSource& source, const View& view, double angle,
                                 const FaceWindow& window) {
  const NodeStore& nodes = source.build().nodes;
  const double radius = 0.5 * source.d();
  const Between at = between_stations(angle, source.stations());
  const bool piece = at.share > 0.0;
  const FaceFiber fiber(source, view);
  std::vector<FaceDisc> discs;
  const TurnExtent wide{window.x_from - radius, window.x_to + radius, window.r_from - radius, window.r_to + radius};
  source.turns().for_each(wide, fiber.begin_turn(), fiber.end_turn(), true, [&](std::size_t turn) {
    const std::size_t k = turn * source.stations() + at.station;
    if (!fiber.has(k, piece)) return true;
    double x = nodes.x(k), r = nodes.r(k);
    if (piece) {
      x += at.share * (nodes.x(k + 1) - x);
      r += at.share * (nodes.r(k + 1) - r);
    }
    const double off_x = outside_of(x, window.x_from, window.x_to),
                 off_r = outside_of(r, window.r_from, window.r_to);
    if (off_x * off_x + off_r * off_r > radius * radius) return true;
    discs.push_back({static_cast<float>(x), static_cast<float>(r), static_cast<std::uint32_t>(k), fiber.colour(k)});
    return true;
  });
  return discs;
}

FaceImage face_image(const SceneSource& source, const View& view, double angle, const FaceWindow& window,
                     const FaceImageSettings& settings) {
  FaceImage image;
  image.window = window;
  const double width = window.x_to - window.x_from, height = window.r_to - window.r_from;
  const double coarsest = std::sqrt(width * height / static_cast<double>(settings.most_px));
  image.px_mm = std::max(source.d() / settings.px_per_d, coarsest);
  const auto pixels = [&](double length) {
    return static_cast<std::size_t>(std::max(1.0, std::ceil(length / image.px_mm - 1e-9)));
  };
  image.width = pixels(width);
  image.height = pixels(height);
  image.colour.assign(image.width * image.height, {0, 0, 0, 0});
  image.node.assign(image.width * image.height, no_node);
  DiscPainter painter(image, source.d());
  for (const FaceDisc& disc : face_discs(source, view, angle, window)) painter.paint(disc);
  image.fiber_diameter_mm = source.d();
  if (view.colouring != Colouring::layer) return image;
  image.layer.reserve(image.node.size());
  for (const std::uint32_t node : image.node) {
    const std::size_t layer = node == no_node ? 0 : source.stroke_of(node) + 1;
    image.layer.push_back(static_cast<std::uint16_t>(std::min<std::size_t>(layer, 0xFFFF)));
  }
  return image;
}

}  // namespace laywright
