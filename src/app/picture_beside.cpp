#include "app/picture_beside.h"

#include <algorithm>

#include <fmt/format.h>

#include "app/ranges.h"
#include "scene/colour_range.h"
#include "scene/node_value.h"
#include "scene/palette.h"

namespace laywright {
namespace {

// Of an odd width, a pixel more.
constexpr int least_gap_px = 4;

int half_of(int width_px) { return (width_px - least_gap_px) / 2; }

// What both have in common: nothing left out of either.
std::optional<ColourRange> range_of(const SceneSource& first, const SceneSource& second, const View& view,
                                    Progress& progress) {
  View whole = with_nothing_away(view);
  whole.until_turn.reset();
  if (const auto way = payoff_way(whole.colouring)) {
    for (const SceneSource* source : {&first, &second}) (void)source->payoff_forces(*way, progress);
  }
  return common_range(first, second, whole);
}

}  // namespace

Result<std::array<View, 2>> views_beside(const PictureView& options, const SceneSource& first,
                                         const SceneSource& second, Progress& progress) {
  PictureView half = options;
  const auto size = *read_pair<int>(options.size, 'x');
  half.size = fmt::format("{}x{}", half_of(size.first), size.second);
  const Result<View> own = view_from(half, first);
  if (!own.ok()) return own.issues();
  half.finding.reset();
  const Result<View> beside = view_from(half, second);
  if (!beside.ok()) return beside.issues();
  View left = own.value(), right = beside.value();
  const bool whole = options.zoom == 1.0 && options.look_at.empty() && !options.finding;
  if (whole && right.camera.distance_mm > left.camera.distance_mm) left.camera = right.camera;
  right.camera = left.camera;
  if (options.finding) {
    right.findings = left.findings;
    right.wedge = left.wedge;
    right.flanges_see_through = left.flanges_see_through;
    right.colouring = left.colouring;
    right.dimensions = left.dimensions;
  }
  left.range = right.range = range_of(first, second, left, progress);
  return std::array<View, 2>{left, right};
}

double text_scale_beside(const PictureView& options) {
  const auto size = *read_pair<int>(options.size, 'x');
  // Three quarters of what would suit one spool, but no smaller than is read.
  return std::max(0.6, 0.75 * std::min(size.first / 1280.0, size.second / 720.0));
}

Image side_by_side(const Image& left, const Image& right, const PictureView& options, bool transparent) {
  const int width = read_pair<int>(options.size, 'x')->first, gap = width - 2 * left.width;
  const Rgba ground = theme_colours(options.dark ? Theme::dark : Theme::light).ground_top;
  const std::array<std::uint8_t, 4> between =
      transparent ? std::array<std::uint8_t, 4>{} : std::array<std::uint8_t, 4>{ground.r, ground.g, ground.b, 255};
  Image both{width, left.height, {}};
  both.bytes.reserve(static_cast<std::size_t>(width) * static_cast<std::size_t>(left.height) * 4);
  const auto stride = static_cast<std::ptrdiff_t>(4) * left.width;
  for (int row = 0; row < left.height; ++row) {
    const auto add = [&](const Image& half) {
      both.bytes.insert(both.bytes.end(), half.bytes.begin() + row * stride,
                        half.bytes.begin() + (row + 1) * stride);
    };
    add(left);
    for (int i = 0; i < gap; ++i) both.bytes.insert(both.bytes.end(), between.begin(), between.end());
    add(right);
  }
  return both;
}

}  // namespace laywright
