// Where on a shell a finding shows: exact places, while a mark tells of its extent.
#pragma once

#include <cstdint>
#include <vector>

#include "scene/scene_source.h"

namespace laywright {

// For each texel of the shell (its order): 0, or 1 + the FindingKind that lights it. `source` and `view` are those of the
// shell. Only findings that make_marks marks light anything:
//   gap      the texels between two turns of a layer, bare or of earlier layers, whose turns are further apart than
//            the plan's limit
//   ride_up  the turns that climb on their own layer
// All 0 when the view does not show findings.
[[nodiscard]] std::vector<std::uint8_t> lit_texels(const SceneSource& source, const View& view, const Shell& shell);

}  // namespace laywright
