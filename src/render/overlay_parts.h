// The parts of the overlay, each drawn at its place.
#pragma once

#include <string>

#include "render/overlay_style.h"
#include "scene/scene.h"

namespace laywright {

void draw_dimension_lines(Canvas& canvas, const Scene& scene, const View& view, const OverlayStyle& style);

// Signs of findings whose place faces the eye and is not hidden by a flange or cut away.
void draw_signs(Canvas& canvas, const Scene& scene, const View& view, const OverlayStyle& style);

// One sign, centred; `radius` px.
void draw_sign(Canvas& canvas, Glyph glyph, glm::dvec2 at, double radius, const Ink& color,
               const OverlayStyle& style);

// In the lower left corner: the colouring, and above it what the marks mean.
void draw_legend(Canvas& canvas, const Scene& scene, const OverlayStyle& style);

void draw_scale(Canvas& canvas, const ScaleBar& bar, const OverlayStyle& style);

}  // namespace laywright
