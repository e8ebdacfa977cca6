// The parts of the overlay, each drawn at its place.
#pragma once

#include <string>

#include "render/overlay_room.h"
#include "render/overlay_shade.h"
#include "render/overlay_style.h"
#include "scene/scene.h"

namespace laywright {

// Adds its lines and words to what is taken.
void draw_dimension_lines(Canvas& canvas, const Scene& scene, const View& view, const SpoolShade& shade,
                          const OverlayStyle& style, OverlayRoom& taken);

// The numbers of layers on the faces of cuts, as many as there is room for: each, or every second, fifth, tenth and so on.
void draw_layer_numbers(Canvas& canvas, const Scene& scene, const View& view, const OverlayStyle& style);

// Where angles begin.
void draw_zero(Canvas& canvas, const Scene& scene, const View& view, const OverlayStyle& style, OverlayRoom& taken);

// Signs of findings at their exact places, where these face the eye and are not cut away; the worst
// of each larger, and the chosen one ringed with its sign beside it.
void draw_signs(Canvas& canvas, const Scene& scene, const View& view, const OverlayStyle& style, OverlayRoom& taken);

// Where the fiber comes onto the wind, while there is a guide.
void draw_lay_point(Canvas& canvas, const Scene& scene, const View& view, const OverlayStyle& style);

// Whether a place on a surface that faces this way is seen; the flange that stands before it is of glass.
[[nodiscard]] bool faces_eye(const View& view, const Vec3& place, const Vec3& facing);

// One sign, centred; `radius` px.
void draw_sign(Canvas& canvas, Glyph glyph, glm::dvec2 at, double radius, const Ink& color,
               const OverlayStyle& style);

// What the colours and the marks mean: a column in the first corner where it hides neither the spool nor what is taken, the
// lower left before all others; where there is none, rows that end `foot` px above the lower edge. The lower `foot` px
// on the right are the scale bar's.
void draw_legend(Canvas& canvas, const Scene& scene, const SpoolShade& shade, const OverlayRoom& taken, double foot,
                 const OverlayStyle& style);

// Where the scale bar stands: in the lower right corner, or in the left one where a free fiber or words would cross it; no
// size where there is no bar.
[[nodiscard]] OverlayBox scale_box(const Canvas& canvas, const ScaleBar& bar, const OverlayRoom& taken,
                                   const OverlayStyle& style);

void draw_scale(Canvas& canvas, const ScaleBar& bar, const OverlayBox& box, const OverlayStyle& style);

}  // namespace laywright
