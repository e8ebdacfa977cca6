// How long work goes on, by how far it has come.
#pragma once

#include <chrono>
#include <optional>

namespace laywright {

// From when on there is enough to go by; before that, an estimate would jump about.
struct EstimateFrom {
  double share = 0.05;   // done
  double seconds = 1.0;  // since it began
};

// Of work that began then and has done so much. An estimate: as if it went on as fast. None while there is too little
// to go by.
[[nodiscard]] std::optional<double> seconds_left(std::chrono::steady_clock::time_point begun, double share,
                                                 const EstimateFrom& from = {});

}  // namespace laywright
