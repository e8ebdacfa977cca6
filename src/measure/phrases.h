// Pieces of sentences: sizes, places and extents in words.
#pragma once

#include <string>

#include "measure/measurements.h"
#include "measure/occurrence.h"

namespace laywright {

// "0.21 mm", "4.3 mm", "12 mm": two or three digits that count.
[[nodiscard]] std::string in_mm(double mm);

// "0.21 mm (0.8 of the fiber's diameter)", "4.3 mm (17 fiber diameters)".
[[nodiscard]] std::string in_mm_and_d(double mm, double d);

// "layer 3", "layers 3 to 20".
[[nodiscard]] std::string layers_of(const Finding& finding);

// "left", "right".
[[nodiscard]] const char* name_of(Side side);

// "43 mm from the left flange", whichever is nearer; "at the left flange" within a fiber diameter of it.
[[nodiscard]] std::string place_of(double x_mm, double width_mm, double d);

// "1,601".
[[nodiscard]] std::string count_of(int count);

// "all round the spool", "over 120 degrees of the spool".
[[nodiscard]] std::string round_of(const Finding& finding);

// "12.5 m of fiber from the start".
[[nodiscard]] std::string along_of(double length_mm);

}  // namespace laywright
