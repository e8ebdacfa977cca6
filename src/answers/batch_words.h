// What an order's reports say in words: the same in text, tables, on paper and in the window, which may tell them in feet and inches.
#pragma once

#include <string>

#include "order/batch.h"

namespace laywright {

// "order 4711, A and B, lot L-9", or the file where it says none of these; visible().
[[nodiscard]] std::string order_name(const Order& order);

// "60 km in 12 pieces over 3 spools, the fewest that do".
[[nodiscard]] std::string batch_line(const Batch& batch, bool inch = false);

// "On each spool besides: leader 5 m, tail 5 m, 2 samples of 3 m, which are wound last and cut off. No splices: pieces stay whole."
[[nodiscard]] std::string besides_words(const Order& order, bool inch = false);

// What a spool takes: "pieces 1 to 3 (5 km each), piece 7 from 2 km to 6 km of 8 km".
[[nodiscard]] std::string taken_words(const Batch& batch, const BatchSpool& spool, bool inch = false);

// "reel.lay.toml takes 24,987.0 m of delivered fiber on a spool, as far as it fits; 25,003.1 m in all fit up to a rim clearance of 3 mm,
// an estimate.".
[[nodiscard]] std::string room_words(const SpoolKind& kind, bool inch = false);

// "1 h 05 min", or "not known".
[[nodiscard]] std::string time_words(const std::optional<double>& time_s);

// What the figures are: estimates, and what they leave out. Where a time is not known, which key tells it.
[[nodiscard]] std::string estimate_words(const Batch& batch);

// Of fiber and empty spool; none where the plan does not tell both.
[[nodiscard]] std::optional<double> mass_with_spool_kg(const Batch& batch, const BatchSpool& spool);

}  // namespace laywright
