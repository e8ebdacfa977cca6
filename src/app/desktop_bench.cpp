#include "app/desktop_bench.h"

#include <filesystem>
#include <string>
#include <system_error>

#include "app/desktop_window.h"
#include "app/page_maker.h"
#include "render/offscreen_context.h"
#include "web/share_page.h"

namespace laywright {
namespace {

// The samples stand beside the program, or in a folder above it.
std::string find_sample() {
  std::error_code error;
  std::filesystem::path folder = std::filesystem::read_symlink("/proc/self/exe", error).parent_path();
  for (int up = 0; up < 6 && !folder.empty(); ++up, folder = folder.parent_path()) {
    for (const char* place : {"samples", "share/laywright/samples"}) {
      const std::filesystem::path sample = folder / place / "even.lay.toml";
      if (std::filesystem::exists(sample, error)) return sample.string();
    }
  }
  return "";
}

}  // namespace

Workbench::Options bench_of_window() {
  Workbench::Options options;
  options.folders = Folders::of_person();
  options.sample = find_sample();
  if (!options.sample.empty()) options.lessons = std::filesystem::path(options.sample).parent_path() / "lessons";
  options.wake = DesktopWindow::wake;
  if (!share_page_template().empty()) {
    options.make_page = [](const PageOrder& order, Progress& progress) {
      return make_share_page(order.plan_text(), order.plan, order.wound->source,
                             OffscreenContext::open_beside_another, progress);
    };
  }
  return options;
}

}  // namespace laywright
