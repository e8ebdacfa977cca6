// What the window's workbench has of its surroundings: the person's folders, the samples, the catalogues, the maker of share pages.
#pragma once

#include <memory>

#include "session/workbench.h"

namespace laywright {

[[nodiscard]] Workbench::Options bench_of_window(const std::shared_ptr<const Catalogues>& catalogues);

}  // namespace laywright
