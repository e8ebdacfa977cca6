// What a workbench has written in the background when it is asked to.
#include <utility>

#include "session/workbench.h"

namespace laywright {

void Workbench::write_sheet(const std::string& path, std::shared_ptr<const std::vector<Drawing>> pages, int page) {
  sheet_writer_.start(path, sheet_maker(path, std::move(pages), page), options_.wake);
}

// Not begun where the plan is not sound.
Issues Workbench::write_page(const std::string& path) {
  const Document& document = *active()->document;
  const Result<Plan> plan = check(document.state().draft);
  if (!plan) return plan.issues();
  PageOrder order{[copy = document.recovery_copy()] { return copy().text; }, plan.value(), document.wound(),
                  settings_.page};
  page_writer_.start(path, page_maker(std::move(order), options_.make_page), options_.wake);
  return {};
}

}  // namespace laywright
