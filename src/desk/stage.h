// How a build is looked at: view, scrubber, the turn that was picked, the finding that was chosen. A value; places
// are kept such that they stay when a finer build takes the place of a coarse one.
#pragma once

#include <chrono>
#include <optional>
#include <vector>

#include "desk/playback.h"
#include "payoff/payoff.h"
#include "scene/pick.h"
#include "scene/view.h"

namespace laywright {

// A camera on its way to a finding.
struct Flight {
  Camera from, to;
  std::optional<std::chrono::steady_clock::time_point> begun;  // by the first poll
};

struct Stage {
  View view;  // with until_turn as the scrubber has it
  Playback playback;
  std::optional<double> picked_turn;  // place along the fiber, turns from the start

  std::optional<Flight> flight;  // while the view's camera is on its way
  struct Opened {
    View before, after;
  };
  std::optional<Opened> opened;  // what the last flight to a finding peeled and cut
};

// The node nearest to the picked place; none where nothing is picked, or the build does not reach so far.
[[nodiscard]] std::optional<std::size_t> picked_node(const Stage& stage, const Wound& wound);
[[nodiscard]] Stage with_picked_node(Stage stage, const Wound& wound, std::optional<std::size_t> node);

enum class Toward { next, previous, above, below, left, right };

// From a node to its neighbour at the same station; none where there is none.
[[nodiscard]] std::optional<std::size_t> neighbour(const Wound& wound, std::size_t node, Toward toward);

// The finding of `to` that is the same as one of `from`: of its kind and side, nearest in layer; none if there is
// none of these.
[[nodiscard]] std::optional<std::size_t> same_finding(const Wound& from, std::size_t finding, const Wound& to);

// The stage for another build of the same document (`from` may be null): the chosen finding is found again, the
// scrubber's place kept.
[[nodiscard]] Stage carried_over(Stage stage, const Wound* from, const Wound& to);

// The view of a scrubber's place.
[[nodiscard]] Stage with_playback(Stage stage, const Playback& playback, const Wound& wound);

// On the way to a finding: the view opened such that it is seen (finding_view.h), the scrubber where all of it is laid,
// what the flight before opened closed again. The camera sets out; with `jump` it is there at once.
[[nodiscard]] Stage flown_to(Stage stage, const Wound& wound, std::size_t finding, bool jump = false);

// The same to where the fiber catches when it is drawn off: unwound as far as that, with the place picked.
[[nodiscard]] Stage flown_to(Stage stage, const Wound& wound, const PayoffCatch& caught, bool jump = false);

// Layers, cuts and flanges as before the last flight, unless they were changed since; the camera stays.
[[nodiscard]] Stage closed_again(Stage stage);

// The camera as far on its way as it is now; a flight takes so many seconds.
[[nodiscard]] Stage flown_on(Stage stage, std::chrono::steady_clock::time_point now, double flight_s);

}  // namespace laywright
