// Diameters and edges of a wind in words: the same in the summary and on the share page.
#pragma once

#include <string>

#include "measure/measurements.h"

namespace laywright {

// "108.97 mm left, 108.97 mm middle, 109.04 mm right, 111.76 mm greatest".
[[nodiscard]] std::string outer_diameter_words(const OuterDiameter& outer);

// "layer 33 ends after 61.5 turns, 16.02 mm from the left flange": from its face, whichever flange is nearer.
[[nodiscard]] std::string unfinished_words(const UnfinishedLayer& last);

// "108.97 mm left, 109.12 mm middle, 109.21 mm right; greatest counts it": diameters with it, and which of the others do.
[[nodiscard]] std::string with_it_words(const UnfinishedLayer& last);

// "ridge 0.91 mm left, 0.90 mm right; valley 0.02 mm left, 0.00 mm right", or "no layer is whole" without them.
[[nodiscard]] std::string edges_words(const Measurements& measurements);

}  // namespace laywright
