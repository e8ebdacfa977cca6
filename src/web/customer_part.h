// What a share page has for a customer, as HTML.
#pragma once

#include <string>

#include "figures/customer_letter.h"
#include "figures/customer_words.h"

namespace laywright {

struct CustomerPage {
  CustomerLetter letter;  // addressed()
  CustomerSummary summary;
  std::string logo;  // a PNG's bytes; empty: none
};

// Beside the title; empty without a logo.
[[nodiscard]] std::string logo_part(const CustomerPage& customer);
// Greeting, the sentences, the figures, how sure they are.
[[nodiscard]] std::string letter_part(const CustomerPage& customer);

}  // namespace laywright
