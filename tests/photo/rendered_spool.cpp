#include "photo/rendered_spool.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <random>
#include <vector>

namespace laywright::testing {
namespace {

constexpr double degree = std::numbers::pi / 180.0;
constexpr int columns_per_px = 4;

// Radius of the solid at a place along its axis, from the middle between the flanges.
double radius_at(const RenderedSpool& spool, double along) {
  const double half = 0.5 * spool.inside_width_mm,
               flange = 0.5 * (spool.flange_diameter_mm + (along > 0.0 ? spool.right_flange_off_mm : 0.0));
  const double beyond = std::abs(along) - half;
  if (beyond < 0.0) return 0.5 * spool.diameter_mm(along + half);
  // A tapered face stands back the farther out it is.
  const double slope = std::tan(spool.flange_taper_rad);
  const double set_back = slope * (flange - 0.5 * spool.barrel_diameter_mm);
  if (beyond < set_back) return 0.5 * spool.barrel_diameter_mm + beyond / slope;
  if (beyond < set_back + spool.flange_thickness_mm) return flange;
  return 0.5 * spool.shaft_diameter_mm;
}

struct Outline {
  std::vector<double> upper, lower;  // v in each column; lower above upper: nothing
};

Outline outline_of(const RenderedSpool& spool, const RenderedView& view) {
  const double focal = view.px_per_mm * view.distance_mm;
  const double sine = std::sin(view.yaw_deg * degree), cosine = std::cos(view.yaw_deg * degree);
  const int count = columns_per_px * (view.width_px + view.height_px);
  const double reach = 0.5 * spool.flange_diameter_mm + 0.5 * spool.inside_width_mm + 20.0;
  Outline outline{std::vector<double>(static_cast<std::size_t>(count), -1e9),
                  std::vector<double>(static_cast<std::size_t>(count), 1e9)};
  for (int column = 0; column < count; ++column) {
    const double u = (column - 0.5 * count) / columns_per_px;
    for (double z = view.distance_mm - reach; z <= view.distance_mm + reach; z += 0.2) {
      const double dx = u / focal * z - view.right_mm, dz = z - view.distance_mm;
      const double along = dx * cosine + dz * sine, aside = dz * cosine - dx * sine;
      const double radius = radius_at(spool, along);
      if (std::abs(aside) >= radius) continue;
      const double rise = std::sqrt(radius * radius - aside * aside);
      const auto at = static_cast<std::size_t>(column);
      outline.upper[at] = std::max(outline.upper[at], focal * (view.up_mm + rise) / z);
      outline.lower[at] = std::min(outline.lower[at], focal * (view.up_mm - rise) / z);
    }
  }
  return outline;
}

void blur(std::vector<double>& light, int width, int height, double sigma) {
  if (sigma <= 0.0) return;
  const int reach = static_cast<int>(std::ceil(4.0 * sigma));
  std::vector<double> weights;
  double sum = 0.0;
  for (int i = -reach; i <= reach; ++i)
    weights.push_back(std::exp(-0.5 * i * i / (sigma * sigma))), sum += weights.back();
  std::vector<double> from;
  for (const bool down : {false, true}) {
    from = light;
    for (int y = 0; y < height; ++y) {
      for (int x = 0; x < width; ++x) {
        double each = 0.0;
        for (int i = -reach; i <= reach; ++i) {
          const int nx = down ? x : std::clamp(x + i, 0, width - 1),
                    ny = down ? std::clamp(y + i, 0, height - 1) : y;
          each += weights[static_cast<std::size_t>(i + reach)] * from[static_cast<std::size_t>(ny * width + nx)];
        }
        light[static_cast<std::size_t>(y * width + x)] = each / sum;
      }
    }
  }
}

}  // namespace

GreyPhoto rendered(const RenderedSpool& spool, const RenderedView& view) {
  const Outline outline = outline_of(spool, view);
  const double sine = std::sin(view.tilt_deg * degree), cosine = std::cos(view.tilt_deg * degree);
  const int width = view.width_px, height = view.height_px;
  std::vector<double> light;
  light.reserve(static_cast<std::size_t>(width * height));
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      int inside = 0;
      for (int part = 0; part < 16; ++part) {
        const double seen_x = x - 0.5 * (width - 1) + (part % 4 - 1.5) / 4.0;
        const double seen_y = 0.5 * (height - 1) - y + (part / 4 - 1.5) / 4.0;
        const double stretch =
            1.0 + view.barrel * 4.0 * (seen_x * seen_x + seen_y * seen_y) / (static_cast<double>(width) * width);
        const double px = seen_x * stretch, py = seen_y * stretch;
        const double u = px * cosine + py * sine, v = py * cosine - px * sine;
        const auto at =
            static_cast<std::size_t>(std::lround(u * columns_per_px) + static_cast<long>(outline.upper.size() / 2));
        inside += v < outline.upper[at] && v > outline.lower[at];
      }
      light.push_back((view.ground * (16 - inside) + view.spool * inside) / 16.0);
    }
  }
  blur(light, width, height, view.blur_px);
  std::mt19937_64 random(view.seed);
  std::normal_distribution<double> noise(0.0, std::max(view.noise, 1e-9));
  GreyPhoto photo{width, height, {}};
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      const double shade =
          1.0 - view.uneven * (static_cast<double>(x) / width + static_cast<double>(y) / height) / 2.0;
      const double grey = light[static_cast<std::size_t>(y * width + x)] * shade + noise(random);
      photo.grey.push_back(static_cast<std::uint8_t>(std::clamp(std::lround(grey), 0L, 255L)));
    }
  }
  return photo;
}

}  // namespace laywright::testing
