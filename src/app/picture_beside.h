// Two winds side by side in one picture: one camera, and one scale of colours.
#pragma once

#include <array>

#include "app/picture_view.h"
#include "render/image.h"

namespace laywright {

// Of the left and the right half. A value has the same colour in both. Both are seen from where the first one is; whole spools
// so far away that the larger one is seen. What an option asks for and a build has not is an issue; a finding is the first one's.
// The pull that draws fiber off is computed where the colours are to show it; cancelled, they may have no scale.
[[nodiscard]] Result<std::array<View, 2>> views_beside(const PictureView& options, const SceneSource& first,
                                                       const SceneSource& second, Progress& progress);

// Of the letters in both, so that they suit the whole picture.
[[nodiscard]] double text_scale_beside(const PictureView& options);

// With a gap between them: clear, or of the theme's ground. Both of one size, that of the views.
[[nodiscard]] Image side_by_side(const Image& left, const Image& right, const PictureView& options,
                                 bool transparent);

}  // namespace laywright
