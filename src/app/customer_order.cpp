#include "app/customer_order.h"

#include <utility>

#include "answers/customer_figures.h"
#include "paint/logo.h"

namespace laywright {

Result<CustomerOrder> customer_order(const CustomerLetter& letter, const std::string& logo) {
  Issues issues = check_letter(letter);
  if (!issues.empty()) return issues;
  CustomerOrder order{letter, {}};
  if (logo.empty()) return order;
  Result<Image> image = read_logo(logo);
  if (!image.ok()) return image.issues();
  order.logo = std::move(image).value();
  return order;
}

Result<CustomerTold> told_to(const CustomerOrder& order, const Plan& plan, const SceneSource& source,
                             const LaySettings& settings, const Stretch& stretch) {
  const Result<CustomerFigures> figures =
      customer_figures(plan, source.build(), source.measurements(), settings, threads_at_hand(), stretch);
  if (!figures.ok()) return figures.issues();
  CustomerLetter letter = addressed(order.letter, plan);
  CustomerSummary summary = customer_summary(plan, figures.value(), letter.ware);
  return CustomerTold{std::move(letter), std::move(summary)};
}

}  // namespace laywright
