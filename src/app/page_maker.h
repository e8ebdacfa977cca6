// Makes the share page of a build: draws its pictures and puts it together.
#pragma once

#include <functional>
#include <string>

#include "base/progress.h"
#include "paint/offscreen_context.h"
#include "scene/scene_source.h"

namespace laywright {

// What the pictures are drawn with; see OffscreenContext for which one a program with a window needs.
using OpenContext = std::function<Result<OffscreenContext>()>;

// `plan` as `plan_text` says; the source's may be older in title and notes. Where nothing can be drawn in the round, the
// page holds the axial section instead. Empty when it was cancelled. Precondition: the program has a page template.
[[nodiscard]] std::string make_share_page(const std::string& plan_text, const Plan& plan, const SceneSource& source,
                                          const OpenContext& open, Progress& progress);

}  // namespace laywright
