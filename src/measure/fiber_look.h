// What the fiber is made of, as far as a plan tells: for pictures and for words.
#pragma once

#include "plan/lay_plan.h"

namespace laywright {

// As the plan says, and of the usual look by the kind of product (acceptance.h): a wire, a yarn, or a coated fiber. Of wires, a
// heavy one is of copper (enamelled where it has a thin coat) or of steel, by modulus or mass per length. Never `usual`.
[[nodiscard]] FiberLook look_of(const Plan& plan);

}  // namespace laywright
