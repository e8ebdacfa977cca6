// The options of a page or a sheet for a customer.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <CLI/CLI.hpp>

#include "app/customer_order.h"
#include "base/issue.h"

namespace laywright {

struct CustomerOptions {
  std::string whom = "winder";
  CustomerLetter letter;
  std::string logo;
  const CLI::Option* logo_option = nullptr;           // an input, for guard_inputs
  std::vector<const CLI::Option*> of_customer_alone;  // that mean nothing for others

  [[nodiscard]] bool for_customer() const { return whom == "customer"; }
};

// --for, and what a letter has. `notes`: whether --notes is among them.
void add_customer_options(CLI::App& command, CustomerOptions& options, bool notes);

// Of options that were given without --for customer; empty when all is well.
[[nodiscard]] Issues misplaced(const CustomerOptions& options);

}  // namespace laywright
