// How the camera was held, as it notes it in the picture's file.
#pragma once

#include <string_view>

#include "photo/read_photo.h"

namespace laywright {

// The orientation, 1 to 8, of the content of a JPEG's APP1 marker (without marker and length); 1, as it stands, where the content
// is of another kind, says nothing or is damaged. Source: Exif 2.3, tag 0x0112, TIFF 6.0 for the layout; from memory.
[[nodiscard]] int exif_orientation(std::string_view app1);

// The picture upright: 1 as it stands, 2 mirrored left to right, 3 turned by half, 4 mirrored top to bottom, 5 to 8 with rows
// and columns changed over.
[[nodiscard]] GreyPhoto upright(GreyPhoto photo, int orientation);

}  // namespace laywright
