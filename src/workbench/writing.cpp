// What a workbench has written in the background when it is asked to.
#include <utility>

#include "workbench/workbench.h"

namespace laywright {

void Workbench::write_sheet(const std::string& path, std::shared_ptr<const std::vector<Drawing>> pages, int page) {
  sheet_saving_ = SheetSaving{path, std::nullopt};
  errands_->queue()->post([mail = sheet_mail_, wake = options_.wake, path, pages = std::move(pages), page] {
    mail->put(laywright::write_sheet(path, *pages, page));
    wake();
  });
}

// Not begun where the plan is not sound.
Issues Workbench::write_page(const std::string& path) {
  const Document& document = *active()->document;
  const Result<Plan> plan = check(document.state().draft);
  if (!plan) return plan.issues();
  PageOrder order{[copy = document.recovery_copy()] { return copy().text; }, plan.value(), document.wound()};
  page_writer_.start(std::move(order), path, options_.make_page, options_.wake);
  page_awaited_ = true;
  return {};
}

}  // namespace laywright
