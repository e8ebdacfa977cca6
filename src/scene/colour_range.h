// What the colours of a scale span: round figures around the values that are seen, but for one in fifty. As it should
// be is neutral. One range for builds that stand side by side, so that the same value has the same colour in both.
#pragma once

#include <optional>

#include "scene/palette.h"
#include "scene/scene_source.h"

namespace laywright {

// Of what the newest layers of the visible fiber have, of layers all that are laid by the end of the wind; none for colourings without a scale, and where there are no
// values.
[[nodiscard]] std::optional<ColourRange> own_range(const SceneSource& source, const View& view);

// Of all that is laid of both, in the colouring and units of the view. None also while a payoff of one of them is not
// known: nothing is computed that takes long.
[[nodiscard]] std::optional<ColourRange> common_range(const SceneSource& a, const SceneSource& b, const View& view);

// Whether a range is one for this view.
[[nodiscard]] inline bool is_of(const std::optional<ColourRange>& range, const View& view) {
  return range && range->colouring == view.colouring && range->units == view.units;
}

// Colour of a value: from the neutral one, which is near white, to orange above and to purple below; of length and
// tension, where nothing is as it should be or not, those of viridis.
[[nodiscard]] Rgba scale_colour(const ColourRange& range, double value);

// About an eighth of a span: 1, 2 or 5 times a power of ten.
[[nodiscard]] double round_step(double span);

}  // namespace laywright
