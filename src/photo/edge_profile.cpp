#include "photo/edge_profile.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "base/units.h"
#include "photo/camera_of_spool.h"
#include "photo/lens_bend.h"

namespace laywright {
namespace {

// Light that spills over an edge, and the level at which it is cut, move it by so much.
constexpr double edge_error_px = 0.1;

Issue refused(std::string why) {
  Issue issue;
  issue.what = std::move(why);
  return issue;
}

struct Levelled {
  FlatPicture picture;
  double tilt_rad = 0.0, edge_width = 0.0;
};

// Turned until the middle line is level.
Levelled levelled(const GreyPhoto& photo, std::string& why) {
  Levelled level;
  for (int pass = 0; pass < 4; ++pass) {
    level.picture = flattened(photo, -level.tilt_rad, why);
    if (!why.empty()) return level;
    level.edge_width = edge_width_px(level.picture);
    if (level.edge_width > most_edge_width_px) {
      why = fmt::format(
          "the picture is too blurred: ground turns into spool in {} px, at most {} will do. Focus on the "
          "flanges' "
          "rims and hold the camera still; or make the picture smaller, if the fiber keeps a pixel or two",
          figure(level.edge_width, 1), figure(most_edge_width_px, 0));
      return level;
    }
    const double off = tilt_of(column_edges(level.picture, level.edge_width));
    level.tilt_rad += off;
    // The first look at a steep one sees less of it.
    if (std::abs(off) < 0.01 * rad_per_deg || std::abs(level.tilt_rad) > 2.0 * most_tilt_deg * rad_per_deg) break;
  }
  if (std::abs(level.tilt_rad) > most_tilt_deg * rad_per_deg) {
    why =
        fmt::format("the spool's axis is tilted by {} deg in the picture, at most {} will do; hold the camera level",
                    figure(level.tilt_rad / rad_per_deg, 1), figure(most_tilt_deg, 0));
  }
  return level;
}

// What each column shows, as a camera there saw it; nothing of what the rims hide.
struct SeenProfile {
  std::vector<double> x, radius;  // along the axis from the left face at the barrel
  std::vector<double> u, v;       // where, px from the picture's middle: half the height that is seen
  double hidden_left = 0.0, hidden_right = 0.0;
};

// The rims' silhouette: the greatest |v| in each column, where it is above what stands there.
void add_rims(const FlatPicture& picture, const SeenWidth& seen, double radius, std::vector<double>& highest) {
  const double middle = 0.5 * (picture.width - 1);
  constexpr int steps = 4000;
  for (const double face : seen.face_mm) {
    RimPoint last = rim_point(seen.camera, face, radius, 0.0);
    for (int i = 1; i <= steps; ++i) {
      const RimPoint point = rim_point(seen.camera, face, radius, std::numbers::pi * i / steps);
      // All columns that this stretch of the rim touches.
      const double from = std::min(last.u, point.u) + middle, to = std::max(last.u, point.u) + middle;
      for (int x = std::max(0, static_cast<int>(from)); x <= std::min(picture.width - 1, static_cast<int>(to) + 1);
           ++x) {
        double& each = highest[static_cast<std::size_t>(x)];
        each = std::max({each, last.v, point.v});
      }
      last = point;
    }
  }
}

// `rims`: as far down as they hide the wind, px in each column.
SeenProfile profile_from(const FlatPicture& picture, const SeenSpool& spool, const SpoolSize& size,
                         const SeenWidth& seen, double edge_width, const std::vector<double>& rims) {
  const double middle_x = 0.5 * (picture.width - 1), middle_y = 0.5 * (picture.height - 1);
  // What is blurred into a rim is not the wind's edge.
  const int margin = static_cast<int>(std::ceil(edge_width)) + 1;
  const auto is_hidden = [&](int x) {
    for (int near = x - margin; near <= x + margin; ++near) {
      const auto at = static_cast<std::size_t>(std::clamp(near, 0, picture.width - 1));
      if (!std::isfinite(spool.edges.height(at)) || rims[at] >= 0.5 * spool.edges.height(at) - 1.0) return true;
    }
    return false;
  };
  SeenProfile profile;
  const double width = seen.width_mm() - 2.0 * size.set_back_mm;
  for (int x = spool.flanges[0].inner; x <= spool.flanges[1].inner; ++x) {
    if (is_hidden(x)) continue;
    const auto at = static_cast<std::size_t>(x);
    const double top = middle_y - spool.edges.top[at], bottom = middle_y - spool.edges.bottom[at];
    double radius = 0.0, along = 0.0;
    for (int pass = 0; pass < 4; ++pass) {
      radius = radius_at(seen.camera.focal_px, seen.camera.depth_mm(along), top, bottom);
      along = along_of_edge(seen.camera, x - middle_x, radius);
    }
    const double from_face = along - seen.face_mm[0] - size.set_back_mm;
    if (from_face < 0.0 || from_face > width) continue;
    profile.x.push_back(from_face);
    profile.radius.push_back(radius);
    profile.u.push_back(x - middle_x);
    profile.v.push_back(0.5 * spool.edges.height(at));
  }
  if (!profile.x.empty()) {
    profile.hidden_left = profile.x.front();
    profile.hidden_right = width - profile.x.back();
  }
  return profile;
}

PhotoFound found_of(const Levelled& level, const SeenSpool& spool, const SpoolSize& size, const SeenWidth& seen) {
  PhotoFound found;
  for (std::size_t side = 0; side < 2; ++side) found.flange_px[side] = spool.flanges[side].height();
  found.px_per_mm = seen.camera.focal_px / seen.camera.middle_z_mm;
  found.tilt_deg = level.tilt_rad / rad_per_deg;
  found.yaw_deg = seen.camera.yaw_rad / rad_per_deg;
  found.edge_width_px = level.edge_width;
  found.distance_mm = found.distance_least_mm = found.distance_most_mm = seen.camera.middle_z_mm;
  found.inside_width_mm = seen.width_mm() - 2.0 * size.set_back_mm;
  return found;
}

// Why the camera's view is not to be trusted; empty if it is.
std::string why_not(const PhotoFound& found, const Plan& plan, bool distance_given) {
  const double difference = found.flange_px[1] / found.flange_px[0] - 1.0;
  if (std::abs(difference) > most_flange_difference) {
    return fmt::format(
        "the right flange is seen {} {} than the left one, at most {} will do; stand straight in front "
        "of the "
        "spool's middle",
        percent_text(std::abs(difference), 1), difference > 0.0 ? "higher" : "less high",
        percent_text(most_flange_difference, 0));
  }
  if (std::abs(found.yaw_deg) > most_yaw_deg) {
    return fmt::format(
        "the spool's axis runs away from the camera by {} deg, by the flanges' heights of {} and {} px; at "
        "most {} deg will do. Stand straight in front of the spool's middle",
        figure(std::abs(found.yaw_deg), 1), figure(found.flange_px[0], 1), figure(found.flange_px[1], 1),
        figure(most_yaw_deg, 0));
  }
  const Spool& spool = plan.draft().spool;
  const double off = found.inside_width_mm / spool.inside_width_mm - 1.0;
  if (distance_given && std::abs(off) > most_width_off) {
    return fmt::format(
        "the inside width that is seen contradicts the plan: it is {} mm at this distance, the plan has {} mm. Is "
        "it "
        "this plan's spool, is the picture cropped, is the distance right?",
        figure(found.inside_width_mm, 2), figure(spool.inside_width_mm, 2));
  }
  const double fiber_px = plan.draft().fiber.diameter_mm * found.px_per_mm;
  if (fiber_px < least_fiber_px) {
    return fmt::format(
        "the picture has too few pixels: the fiber is {} px thick, at least {} are needed. Fill the picture "
        "with "
        "the spool, or use a camera with more pixels",
        figure(fiber_px, 2), figure(least_fiber_px, 1));
  }
  if (std::abs(found.lens_off) > most_lens_off) {
    return fmt::format(
        "the lens bends the flanges' outer edges by {} px, so that diameters would be off by {} %, at most "
        "{} will do. Go farther away and zoom in, or let the camera correct its lens; flanges that are not flat "
        "outside bend these edges, too",
        figure(std::abs(found.lens_bend_px.value_or(0.0)), 1), figure(100.0 * std::abs(found.lens_off), 1),
        figure(100.0 * most_lens_off, 1));
  }
  return "";
}

}  // namespace

double EdgeProfile::sigma_mm(std::size_t i) const { return std::hypot(noise_mm[i], shared_mm[i]); }

Result<EdgeProfile> edge_profile(const GreyPhoto& photo, const Plan& plan, const PhotoSettings& settings) {
  std::string why;
  const Levelled level = levelled(photo, why);
  if (!why.empty()) return refused(std::move(why));
  const SeenSpool spool = seen_spool(level.picture, level.edge_width, why);
  if (!why.empty()) return refused(std::move(why));
  const SpoolSize size = size_of(plan.draft().spool);
  const double radius = size.flange_radius_mm;

  // Both ends of one sigma of the distance beside it; none where it is given.
  double distance = settings.distance_mm.value_or(0.0), near = distance, far = distance;
  if (!settings.distance_mm) {
    const CameraNearness nearness = nearness_of(level.picture, spool, size, settings.spool_error, why);
    if (!why.empty()) return refused(std::move(why));
    distance = radius / std::sqrt(nearness.best);
    near = radius / std::sqrt(nearness.most);
    far = radius / std::sqrt(nearness.least);
  }
  const SeenWidth seen = seen_from(level.picture, spool, size, distance);
  EdgeProfile profile;
  profile.found = found_of(level, spool, size, seen);
  profile.found.distance_given = settings.distance_mm.has_value();
  profile.found.distance_least_mm = near;
  profile.found.distance_most_mm = far;
  // A distance that is given is one by a tape, within 2 %; no source.
  const double by_tape = settings.distance_mm ? 0.02 * distance : 0.0;
  std::optional<LensBend> lens;
  if (settings.flat_flanges)
    lens = lens_bend(level.picture, level.edge_width, spool, size, distance, near - by_tape, far + by_tape);
  const double lens_strength = lens ? lens->strength : 0.0;
  if (lens) {
    profile.found.lens_bend_px = lens->bend_px;
    profile.found.lens_sigma_px = lens->sigma_px;
    profile.found.lens_off = share_off(lens_strength, level.picture, spool, 0.0, 0.5 * spool.wind_height);
  }
  if (why = why_not(profile.found, plan, profile.found.distance_given); !why.empty()) return refused(std::move(why));

  // Whatever the distance is within two sigmas, and where it is given within a few percent.
  std::vector<double> rims(static_cast<std::size_t>(level.picture.width), 0.0);
  for (const double each : {distance, std::max(1.2 * radius, std::min(2.0 * near - distance, 0.97 * distance)),
                            std::max(2.0 * far - distance, 1.03 * distance)}) {
    add_rims(level.picture, seen_from(level.picture, spool, size, each), radius, rims);
  }
  const SeenProfile best = profile_from(level.picture, spool, size, seen, level.edge_width, rims);
  if (best.x.size() < 20) return refused("the flanges' rims hide the wind; take the picture from farther away");
  profile.found.hidden_left_mm = best.hidden_left;
  profile.found.hidden_right_mm = best.hidden_right;
  const double noise_px = level.picture.noise * level.edge_width / level.picture.contrast;
  for (std::size_t i = 0; i < best.x.size(); ++i) {
    const double each = best.radius[i];
    profile.x_mm.push_back(best.x[i]);
    profile.diameter_mm.push_back(2.0 * each);
    profile.noise_mm.push_back(std::numbers::sqrt2 * noise_px / profile.found.px_per_mm);
    // By nearness n, r / R goes with sqrt((1 - n) / (1 - n (r / R)^2)): d ln(r / R) / dn = -(1 - (r / R)^2) / 2, nearly.
    const double share = each / radius;
    const double nearness_sigma = 0.5 * (radius * radius / (near * near) - radius * radius / (far * far));
    const double by_distance = 2.0 * each * 0.5 * (1.0 - share * share) * nearness_sigma;
    const double by_edges = std::numbers::sqrt2 * edge_error_px / profile.found.px_per_mm;
    const double by_lens = 2.0 * each * share_off(lens_strength, level.picture, spool, best.u[i], best.v[i]);
    profile.shared_mm.push_back(
        std::hypot(std::hypot(2.0 * each * settings.spool_error, by_distance), by_edges, by_lens));
  }
  return profile;
}

}  // namespace laywright
