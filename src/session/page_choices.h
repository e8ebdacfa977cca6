// How a share page is to be: as a person chose it in the window.
#pragma once

#include <string>

#include "figures/customer_letter.h"

namespace laywright {

struct PageChoices {
  bool for_customer = false;
  CustomerLetter letter;  // of which title, customer and greeting hold for one plan, and are not remembered
  std::string logo;       // a file; empty: none

  friend bool operator==(const PageChoices&, const PageChoices&) = default;
};

}  // namespace laywright
