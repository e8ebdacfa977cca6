// One page for a customer: the filled spool with its diameters, how much it holds and how thick it is, and what the sender
// writes. Its words and figures are those of the share page (figures/customer_words.h).
#pragma once

#include <string>

#include "figures/customer_letter.h"
#include "figures/customer_words.h"
#include "paper/setup_sheet.h"

namespace laywright {

struct CustomerSheet {
  const Plan& plan;
  const Build& build;
  const Measurements& measurements;
  CustomerLetter letter;  // addressed()
  CustomerSummary summary;
  std::string verdict{};  // a line; empty: none
  Paper paper = Paper::a4;
  Bitmap
      picture{};  // of the spool with its dimensions, its box left open; without pixels: a section is drawn instead
  Bitmap logo{};  // on white, its box left open; without pixels: none
};

// All of it is drawn, whatever the letter says (check_letter() is empty). Precondition: build and measurements belong to the plan.
[[nodiscard]] Drawing draw_customer_sheet(const CustomerSheet& sheet);

}  // namespace laywright
