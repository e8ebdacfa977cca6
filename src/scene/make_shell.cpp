// From the newest nodes of each texel to a shell: heights, colours, normals.
#include <algorithm>
#include <cmath>
#include <utility>

#include "scene/colouring.h"
#include "scene/palette.h"
#include "scene/scene_source.h"

namespace laywright {

namespace {

// Texels of one row that show the same node.
struct Run {
  std::uint32_t node = no_node;
  std::size_t first = 0, end = 0;
  double x = 0.0, r = 0.0;  // of the node
};

class ShellMaker {
 public:
  // The shell of the nodes [0, end).
  ShellMaker(const SceneSource& source, std::size_t end, Shell recycled)
      : source_(source), shell_(std::move(recycled)), radius_(static_cast<float>(0.5 * source.d())) {
    const std::size_t texels = source.shells().grid().texels();
    shell_.grid = source.shells().grid();
    shell_.fiber_diameter_mm = source.d();
    shell_.node = source.shells().newest(source.build(), end, std::move(shell_.node));
    shell_.radius_mm.resize(texels);
    shell_.colour.resize(texels);
    shell_.crest_mm.resize(texels);
    shell_.across.resize(texels);
    shade_.resize(texels);
    // As far as one sees from a gap without turning one's eyes: an estimate.
    constexpr double reach_d = 6.0;
    reach_ = static_cast<std::size_t>(std::lround(reach_d * source.d() / shell_.grid.column_mm));
    offset_.resize(shell_.grid.columns);
    base_.resize(shell_.grid.columns);
    for (std::size_t c = 0; c < shell_.grid.columns; ++c) {
      xs_.push_back(shell_.grid.x(c));
      steps_.push_back(static_cast<float>(static_cast<double>(c) * shell_.grid.column_mm));
      barrel_.push_back(static_cast<float>(source.barrel_radius(xs_.back())));
    }
  }

  // `keep` says which nodes are shown, `colour` in which colour.
  template <class Keep, class Colour>
  Shell make(const Keep& keep, const Colour& colour) {
    for (std::size_t row = 0; row < shell_.grid.rows; ++row) {
      find_runs(row, keep);
      close_slits();
      for (const Run& run : runs_) spread(row, run, run.node == no_node ? Rgba{0, 0, 0, 0} : colour(run.node));
      shade(row);
      raise(row);
    }
    shell_.openness = openness_of(shell_.grid, shell_.radius_mm, source_.d(), std::move(shell_.openness));
    for (std::size_t i = 0; i < shade_.size(); ++i)
      shell_.openness[i] = static_cast<std::uint8_t>(static_cast<float>(shell_.openness[i]) * shade_[i] + 0.5F);
    return std::move(shell_);
  }

 private:
  template <class Keep>
  void find_runs(std::size_t row, const Keep& keep) {
    runs_.clear();
    const std::uint32_t* const nodes = &shell_.node[row * shell_.grid.columns];
    const NodeStore& store = source_.build().nodes;
    for (std::size_t c = 0; c < shell_.grid.columns;) {
      Run run{nodes[c], c, c + 1, 0.0, 0.0};
      while (run.end < shell_.grid.columns && nodes[run.end] == run.node) ++run.end;
      c = run.end;
      if (run.node != no_node && !keep(run.node)) run.node = no_node;
      if (run.node != no_node) {
        run.x = store.x(run.node);
        run.r = store.r(run.node);
      }
      runs_.push_back(run);
    }
  }

  // A slit between two turns that is narrower than a column shows or not by chance. It is given to the nearer turn.
  void close_slits() {
    const double d = source_.d(), column = shell_.grid.column_mm;
    for (std::size_t i = 1; i + 1 < runs_.size(); ++i) {
      const Run& a = runs_[i - 1];
      const Run& b = runs_[i + 1];
      Run& slit = runs_[i];
      if (slit.end - slit.first != 1 || a.node == no_node || b.node == no_node || a.node == b.node) continue;
      const double gap = b.x - a.x - d;
      const bool lower = slit.node == no_node || (slit.r < a.r && slit.r < b.r);
      if (gap < 0.0 || gap >= column || !lower) continue;
      const Run& nearer = xs_[slit.first] - a.x <= b.x - xs_[slit.first] ? a : b;
      slit.node = nearer.node;
      slit.x = nearer.x;
      slit.r = nearer.r;
    }
  }

