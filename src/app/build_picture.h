// A picture of a build for a sheet of paper.
#pragma once

#include "base/progress.h"
#include "paper/drawing.h"
#include "scene/scene_source.h"

namespace laywright {

// The whole spool on white, without words on it. Without pixels where nothing can be drawn (no OpenGL on this machine).
// Cancelled, it ends soon and has none either.
[[nodiscard]] Bitmap picture_for_paper(const SceneSource& source, Progress& progress);
// The same on a thread of a program whose window draws at the same time.
[[nodiscard]] Bitmap picture_for_paper_beside_window(const SceneSource& source);

}  // namespace laywright
