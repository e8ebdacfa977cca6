// What is said of better settings.
#pragma once

#include <string>

#include "advise/improve.h"

namespace laywright {

// A position of a setting as a person writes it: "0.31 mm", in the unit of the plan; "1.5 turns".
[[nodiscard]] std::string searchable_text(const Plan& plan, const SearchableSetting& searchable, double value);

// "Set the pitch to 0.255 mm (now 0.235 mm). Good instead of do not wind: ride-ups 12 per km instead of 1,187 per km. ..."
[[nodiscard]] std::string words_of(const Plan& plan, const Improvement& improvement, const Proposal& proposal);

// Whether there is anything better, and how sure that is.
[[nodiscard]] std::string conclusion_of(const Improvement& improvement);

}  // namespace laywright
