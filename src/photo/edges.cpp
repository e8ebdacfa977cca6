#include "photo/edges.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "photo/median.h"

namespace laywright {
namespace {

// The grey along a line from the spool outward: 0 is the last pixel of the spool.
class OutwardLine {
 public:
  OutwardLine(const FlatPicture& picture, int x, int y, int step_x, int step_y)
      : picture_(picture), x_(x), y_(y), step_x_(step_x), step_y_(step_y) {}

  // Beyond the picture's border as at it.
  [[nodiscard]] double at(int i) const {
    return picture_.grey_at(std::clamp(x_ + i * step_x_, 0, picture_.width - 1),
                            std::clamp(y_ + i * step_y_, 0, picture_.height - 1));
  }

  [[nodiscard]] double mean(int from, int to) const {
    double sum = 0.0;
    for (int i = from; i <= to; ++i) sum += at(i);
    return sum / (to - from + 1);
  }

 private:
  const FlatPicture& picture_;
  int x_, y_, step_x_, step_y_;
};

// From place 0, outward positive.
double half_level(const OutwardLine& line, double edge_width) {
  const int reach = static_cast<int>(std::ceil(edge_width)) + 1;
  const double level = 0.5 * (line.mean(reach, reach + 2) + line.mean(-reach - 2, -reach));
  // The crossing that is nearest to where the threshold lies.
  double best = 0.5;
  double nearest = std::numeric_limits<double>::infinity();
  for (int i = -reach; i < reach; ++i) {
    const double here = line.at(i), next = line.at(i + 1);
    if (here > level || next <= level) continue;
    const double place = i + (level - here) / (next - here);
    if (std::abs(place - 0.5) < nearest) nearest = std::abs(place - 0.5), best = place;
  }
  return best;
}

struct Span {
  int top = -1, bottom = -1;
};

Span span_of(const FlatPicture& picture, int x) {
  Span span;
  for (int y = 0; y < picture.height && span.top < 0; ++y) {
    if (picture.is_spool(x, y)) span.top = y;
  }
  if (span.top < 0) return span;
  for (int y = picture.height - 1; span.bottom < 0; --y) {
    if (picture.is_spool(x, y)) span.bottom = y;
  }
  return span;
}

}  // namespace

double edge_width_px(const FlatPicture& picture) {
  constexpr int reach = 30;
  std::vector<double> widths;
  for (int x = 0; x < picture.width; ++x) {
    const Span span = span_of(picture, x);
    if (span.top < 0) continue;
    const OutwardLine line(picture, x, span.top, 0, -1);
    double steepest = 0.0;
    for (int i = -reach; i < reach; ++i) steepest = std::max(steepest, line.at(i + 1) - line.at(i));
    const double difference = line.mean(reach - 4, reach) - line.mean(-reach, -reach + 4);
    if (steepest > 0.0 && difference > 0.0) widths.push_back(difference / steepest);
  }
  if (widths.empty()) return 0.0;
  return median(std::move(widths));
}

ColumnEdges column_edges(const FlatPicture& picture, double edge_width) {
  const auto columns = static_cast<std::size_t>(picture.width);
  const double none = std::numeric_limits<double>::quiet_NaN();
  ColumnEdges edges{std::vector<double>(columns, none), std::vector<double>(columns, none)};
  for (int x = 0; x < picture.width; ++x) {
    const Span span = span_of(picture, x);
    if (span.top < 0) continue;
    const auto at = static_cast<std::size_t>(x);
    edges.top[at] = span.top - half_level(OutwardLine(picture, x, span.top, 0, -1), edge_width);
    edges.bottom[at] = span.bottom + half_level(OutwardLine(picture, x, span.bottom, 0, 1), edge_width);
  }
  return edges;
}

std::optional<double> row_edge(const FlatPicture& picture, double edge_width, int row, int from, int step,
                               int most) {
  for (int i = 0, x = from; i < most && x + step >= 0 && x + step < picture.width; ++i, x += step) {
    if (picture.is_spool(x, row) && !picture.is_spool(x + step, row)) {
      return x + step * half_level(OutwardLine(picture, x, row, step, 0), edge_width);
    }
  }
  return std::nullopt;
}

}  // namespace laywright
