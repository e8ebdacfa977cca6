// The options of a page or a sheet for a customer.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/command_line.h"
#include "app/customer_order.h"
#include "base/issue.h"

namespace laywright {

struct CustomerOptions {
  std::string whom = "winder";
  CustomerLetter letter;
  std::string logo;
  CommandOption logo_option;                     // an input, for guard_inputs
  std::vector<CommandOption> of_customer_alone;  // that mean nothing for others

  [[nodiscard]] bool for_customer() const { return whom == "customer"; }
};

// --for, and what a letter has. `notes`: whether --notes is among them.
void add_customer_options(CommandLine command, CustomerOptions& options, bool notes);

// Of options that were given without --for customer; empty when all is well.
[[nodiscard]] Issues misplaced(const CustomerOptions& options);

}  // namespace laywright
