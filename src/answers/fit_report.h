// A fit to a real spool, as text and as JSON.
#pragma once

#include <string>

#include "advise/fit.h"

namespace laywright {

[[nodiscard]] std::string fit_text(const Plan& plan, const AsWound& wound, const Fit& fit);

// One document, format "lay-fit 1".
[[nodiscard]] std::string fit_json(const Plan& plan, const AsWound& wound, const Fit& fit);

}  // namespace laywright
