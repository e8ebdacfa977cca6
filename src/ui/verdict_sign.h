// A verdict's grade as a sign before its words.
#pragma once

#include <imgui.h>

#include "measure/grade.h"
#include "scene/view.h"

namespace laywright {

[[nodiscard]] ImU32 verdict_color(Grade grade, Theme theme);

// A disc, a triangle, a bar across a disc: known without their colours. What comes next stands on the same line.
void verdict_sign(Grade grade, Theme theme);

}  // namespace laywright
