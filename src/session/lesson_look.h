// The place in question of a lesson: where it is, and both builds seen there from near, in a cut.
#pragma once

#include <array>
#include <optional>

#include "desk/wound.h"
#include "lesson/lesson.h"
#include "scene/finding_spot.h"
#include "scene/view.h"

namespace laywright {

// Where something is sought, and in which wind.
struct FirstSpot {
  const Wound& wound;
  std::optional<FindingSpot> spot;  // none where there is none
};

// The first of a kind of finding, as the wind goes; of those near the top of the spool where there are any, since up is outward
// there. `builds`: the lesson's, laid.
[[nodiscard]] FirstSpot first_spot(const std::array<WoundPtr, 2>& builds, const Sought& sought);

// Of one finding, the gravest of its places near the top; of all that has none there, the gravest. An edge goes all round: it has
// one there.
[[nodiscard]] std::optional<FindingSpot> upright_spot(const Wound& wound, std::size_t finding);

// The turn at which all that makes it is laid, and seen.
[[nodiscard]] double laid_at(const Wound& wound, const FindingSpot& spot, FindingKind kind);

// Of a whole view: a cut through the place, near enough that fiber is told from fiber; of a bare place at a flange, that all of it is
// seen.
[[nodiscard]] View close_view(View whole, const Wound& wound, const FindingSpot& spot, FindingKind kind);

// Of a whole view: the camera and the cut, so near that fiber is told from fiber. `builds`: the lesson's, laid. Whole where it is
// to show a finding that none has.
[[nodiscard]] View close_view(View whole, const std::array<WoundPtr, 2>& builds, const LookAt& look);

}  // namespace laywright
