// Makes the share page of a build: draws its pictures and puts it together.
#pragma once

#include <functional>
#include <string>

#include "app/customer_order.h"
#include "base/progress.h"
#include "paint/offscreen_context.h"
#include "scene/scene_source.h"

namespace laywright {

// What the pictures are drawn with; see OffscreenContext for which one a program with a window needs.
using OpenContext = std::function<Result<OffscreenContext>()>;

// `plan` as `plan_text` says; the source's may be older in title and notes. Where nothing can be drawn in the round, the
// page holds the axial section instead. `customer`: whom it is for; none: those who wind. Empty when it was cancelled. Errors:
// what is told to a customer cannot be computed. Precondition: the program has a page template.
[[nodiscard]] Result<std::string> make_share_page(const std::string& plan_text, const Plan& plan,
                                                  const SceneSource& source, const OpenContext& open,
                                                  const CustomerOrder* customer, Progress& progress);

}  // namespace laywright
