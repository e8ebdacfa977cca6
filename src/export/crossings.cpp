#include "export/crossings.h"

#include <algorithm>

#include "measure/strand_cursor.h"

namespace laywright {

std::vector<std::size_t> crossings_of(const Build& build, std::size_t stroke, std::size_t end) {
  std::vector<std::size_t> places;
  if (stroke == 0) return places;
  StrandCursor below(build, stroke - 1, StrandCursor::From::last_turn);
  CrossingCounter counter;
  for (std::size_t node = build.strokes[stroke].first_node; node < end; ++node) {
    below.visit(node);
    if (!below.has_behind() && !below.has_ahead()) continue;
    const int before = counter.count();
    counter.add(below.position());
    if (counter.count() != before) places.push_back(node);
  }
  return places;
}

CrossingLines crossing_lines(const Build& build, const std::vector<std::size_t>& crossings) {
  const auto turn = static_cast<std::size_t>(build.stations_per_turn);
  const std::size_t reach = std::max<std::size_t>(1, turn / 12);
  CrossingLines lines;
  std::vector<std::size_t> line_of(crossings.size());
  for (std::size_t i = 0; i < crossings.size(); ++i) {
    // Of the crossings of the turn before, the one at the nearest angle that no other goes on from.
    const std::size_t wanted = crossings[i] - std::min(crossings[i], turn);
    auto other = std::lower_bound(crossings.begin(), crossings.begin() + static_cast<std::ptrdiff_t>(i),
                                  wanted - std::min(wanted, reach));
    std::size_t best = i, best_off = reach + 1;
    for (; other != crossings.begin() + static_cast<std::ptrdiff_t>(i) && *other <= wanted + reach; ++other) {
      const std::size_t off = *other > wanted ? *other - wanted : wanted - *other;
      const auto index = static_cast<std::size_t>(other - crossings.begin());
      if (off < best_off && lines[line_of[index]].back() == *other) {
        best = index;
        best_off = off;
      }
    }
    if (best == i) {
      line_of[i] = lines.size();
      lines.emplace_back();
    } else {
      line_of[i] = line_of[best];
    }
    lines[line_of[i]].push_back(crossings[i]);
  }
  return lines;
}

}  // namespace laywright
