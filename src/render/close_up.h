// What a near view needs beyond the scene: the strands and the cut turns that the camera sees. Without OpenGL.
#pragma once

#include <optional>
#include <vector>

#include "scene/scene.h"

namespace laywright {

// Pixels of the picture that a fiber is thick, at the nearest place of the wind that the camera sees.
// `outer_radius_mm`: of its outermost place.
[[nodiscard]] double fiber_px(const Scene& scene, const View& view, double outer_radius_mm);

// How strongly strands and circles are drawn instead of the shell and the face's picture: 0 below `from_px`, 1 at
// `full_px` and above.
struct CloseUpSettings {
  double from_px = 4.0;
  double full_px = 6.0;
  std::size_t most_strand_points = 120'000;
  std::size_t most_discs = 200'000;
};
// For a window, where time counts: strands from where they show more than the shell, one pixel to a column of it.
[[nodiscard]] CloseUpSettings close_up_beyond(const Shell& shell);

[[nodiscard]] double close_up_share(double fiber_px, const CloseUpSettings& settings);

struct CloseUp {
  double outer_radius_mm = 1.0, usual_radius_mm = 1.0;  // of the shell: its outermost place, and the mean
  double share = 0.0;                                   // from close_up_share; 0: nothing below is filled in
  std::optional<Strands> strands;                       // none when there would be too many: then the shell stays
  std::vector<std::vector<FaceDisc>> discs;             // for each face of the scene
  // Where they are good for: the same camera, or one that sees no more than this.
  SurfaceWindow window;
  std::vector<FaceWindow> face_windows;
};

// Precondition: the scene was made from this source and this view, but for the camera.
[[nodiscard]] CloseUp make_close_up(const SceneSource& source, const Scene& scene, const View& view,
                                    const CloseUpSettings& settings = {});

// True if a close-up serves this view as well: nothing is asked for that it lacks, and it is not there for nothing.
[[nodiscard]] bool covers(const CloseUp& close_up, const Scene& scene, const View& view,
                          const CloseUpSettings& settings = {});

}  // namespace laywright
