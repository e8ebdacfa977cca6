// How far apart two words are, to offer the known word that a person probably meant.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace laywright {

// Least number of characters to insert, delete, replace or swap with their neighbour (optimal string alignment).
// Cost: product of the lengths.
[[nodiscard]] std::size_t text_distance(std::string_view a, std::string_view b);

// The known word nearest to `word`, upper and lower case taken as alike; empty if none is near enough to be
// meant: more than a third of the word would have to change, or it is over 64 characters.
[[nodiscard]] std::string nearest_word(std::string_view word, const std::vector<std::string>& known);

}  // namespace laywright
