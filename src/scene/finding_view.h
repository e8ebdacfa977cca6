// Views that show a finding: the camera, and what must be opened so that nothing hides it.
#pragma once

#include "scene/scene_source.h"

namespace laywright {

// The view changed so that the finding's place (Mark::place) lies in its middle and nothing is in the way (sight.h):
//   - what takes the place away is undone: an earlier end of the wind, other layers, an x range, a cut;
//   - fiber over it is opened: for what lies within the wind (a dropped turn, a bridge) by a wedge whose face goes
//     through the place, for what shows on the surface by peeling down to the layer where it is at its worst, then by
//     taking the wind back to where it was laid;
//   - a flange that still hides it becomes see-through.
// As little as suffices. The camera comes near enough that the fiber is 12 px thick, or 20 px on a face, and turns as
// little from square as what it looks at allows. The place stands in the middle; near a flange, and on a face near the
// barrel, aside from it, so that the picture is filled with fiber. Precondition: index into the findings.
[[nodiscard]] View view_of_finding(const SceneSource& source, const View& view, std::size_t finding);

// As the wind is when this fiber is drawn off it: all that was laid after `end_node` is gone, nothing else is taken away, and the
// place of `node` lies in the middle, seen square from outside. Precondition: node < end_node <= nodes of the build.
[[nodiscard]] View view_of_leaving(const SceneSource& source, const View& view, std::size_t node,
                                   std::size_t end_node);

}  // namespace laywright
