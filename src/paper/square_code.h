// A two-dimensional code (QR, ISO/IEC 18004; drawn by libqrencode) that a telephone or a scanner reads from paper.
#pragma once

#include <string>

#include "paper/drawing.h"

namespace laywright {

// The words as a square code of side `side_mm`, its quiet zone of four modules within it, on white. A quarter of it may be dirty.
// Nothing is drawn where the words do not fit a code. Precondition: words are not empty.
void draw_square_code(Drawing& page, Point corner, double side_mm, const std::string& words);

}  // namespace laywright
