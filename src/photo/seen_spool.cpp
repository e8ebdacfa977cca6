#include "photo/seen_spool.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "photo/median.h"

namespace laywright {
namespace {

// A flange stands at least so far over the wind, on both sides together.
constexpr double least_rise_px = 12.0, least_rise_share = 0.01;

// The columns in which the spool is seen; a shaft beside it, less than half as high, is none of it.
struct Columns {
  int first = 0, last = -1;

  [[nodiscard]] int count() const { return last - first + 1; }
  [[nodiscard]] int at(double share) const { return first + static_cast<int>(share * (count() - 1)); }
};

Columns columns_of(const ColumnEdges& edges) {
  double highest = 0.0;
  const int count = static_cast<int>(edges.top.size());
  const auto height = [&](int x) {
    const double each = edges.height(static_cast<std::size_t>(x));
    return std::isfinite(each) ? each : 0.0;
  };
  for (int x = 0; x < count; ++x) highest = std::max(highest, height(x));
  Columns columns{0, count - 1};
  while (columns.first < columns.last && height(columns.first) < 0.5 * highest) ++columns.first;
  while (columns.last > columns.first && height(columns.last) < 0.5 * highest) --columns.last;
  return columns;
}

// The greatest height in a part of the columns, and the rim's edges: the median of what is within 0.6 px of it.
SeenFlange rim_in(const ColumnEdges& edges, int from, int to) {
  double highest = 0.0;
  for (int x = from; x <= to; ++x) highest = std::max(highest, edges.height(static_cast<std::size_t>(x)));
  std::vector<double> top, bottom, at_x;
  for (int x = from; x <= to; ++x) {
    const auto at = static_cast<std::size_t>(x);
    if (edges.height(at) < highest - 0.6) continue;
    top.push_back(edges.top[at]);
    bottom.push_back(edges.bottom[at]);
    at_x.push_back(x);
  }
  SeenFlange flange;
  flange.top = median(std::move(top));
  flange.bottom = median(std::move(bottom));
  flange.rim_x = median(std::move(at_x));
  return flange;
}

// Rows in the middle of what is open between wind and rim, above and below; from the flange toward the wind.
void find_face(const FlatPicture& picture, double edge_width, double wind_height, int step, int most,
               SeenFlange& flange) {
  const double middle = 0.5 * (flange.top + flange.bottom), half = 0.5 * flange.height();
  const double open = half - 0.5 * wind_height;
  for (double share = 0.15; share <= 0.5; share += std::max(0.01, 0.5 / open)) {
    for (const double way : {-1.0, 1.0}) {
      const int row = static_cast<int>(std::lround(middle + way * (half - share * open)));
      // Where the rim stands in this row: from its outer side.
      int from = flange.outer;
      while (std::abs(from - flange.outer) < most && !picture.is_spool(from, row)) from += step;
      const auto end = row_edge(picture, edge_width, row, from, step, most);
      if (end) flange.face.push_back({*end, static_cast<double>(row)});
    }
  }
}

std::string cut_off(const FlatPicture& picture, const ColumnEdges& edges, const Columns& columns) {
  const char* border = nullptr;
  if (columns.first <= 1) border = "left";
  if (columns.last >= picture.width - 2) border = "right";
  for (int x = columns.first; x <= columns.last; ++x) {
    const auto at = static_cast<std::size_t>(x);
    if (edges.top[at] < 1.5) border = "upper";
    if (edges.bottom[at] > picture.height - 2.5) border = "lower";
  }
  if (border == nullptr) return "";
  return fmt::format(
      "the spool runs over the picture's {} border; take the picture so that ground is seen all round both flanges",
      border);
}

}  // namespace

double tilt_of(const ColumnEdges& edges) {
  const Columns columns = columns_of(edges);
  double slope = 0.0, level = 0.0, most_off = 1e9;
  // The second time without what is off the line: the end of a pile, a loose turn.
  for (int pass = 0; pass < 3; ++pass) {
    double n = 0.0, sx = 0.0, sy = 0.0, sxx = 0.0, sxy = 0.0, off = 0.0;
    for (int x = columns.at(0.3); x <= columns.at(0.7); ++x) {
      const double y = edges.middle(static_cast<std::size_t>(x));
      if (!std::isfinite(y) || std::abs(y - level - slope * x) > most_off) continue;
      n += 1.0, sx += x, sy += y, sxx += double{1} * x * x, sxy += x * y;
      off += (y - level - slope * x) * (y - level - slope * x);
    }
    const double spread = n * sxx - sx * sx;
    if (spread <= 0.0) return 0.0;
    if (pass > 0) most_off = std::max(0.5, 2.5 * std::sqrt(off / n));
    slope = (n * sxy - sx * sy) / spread;
    level = (sy - slope * sx) / n;
  }
  return -std::atan(slope);
}

SeenSpool seen_spool(const FlatPicture& picture, double edge_width, std::string& why) {
  SeenSpool seen;
  seen.edges = column_edges(picture, edge_width);
  const Columns columns = columns_of(seen.edges);
  if (why = cut_off(picture, seen.edges, columns); !why.empty()) return seen;
  std::vector<double> between;
  for (int x = columns.at(0.3); x <= columns.at(0.7); ++x) {
    const double height = seen.edges.height(static_cast<std::size_t>(x));
    if (std::isfinite(height)) between.push_back(height);
  }
  constexpr const char* none =
      "no two flanges are found: nothing at the left and the right end stands {} px higher than what lies "
      "between. A "
      "wind that fills its spool to the rim shows no profile, and the picture must show the spool from the side";
  if (columns.count() < 40 || between.size() < 10) {
    why = fmt::format(none, figure(least_rise_px, 0));
    return seen;
  }
  seen.wind_height = median(std::move(between));
  for (int side = 0; side < 2; ++side) {
    SeenFlange& flange = seen.flanges[static_cast<std::size_t>(side)];
    const int step = side == 0 ? 1 : -1;
    flange = side == 0 ? rim_in(seen.edges, columns.first, columns.at(0.3))
                       : rim_in(seen.edges, columns.at(0.7), columns.last);
    const double rise = std::max(least_rise_px, least_rise_share * flange.height());
    if (flange.height() - seen.wind_height < rise) {
      why = fmt::format(none, rise);
      return seen;
    }
    flange.outer = side == 0 ? columns.first : columns.last;
    flange.inner = flange.outer;
    const double level = 0.5 * (flange.height() + seen.wind_height);
    const int most = columns.count() / 2;
    for (int i = 0; i < most; ++i) {
      const int x = flange.outer + i * step;
      if (seen.edges.height(static_cast<std::size_t>(x)) > level) flange.inner = x;
    }
    find_face(picture, edge_width, seen.wind_height, step, most, flange);
    if (flange.face.size() < 4 || std::abs(flange.inner - flange.outer) > 0.35 * columns.count()) {
      why = fmt::format(
          "no two flanges are found: the {} one does not end sharply toward the wind. The picture must show the "
          "spool "
          "from the side, with its flanges edge on",
          side == 0 ? "left" : "right");
      return seen;
    }
  }
  return seen;
}

}  // namespace laywright
