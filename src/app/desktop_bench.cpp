#include "app/desktop_bench.h"

#include <filesystem>
#include <utility>

#include "app/build_picture.h"
#include "app/desktop_window.h"
#include "app/page_maker.h"
#include "app/shipped.h"
#include "base/today.h"
#include "paint/offscreen_context.h"
#include "web/share_page.h"

namespace laywright {
Workbench::Options bench_of_window(const std::shared_ptr<const Catalogues>& catalogues) {
  Workbench::Options options;
  options.folders = Folders::of_person();
  options.entries = catalogues;
  if (catalogues) options.shelf = [catalogues] { return catalogues->all(); };
  if (const std::filesystem::path samples = shipped_folder(); !samples.empty()) {
    options.sample = (samples / "even.lay.toml").string();
    options.lessons = samples / "lessons";
  }
  options.wake = DesktopWindow::wake;
  options.wind_picture = [](const LaidWind& laid, Progress& progress) {
    return picture_for_paper_beside_window(SceneSource(laid.plan, laid.build, laid.measurements), progress);
  };
  if (!share_page_template().empty()) {
    options.make_page = [](const PageOrder& order, Progress& progress) {
      const PageChoices& choices = order.choices;
      Result<CustomerOrder> customer = CustomerOrder{};
      if (choices.for_customer) {
        CustomerLetter letter = choices.letter;
        letter.date = today();
        customer = customer_order(letter, choices.logo);
      }
      if (!customer.ok()) return Result<std::string>(customer.issues());
      return make_share_page(order.plan_text(), order.plan, order.wound->source,
                             OffscreenContext::open_beside_another,
                             choices.for_customer ? &customer.value() : nullptr, progress);
    };
  }
  return options;
}

}  // namespace laywright
