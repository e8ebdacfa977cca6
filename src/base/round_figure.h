// Round figures, as a person would choose them.
#pragma once

namespace laywright {

// The greatest of 1, 2 and 5 times a power of ten that is not above the value. Precondition: above 0.
[[nodiscard]] double round_figure_below(double value);

}  // namespace laywright
