#include "photo/lens_bend.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include <opencv2/core.hpp>

namespace laywright {
namespace {

// Of the flange's half height, as far up and down as its outer edge is followed: beyond, a rim that is rounded would count.
constexpr double followed = 0.9;
constexpr int rows = 160, least_rows = 40;

// A row of the edge, v over the flange's half height, px.
struct EdgeRow {
  double share = 0.0, u = 0.0, v = 0.0;
};

// Rows in which a shaft or a stand goes on outside the flange have none.
std::vector<EdgeRow> outer_edge(const FlatPicture& picture, double edge_width, const SeenFlange& flange, int step) {
  const double middle = 0.5 * (flange.top + flange.bottom), half = 0.5 * flange.height();
  const int from = static_cast<int>(std::lround(flange.rim_x));
  const int most = std::abs(from - flange.outer) + static_cast<int>(0.1 * flange.height());
  std::vector<EdgeRow> edge;
  for (int i = 0; i < rows; ++i) {
    const int row = static_cast<int>(std::lround(middle + followed * half * (2.0 * i / (rows - 1) - 1.0)));
    if (const auto end = row_edge(picture, edge_width, row, from, step, most))
      edge.push_back({(middle - row) / half, *end - 0.5 * (picture.width - 1), middle - row});
  }
  return edge;
}

// c of value = a + b t + c t^2, by least squares, twice again without what lies off it; none where too little is left.
std::optional<double> curvature(const std::vector<EdgeRow>& edge, const std::vector<double>& values) {
  std::vector<bool> counts(edge.size(), true);
  cv::Vec3d fitted;
  for (int pass = 0; pass < 3; ++pass) {
    cv::Matx33d normal = cv::Matx33d::zeros();
    cv::Vec3d right;
    int n = 0;
    bool inner = false, outer = false;
    for (std::size_t i = 0; i < edge.size(); ++i) {
      if (!counts[i]) continue;
      const double t = edge[i].share;
      const cv::Vec3d at(1.0, t, t * t);
      normal += at * at.t();
      right += at * values[i];
      ++n;
      inner = inner || std::abs(t) < 0.35;
      outer = outer || std::abs(t) > 0.75;
    }
    if (n < least_rows || !inner || !outer) return std::nullopt;
    if (!cv::solve(normal, right, fitted, cv::DECOMP_CHOLESKY)) return std::nullopt;
    std::vector<double> off;
    for (std::size_t i = 0; i < edge.size(); ++i)
      off.push_back(std::abs(values[i] - fitted[0] - edge[i].share * (fitted[1] + fitted[2] * edge[i].share)));
    std::vector<double> sorted = off;
    std::nth_element(sorted.begin(), sorted.begin() + static_cast<std::ptrdiff_t>(sorted.size() / 2), sorted.end());
    // Of normal errors, the median lies at 0.67 sigmas.
    const double most = 3.0 * sorted[sorted.size() / 2] / 0.6745 + 1e-9;
    for (std::size_t i = 0; i < edge.size(); ++i) counts[i] = off[i] <= most;
  }
  return fitted[2];
}

}  // namespace

std::optional<LensBend> lens_bend(const FlatPicture& picture, double edge_width, const SeenSpool& spool,
                                  const SpoolSize& size, double distance_mm, double near_mm, double far_mm) {
  std::array<std::vector<EdgeRow>, 2> edges;
  for (std::size_t side = 0; side < 2; ++side)
    edges[side] = outer_edge(picture, edge_width, spool.flanges[side], side == 0 ? -1 : 1);
  // Of the ends toward the middle, at the left and the right flange, as a camera there would have to see a lens bend it.
  const auto bends = [&](double distance) -> std::optional<std::array<double, 2>> {
    const Pinhole camera = seen_from(picture, spool, size, distance).camera;
    std::array<double, 2> bend{};
    for (std::size_t side = 0; side < 2; ++side) {
      std::vector<double> along;
      for (const EdgeRow& each : edges[side])
        along.push_back(along_of_rim(camera, size.flange_radius_mm, each.u, each.v, side == 0 ? -1 : 1));
      const auto found = curvature(edges[side], along);
      if (!found) return std::nullopt;
      bend[side] = (side == 0 ? *found : -*found) * camera.focal_px / camera.middle_z_mm;
    }
    return bend;
  };
  const auto best = bends(distance_mm), near = bends(near_mm), far = bends(far_mm);
  if (!best || !near || !far) return std::nullopt;
  const auto mean = [](const std::array<double, 2>& both) { return 0.5 * (both[0] + both[1]); };
  LensBend bend;
  bend.bend_px = mean(*best);
  // Any edge is found to a twentieth of a pixel at best.
  bend.sigma_px = std::hypot(0.5 * (mean(*near) - mean(*far)), 0.5 * ((*best)[0] - (*best)[1]), 0.05);
  const double beyond = std::max(0.0, std::abs(bend.bend_px) - 2.0 * bend.sigma_px);
  double lever = 0.0;  // u V^2
  for (std::size_t side = 0; side < 2; ++side) {
    const SeenFlange& flange = spool.flanges[side];
    const double half = 0.5 * flange.height();
    lever += 0.5 * std::abs(flange.outer - 0.5 * (picture.width - 1)) * half * half;
  }
  bend.strength = std::copysign(beyond / std::max(1.0, lever), bend.bend_px);
  return bend;
}

double share_off(double strength, const FlatPicture& picture, const SeenSpool& spool, double u, double v) {
  double rims = 0.0;
  for (const SeenFlange& flange : spool.flanges) {
    const double x = flange.rim_x - 0.5 * (picture.width - 1), y = 0.5 * flange.height();
    rims += 0.5 * (x * x + y * y);
  }
  return strength * (rims - u * u - v * v);
}

}  // namespace laywright
