// The tables of a wind as comma-separated values: UTF-8, a header line with units, one record per line, text
// quoted where needed (RFC 4180, with line feeds). Lines that start with # are remarks.
#pragma once

#include <cstddef>
#include <ostream>
#include <string>

#include "base/progress.h"
#include "lay/build.h"
#include "measure/measurements.h"

namespace laywright {

[[nodiscard]] std::string layers_csv(const Measurements& measurements);
[[nodiscard]] std::string findings_csv(const Measurements& measurements);

// The fiber's path, node by node from the start of the wind: turn, angle of the spool, laid length, layer, x, r
// and what carries it. A build of more than `most_nodes` nodes is thinned evenly to one node in n, which a remark
// at the top states. n shares no factor with the stations per turn, so that every angle is seen. Writes as it
// goes, so that memory does not grow. Stops early, incomplete, when `progress` is cancelled.
void write_path_csv(std::ostream& out, const Build& build, Progress& progress, std::size_t most_nodes = 1'000'000);

}  // namespace laywright
