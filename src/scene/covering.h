// Which fiber lies over or under a place of a station.
#pragma once

#include <cstddef>
#include <optional>

#include "scene/scene_source.h"

namespace laywright {

[[nodiscard]] std::size_t nearest_station(const SceneSource& source, double angle);

// At a station, of the nodes [begin, end): the newest and the oldest whose circle covers x (|x - its x| <= d/2). The
// newest is the uppermost (shell.h). The cost depends on how far back or forward that node lies, hardly on the turns
// between that pass elsewhere.
[[nodiscard]] std::optional<std::size_t> newest_over(const SceneSource& source, std::size_t station, double x_mm,
                                                     std::size_t begin, std::size_t end);
[[nodiscard]] std::optional<std::size_t> oldest_over(const SceneSource& source, std::size_t station, double x_mm,
                                                     std::size_t begin, std::size_t end);

}  // namespace laywright
