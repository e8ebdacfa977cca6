// A picture of a build for a sheet of paper.
#pragma once

#include "base/progress.h"
#include "paper/drawing.h"
#include "render/image.h"
#include "scene/scene_source.h"

namespace laywright {

// The whole spool on white, without words on it. Without pixels where nothing can be drawn (no OpenGL on this machine).
// Cancelled, it ends soon and has none either.
[[nodiscard]] Bitmap picture_for_paper(const SceneSource& source, Progress& progress);
// The same on a thread of a program whose window draws at the same time.
[[nodiscard]] Bitmap picture_for_paper_beside_window(const SceneSource& source, Progress& progress);
// Of the words in such a picture, so that they can be read on paper.
inline constexpr double customer_text_scale = 2.2;
// The whole spool in its own materials, with its dimensions in the plan's units: as a customer sees it first.
[[nodiscard]] View view_for_customer(const Plan& plan);
// The spool in that view on white; without pixels, as above.
[[nodiscard]] Bitmap picture_for_customer(const SceneSource& source, Progress& progress);
// On white paper.
[[nodiscard]] Bitmap on_white(const Image& image);

}  // namespace laywright
