#include "measure/surface.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "measure/edge_shape.h"
#include "measure/ground.h"
#include "measure/height_field.h"
#include "plan/layer_setting.h"

namespace laywright {

namespace {

// Stations worked on together: each turn is read in whole cache lines, and their surfaces stay in the cache.
constexpr std::size_t block = 64;

struct Frame {
  const Plan& plan;
  const Build& build;
  SurfaceGrid grid;
  CirclePrint print;
  double base_mm = 0.0;                                            // radius that heights are counted from
  std::vector<float> floor;                                        // barrel
  std::array<std::array<std::size_t, 2>, zone_count> zone_points;  // first and one past the last
};

// How far a flange face can lie beyond the barrel's end, mm.
double opening_of(const Spool& spool) {
  const double height = 0.5 * (spool.flange_diameter_mm - spool.least_barrel_diameter_mm());
  return height * std::tan(spool.flange_taper_rad) + 0.5 * spool.flange_runout_mm;
}

Frame frame_of(const Plan& plan, const Build& build) {
  const Spool& spool = plan.spool();
  const SurfaceGrid grid = SurfaceGrid::over(spool.inside_width_mm, build.fiber_diameter_mm, opening_of(spool));
  const CirclePrint print(grid, build.fiber_diameter_mm);
  Frame frame{plan, build, grid, print, 0.5 * spool.barrel_diameter_mm, {}, {}};
  frame.floor.resize(frame.grid.points);
  for (std::size_t i = 0; i < frame.grid.points; ++i) {
    const double share = (static_cast<double>(i) + 0.5) / static_cast<double>(frame.grid.points);
    frame.floor[i] = static_cast<float>(0.5 * spool.barrel_taper_mm * share);
  }
  const auto zones = zones_of(plan);
  const auto point = [&](double x) {
    return std::min(frame.grid.points, static_cast<std::size_t>(x / frame.grid.spacing_mm + 0.5));
  };
  for (std::size_t z = 0; z < zone_count; ++z) {
    frame.zone_points[z] = {point(zones[z].from_mm), point(zones[z].to_mm)};
  }
  return frame;
}

struct Highest {
  double height_mm = 0.0;
  std::optional<std::size_t> node;

  void meet(double height, std::size_t k) {
    if (height < height_mm || (height == height_mm && node && *node < k)) return;
    height_mm = height;
    node = k;
  }
};

// Lays one stroke's turns at the stations [from, to) of the block.
void lay_stroke(const Frame& frame, std::size_t stroke, std::size_t from, std::size_t to,
                std::vector<HeightField>& fields, Highest& highest) {
  const NodeStore& nodes = frame.build.nodes;
  const std::size_t stations = static_cast<std::size_t>(frame.build.stations_per_turn);
  const std::size_t first = frame.build.strokes[stroke].first_node;
  const std::size_t end = frame.build.end_of(stroke);
  for (std::size_t turn = first / stations * stations; turn < end; turn += stations) {
    const std::size_t begin_at = std::max(turn + from, first);
    const std::size_t end_at = std::min(turn + to, end);
    for (std::size_t k = begin_at; k < end_at; ++k) {
      // With its top where it is, however thick it is there.
      const double thicker = frame.build.half_mm(k) - 0.5 * frame.build.fiber_diameter_mm;
      const double height = nodes.r(k) + thicker - frame.base_mm;
      highest.meet(height, k);
      fields[k - turn - from].lay(frame.print, nodes.x(k), height);
    }
  }
}

double mean_of(const std::vector<double>& values, const std::array<std::size_t, 2>& range) {
  double sum = 0.0;
  for (std::size_t i = range[0]; i < range[1]; ++i) sum += values[i];
  return sum / static_cast<double>(range[1] - range[0]);
}

// Adds up, stroke by stroke, what counts of the crests over all stations.
class CrestSums {
 public:
  explicit CrestSums(const Frame& frame)
      : frame_(frame),
        sampler_(frame.plan, frame.grid),
        crests_(frame.grid.points),
        samples_(frame.build.strokes.size() * sampler_.points().size(), 0.0) {
    for (std::size_t s = 0; s < frame.build.strokes.size(); ++s) {
      const double pitch = widest_pitch_mm(frame.plan, static_cast<int>(s) + 1);
      const auto of_diameter = static_cast<std::size_t>(frame.build.fiber_diameter_mm / frame.grid.spacing_mm);
      const auto of_pitch = static_cast<std::size_t>(std::ceil(0.5 * pitch / frame.grid.spacing_mm));
      reaches_.push_back(std::min(std::max(of_diameter, of_pitch), frame.grid.points));
    }
  }

  void add(std::size_t stroke, const std::vector<HeightField>& fields, ZoneRadii& zones) {
    std::fill(crests_.begin(), crests_.end(), 0.0);
    for (const HeightField& field : fields) field.add_crests(reaches_[stroke], crests_, scratch_);
    for (std::size_t z = 0; z < zone_count; ++z) zones[z] += mean_of(crests_, frame_.zone_points[z]);
    double* const samples = &samples_[stroke * sampler_.points().size()];
    for (std::size_t i = 0; i < sampler_.points().size(); ++i) samples[i] += crests_[sampler_.points()[i]];
  }

