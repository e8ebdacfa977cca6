// The parts of the overlay, each drawn at its place.
#pragma once

#include <string>

#include "render/overlay_shade.h"
#include "render/overlay_style.h"
#include "scene/scene.h"

namespace laywright {

void draw_dimension_lines(Canvas& canvas, const Scene& scene, const View& view, const SpoolShade& shade,
                          const OverlayStyle& style);

// Signs of findings at their exact places, where these face the eye and are not hidden by a flange or cut away; the worst
// of each larger, and the chosen one ringed with its sign beside it.
void draw_signs(Canvas& canvas, const Scene& scene, const View& view, const OverlayStyle& style);

// Where the fiber comes onto the wind, while there is a guide.
void draw_lay_point(Canvas& canvas, const Scene& scene, const View& view, const OverlayStyle& style);

// One sign, centred; `radius` px.
void draw_sign(Canvas& canvas, Glyph glyph, glm::dvec2 at, double radius, const Ink& color,
               const OverlayStyle& style);

// What the colours and the marks mean: a column in the lower left corner, or, where that would hide the spool, rows
// that end `foot` px above the lower edge.
void draw_legend(Canvas& canvas, const Scene& scene, const SpoolShade& shade, double foot,
                 const OverlayStyle& style);

void draw_scale(Canvas& canvas, const ScaleBar& bar, const OverlayStyle& style);

}  // namespace laywright
