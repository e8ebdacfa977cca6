// The tables of a wind as comma-separated values: UTF-8, a header line with units, one record per line, text
// quoted where needed (RFC 4180, with line feeds). Lines that start with # are remarks.
#pragma once

#include <cstddef>
#include <optional>
#include <ostream>
#include <string>

#include "base/progress.h"
#include "lay/build.h"
#include "measure/measurements.h"

namespace laywright {

[[nodiscard]] std::string layers_csv(const Measurements& measurements);
[[nodiscard]] std::string findings_csv(const Measurements& measurements);

// Which nodes of the path are written: of some layers (1 = on the barrel; up to the newest by default), and not many
// more than `most_rows`.
struct PathSettings {
  std::size_t most_rows = 1'000'000;
  int first_layer = 1;
  std::optional<int> last_layer;
};

// Bytes of a row, at most, for up to 999,999 turns and 999 km.
inline constexpr double path_row_bytes = 72.0;

// One node in so many is written, so that there are no more rows than wanted. It shares no factor with the stations
// per turn, so that every angle is seen.
[[nodiscard]] std::size_t path_step(const Build& build, const PathSettings& settings);

// The fiber's path, node by node from the start of the wind: turn, angle of the spool, laid length, layer, x, r
// and what carries it. A remark at the top states the step when it is not 1. Writes as it goes, so that memory does
// not grow. Stops early, incomplete, when `progress` is cancelled. Precondition: the build has these layers.
void write_path_csv(std::ostream& out, const Build& build, Progress& progress, const PathSettings& settings = {});

}  // namespace laywright