  // Of the stroke that was added last, over the stations of that block.
  [[nodiscard]] const std::vector<double>& of_block() const { return crests_; }

  [[nodiscard]] EdgeShapes edges(std::size_t stroke) const {
    const std::size_t count = sampler_.points().size();
    std::vector<double> crests(count);
    for (std::size_t i = 0; i < count; ++i) {
      const double barrel = static_cast<double>(frame_.floor[sampler_.points()[i]]);
      crests[i] = samples_[stroke * count + i] / frame_.build.stations_per_turn - barrel;
    }
    return sampler_.shapes(crests.data());
  }

 private:
  const Frame& frame_;
  EdgeSampler sampler_;
  std::vector<std::size_t> reaches_;  // of each stroke's crests, in points either way
  std::vector<double> crests_;        // of the stations of a block, added up
  std::vector<double> samples_;       // of each stroke, added up over all stations
  std::vector<float> scratch_;
};

void add_profile(const std::vector<HeightField>& fields, SurfaceProfile& profile) {
  for (const HeightField& field : fields) {
    for (std::size_t i = 0; i < profile.x_mm.size(); ++i) {
      const double height = static_cast<double>(field[i]);
      profile.mean_mm[i] += height;
      profile.least_mm[i] = std::min(profile.least_mm[i], height);
      profile.greatest_mm[i] = std::max(profile.greatest_mm[i], height);
    }
  }
}

Surface empty_surface(const Frame& frame) {
  const double infinity = std::numeric_limits<double>::infinity();
  const std::size_t points = frame.grid.points;
  Surface surface;
  surface.after_stroke.resize(frame.build.strokes.size(), ZoneRadii{});
  surface.profile.x_mm.resize(points);
  for (std::size_t i = 0; i < points; ++i) {
    surface.profile.x_mm[i] = (static_cast<double>(i) + 0.5) * frame.grid.spacing_mm;
  }
  surface.profile.mean_mm.resize(points, 0.0);
  surface.crest_mm.resize(points, 0.0);
  surface.profile.least_mm.resize(points, infinity);
  surface.profile.greatest_mm.resize(points, -infinity);
  return surface;
}

// From sums of heights to radii.
void finish(const Frame& frame, Surface& surface) {
  const double stations = static_cast<double>(frame.build.stations_per_turn);
  surface.volume_mm3 *= std::numbers::pi / stations;
  for (ZoneRadii& radii : surface.after_stroke) {
    for (double& radius : radii) radius = frame.base_mm + radius / stations;
  }
  for (std::size_t i = 0; i < frame.grid.points; ++i) {
    surface.profile.mean_mm[i] = frame.base_mm + surface.profile.mean_mm[i] / stations;
    surface.crest_mm[i] = frame.base_mm + surface.crest_mm[i] / stations;
    surface.profile.least_mm[i] += frame.base_mm;
    surface.profile.greatest_mm[i] += frame.base_mm;
  }
}

}  // namespace

std::array<Extent, zone_count> zones_of(const Plan& plan) {
  const double width = plan.spool().inside_width_mm;
  const double edge = std::min(std::max(0.05 * width, 3.0 * plan.fiber().diameter_mm), 0.25 * width);
  return {Extent{0.0, edge}, Extent{0.25 * width, 0.75 * width}, Extent{width - edge, width}};
}

double widest_pitch_mm(const Plan& plan, int layer) {
  constexpr double deviations = 3.0;
  return traverse_in_layer(plan, layer).pitch_mm * (1.0 + deviations * plan.traverse().pitch_scatter);
}

Surface find_surface(const Plan& plan, const Build& build, Progress& progress) {
  const Frame frame = frame_of(plan, build);
  Surface surface = empty_surface(frame);
  const std::size_t stations = static_cast<std::size_t>(build.stations_per_turn);
  const double angle = 2.0 * std::numbers::pi / static_cast<double>(stations);
  Highest highest{-0.5 * build.fiber_diameter_mm + std::max(0.0, 0.5 * plan.spool().barrel_taper_mm), {}};
  CrestSums crests(frame);
  for (std::size_t from = 0; from < stations && !progress.cancelled(); from += block) {
    const std::size_t to = std::min(from + block, stations);
    std::vector<HeightField> fields(to - from, HeightField(frame.grid, frame.floor));
    for (std::size_t s = 0; s < build.strokes.size(); ++s) {
      lay_stroke(frame, s, from, to, fields, highest);
      crests.add(s, fields, surface.after_stroke[s]);
    }
    add_profile(fields, surface.profile);
    for (std::size_t i = 0; i < surface.crest_mm.size(); ++i) surface.crest_mm[i] += crests.of_block()[i];
    for (std::size_t i = 0; i < fields.size(); ++i) {
      surface.volume_mm3 +=
          section_moment(Ground(plan.spool(), angle * static_cast<double>(from + i)), fields[i], frame.base_mm);
    }
  }
  for (std::size_t s = 0; s < build.strokes.size(); ++s) surface.edges.push_back(crests.edges(s));
  surface.greatest_mm = frame.base_mm + highest.height_mm + 0.5 * build.fiber_diameter_mm;
  surface.greatest_node = highest.node;
  finish(frame, surface);
  return surface;
}

}  // namespace laywright
