#include "ui/texts.h"

#include <algorithm>
#include <utility>

#include "base/spelling.h"

namespace laywright {

std::string spoken(std::string name) {
  std::replace(name.begin(), name.end(), '_', ' ');
  return capitalised(std::move(name));
}

}  // namespace laywright