  // What the texels of a run have in common. A bare one is taken for the top of a fiber that just reaches the barrel.
  void spread(std::size_t row, const Run& run, Rgba colour) {
    const std::size_t at = shell_.index(row, 0) + run.first, count = run.end - run.first;
    if (shell_.node[at] != run.node) std::fill_n(&shell_.node[at], count, run.node);
    std::fill_n(&shell_.colour[at], count, colour);
    float* const offset = &offset_[run.first];
    float* const base = &base_[run.first];
    if (run.node == no_node) {
      std::fill_n(offset, count, 0.0F);
      for (std::size_t i = 0; i < count; ++i) base[i] = barrel_[run.first + i] - radius_;
      return;
    }
    const auto from = static_cast<float>(xs_[run.first] - run.x);
    for (std::size_t i = 0; i < count; ++i) offset[i] = from + steps_[i];
    std::fill_n(base, count, static_cast<float>(run.r));
  }

  // What lies deeper than its neighbours has less light.
  void shade(std::size_t row) {
    const std::size_t columns = shell_.grid.columns, at = shell_.index(row, 0);
    greatest_around(base_.data(), columns, reach_, &shell_.crest_mm[at], room_);
    const auto per_d = static_cast<float>(1.0 / source_.d());
    const float* const crest = &shell_.crest_mm[at];
    for (std::size_t c = 0; c < columns; ++c) shade_[at + c] = light_at_depth((crest[c] - base_[c]) * per_d);
  }

  // In loops that a compiler turns into wide ones: no member is read in them, and none writes bytes beside floats.
  void raise(std::size_t row) {
    const std::size_t columns = shell_.grid.columns;
    const float fiber = radius_, per_fiber = 1.0F / radius_;
    float* const radius = &shell_.radius_mm[shell_.index(row, 0)];
    float* const offset = offset_.data();
    const float* const base = base_.data();
    for (std::size_t c = 0; c < columns; ++c) {
      const float wide = offset[c] * per_fiber;
      const float low = wide < -1.0F ? -1.0F : wide;
      const float s = low > 1.0F ? 1.0F : low;
      offset[c] = 127.0F * s;
      radius[c] = base[c] + fiber * std::sqrt(1.0F - s * s);
    }
    std::int8_t* const across = &shell_.across[shell_.index(row, 0)];
    for (std::size_t c = 0; c < columns; ++c) across[c] = static_cast<std::int8_t>(static_cast<int>(offset[c]));
  }

  const SceneSource& source_;
  Shell shell_;
  std::vector<Run> runs_;
  std::vector<double> xs_;             // of the columns
  std::vector<float> steps_, barrel_;  // from the first column; radius there
  float radius_;                       // of the fiber
  std::size_t reach_ = 1;              // columns
  std::vector<float> shade_, room_;
  std::vector<float> offset_, base_;  // of a row: from the fiber's centre along x, and its r
};

}  // namespace

Shell make_shell(const SceneSource& source, const View& view, Shell recycled) {
  const VisibleFiber fiber = visible_fiber(source, view);
  const Colourer colourer(source, view);
  const bool faded_stay = view.outside == Outside::faded;
  const std::size_t end = fiber.first < fiber.end || faded_stay ? fiber.end : 0;
  ShellMaker maker(source, end, std::move(recycled));
  return maker.make([&](std::size_t node) { return faded_stay || node >= fiber.first; },
                    [&](std::size_t node) {
                      const Rgba colour = colourer.colour(node);
                      return node >= fiber.first ? colour : faded(colour, view.theme);
                    });
}

std::optional<Shell> make_veil(const SceneSource& source, const View& view) {
  const VisibleFiber fiber = visible_fiber(source, view);
  if (view.outside == Outside::gone || fiber.end >= fiber.wind_end) return std::nullopt;
  constexpr std::uint8_t veil_alpha = 64;
  const Colourer colourer(source, view);
  ShellMaker maker(source, fiber.wind_end, {});
  return maker.make([&](std::size_t node) { return node >= fiber.end; },
                    [&](std::size_t node) {
                      Rgba colour = faded(colourer.colour(node), view.theme);
                      colour.a = veil_alpha;
                      return colour;
                    });
}

}  // namespace laywright
