// What the window's workbench has of its surroundings: the person's folders, the samples, the maker of share pages.
#pragma once

#include "workbench/workbench.h"

namespace laywright {

[[nodiscard]] Workbench::Options bench_of_window();

}  // namespace laywright
