#include "answers/stations_words.h"

#include <fmt/format.h>

#include "base/quantity_text.h"

namespace laywright {

std::string stations_words(double fidelity, const char* which) {
  return fmt::format("{} have {} of a full build's stations.", which, percent_text(fidelity, 0));
}

}  // namespace laywright
