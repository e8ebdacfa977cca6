// A colour that is no word, "#rrggbb": red, green and blue, two hexadecimal digits each, of sRGB. FiberColour has room for all of
// them behind its words.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "plan/fields.h"

namespace laywright {

// "#c0392b", in large letters, too; none for anything else.
[[nodiscard]] std::optional<FiberColour> mixed_colour(std::string_view text);

// 0xrrggbb; none of a word.
[[nodiscard]] std::optional<std::uint32_t> mix_of(FiberColour colour);

// "#c0392b", for one that is mixed.
[[nodiscard]] std::string mixed_text(FiberColour colour);

// A choice that may be such a colour, too.
[[nodiscard]] inline bool takes_mixed(const FieldInfo& field) { return field.key == "colour"; }

// The number of a choice as it is written, without quotes; none where it is none of them.
[[nodiscard]] std::optional<double> choice_written(const FieldInfo& field, std::string_view written);

}  // namespace laywright
