// A picture of a build for a sheet of paper.
#pragma once

#include "report/drawing.h"
#include "scene/scene_source.h"

namespace laywright {

// The whole spool on white, without words on it. Without pixels where nothing can be drawn (no OpenGL on this machine).
[[nodiscard]] Bitmap picture_for_paper(const SceneSource& source);

}  // namespace laywright
