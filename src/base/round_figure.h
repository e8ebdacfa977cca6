// Round figures, as a person would choose them, and how many decimals a figure needs.
#pragma once

namespace laywright {

// The greatest of 1, 2 and 5 times a power of ten that is not above the value, but for rounding. Precondition: above 0.
[[nodiscard]] double round_figure_below(double value);

// The least of them that is not below it. Precondition: above 0.
[[nodiscard]] double round_figure_above(double value);

// That show all multiples of such a figure apart: 0 for 2, 1 for .5, 2 for .02. Precondition: above 0.
[[nodiscard]] int decimals_of_step(double step);

// The value in the nine digits that a person may have written, without what sums leave behind them; infinite stays so.
[[nodiscard]] double without_noise(double value);

// So that a figure of that size has so many digits that count; 0 to 7. Without a size, as for 1.
[[nodiscard]] int decimals_for(double size, int digits);

}  // namespace laywright
