#include "penetration_checker.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <sstream>

namespace laywright::referee {
namespace {

using Column = std::vector<Centre>;  // in rising r

double distance(const Centre& a, const Centre& b) { return std::hypot(a.x - b.x, a.r - b.r); }

// Pairs of one column with another (or itself) that may be closer than their halves; columns are d wide.
void compare(const Column& one, const Column& other, double d, Clearance& worst) {
  for (const Centre& a : one) {
    auto b = std::lower_bound(other.begin(), other.end(), a.r - 2.0 * d,
                              [](const Centre& c, double r) { return c.r < r; });
    for (; b != other.end() && b->r <= a.r + 2.0 * d; ++b) {
      if (a.node == b->node) continue;
      worst.take((distance(a, *b) - a.half - b->half) / d, "two turns", a.node, b->node);
    }
  }
}

void check_pairs(const std::vector<Centre>& centres, double d, Clearance& worst) {
  std::map<long, Column> columns;
  for (const Centre& c : centres) columns[std::lround(std::floor(c.x / d))].push_back(c);
  for (auto& [index, column] : columns) {
    std::sort(column.begin(), column.end(), [](const Centre& a, const Centre& b) { return a.r < b.r; });
  }
  for (const auto& [index, column] : columns) {
    compare(column, column, d, worst);
    for (const long next : {index + 1, index + 2}) {
      const auto found = columns.find(next);
      if (found != columns.end()) compare(column, found->second, d, worst);
    }
  }
}

// Where the left face of a spool stands at radius r, seen from a barrel of radius `bottom`; the right one is its
// mirror image.
double face_at(const Spool& spool, double bottom, double theta, double r) {
  const double lean = 0.5 * spool.flange_runout_mm / (0.5 * spool.flange_diameter_mm) * std::cos(theta);
  return -(r - bottom) * std::tan(spool.flange_taper_rad) + lean * r;
}

void check_spool(const Spool& spool, double d, double theta, const std::vector<Centre>& centres, Clearance& worst) {
  const double width = spool.inside_width_mm;
  const double left_bottom = 0.5 * spool.barrel_diameter_mm;
  const double right_bottom = left_bottom + 0.5 * spool.barrel_taper_mm;
  const double rise = (right_bottom - left_bottom) / width;
  const double per_r = face_at(spool, 0.0, theta, 1.0);
  for (const Centre& c : centres) {
    const double off_left = c.x - face_at(spool, left_bottom, theta, c.r);
    const double off_right = width - face_at(spool, right_bottom, theta, c.r) - c.x;
    const double off_barrel = c.r - left_bottom - rise * c.x;
    worst.take(off_left / std::sqrt(1.0 + per_r * per_r) / d - c.half / d, "the left flange", c.node, c.node);
    worst.take(off_right / std::sqrt(1.0 + per_r * per_r) / d - c.half / d, "the right flange", c.node, c.node);
    worst.take(off_barrel / std::sqrt(1.0 + rise * rise) / d - c.half / d, "the barrel", c.node, c.node);
  }
}

}  // namespace

std::vector<Centre> centres_at(const Build& build, int station) {
  std::vector<Centre> centres;
  const auto turn = static_cast<std::size_t>(build.stations_per_turn);
  for (std::size_t k = static_cast<std::size_t>(station); k < build.nodes.size(); k += turn) {
    centres.push_back({build.nodes.x(k), build.nodes.r(k), k, build.half_mm(k)});
  }
  return centres;
}

void Clearance::take(double clearance, const char* what, std::size_t a, std::size_t b) {
  if (clearance >= least) return;
  least = clearance;
  of = what;
  node = a;
  other = b;
}

std::string Clearance::text() const {
  std::ostringstream out;
  out << "least clearance " << least << " d, of node " << node << " from " << of << " (node " << other << ")";
  return out.str();
}

Clearance clearance_of_turns(const Build& build, double d) {
  Clearance worst;
  for (int station = 0; station < build.stations_per_turn; ++station) {
    check_pairs(centres_at(build, station), d, worst);
  }
  return worst;
}

Clearance clearance_of_overhangs(const Build& build, double d) {
  Clearance worst;
  for (int station = 0; station < build.stations_per_turn; ++station) {
    const std::vector<Centre> centres = centres_at(build, station);
    for (std::size_t later = 1; later < centres.size(); ++later) {
      for (std::size_t earlier = 0; earlier < later; ++earlier) {
        const Centre& node = centres[later];
        const Centre& above = centres[earlier];
        if (node.r >= above.r) continue;
        worst.take((std::abs(node.x - above.x) - node.half - above.half) / d, "the overhang of an earlier turn",
                   node.node, above.node);
      }
    }
  }
  return worst;
}

Clearance clearance(const Plan& plan, const Build& build) {
  const double d = plan.fiber().diameter_mm;
  Clearance worst = clearance_of_turns(build, d);
  for (int station = 0; station < build.stations_per_turn; ++station) {
    const double theta = 2.0 * std::numbers::pi * station / build.stations_per_turn;
    check_spool(plan.spool(), d, theta, centres_at(build, station), worst);
  }
  return worst;
}

}  // namespace laywright::referee
