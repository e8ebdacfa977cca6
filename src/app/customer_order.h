// What a page or a sheet for a customer is made of, besides the wind.
#pragma once

#include <optional>
#include <string>

#include "base/result.h"
#include "figures/customer_letter.h"
#include "figures/customer_words.h"
#include "jobs/parallel.h"
#include "lay/lay.h"
#include "render/image.h"
#include "scene/scene_source.h"

namespace laywright {

struct CustomerOrder {
  CustomerLetter letter;
  std::optional<Image> logo;
};

// `logo`: a file; empty: none. Errors: of check_letter() and read_logo().
[[nodiscard]] Result<CustomerOrder> customer_order(const CustomerLetter& letter, const std::string& logo);

// The letter as it is set, and what is told of the wind. Errors: of customer_figures().
struct CustomerTold {
  CustomerLetter letter;
  CustomerSummary summary;
};
[[nodiscard]] Result<CustomerTold> told_to(const CustomerOrder& order, const Plan& plan, const SceneSource& source,
                                           const LaySettings& settings, const Stretch& stretch);

}  // namespace laywright
