#include "app/share_command.h"

#include <algorithm>
#include <cmath>
#include <memory>
#include <numbers>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "app/exit_code.h"
#include "app/output.h"
#include "app/picture_maker.h"
#include "app/watch.h"
#include "base/atomic_file.h"
#include "lay/lay.h"
#include "measure/measurements.h"
#include "plan/plan_file.h"
#include "render/offscreen_context.h"
#include "report/cairo_sink.h"
#include "report/section_sheet.h"
#include "scene/camera.h"
#include "web/share_page.h"

namespace laywright {
namespace {

struct ShareOptions {
  std::string plan, file;
  LaySettings settings;
};

struct Outcome {
  ExitCode code = exit_done;
  Issues issues;
};

// The whole wind.
View whole_view(const Plan& plan) {
  View view;
  view.width_px = 1200;
  view.height_px = 800;
  view.camera.azimuth_deg = 24.0;
  view.camera.elevation_deg = 16.0;
  view.camera = fit_camera(plan, view);
  return view;
}

// Onto the lower face of a wedge, from so near that the wind's thickness is a third of the picture.
View open_view(const SceneSource& source) {
  View view = whole_view(source.plan());
  view.dimensions = false;
  view.wedge = Sector{0.6, 2.1};
  const double middle_mm = 0.5 * source.plan().spool().inside_width_mm;
  const double inner_mm = source.barrel_radius(middle_mm);
  const double outer_mm = std::max(0.5 * source.measurements().outer_diameter.middle_mm, inner_mm + source.d());
  view.camera.target = in_space(middle_mm, 0.5 * (inner_mm + outer_mm), view.wedge->to);
  view.camera.elevation_deg = 40.0;
  const double half_view = std::tan(0.5 * view.camera.field_of_view_deg * std::numbers::pi / 180.0);
  view.camera.distance_mm = std::min(view.camera.distance_mm, 1.5 * (outer_mm - inner_mm) / half_view);
  return view;
}

std::vector<SharePicture> drawn_pictures(const SceneSource& source) {
  PictureMaker maker(source, {});
  const std::string whole = to_png(maker.draw(whole_view(source.plan())));
  return {{"image/png", whole, "The whole wind"},
          {"image/png", to_png(maker.draw(open_view(source))), "A look into the wind, cut open; coloured by layer"}};
}

// For browsers that cannot draw, and for paper. Where no picture can be drawn here, the section as a drawing.
std::vector<SharePicture> pictures_of(const SceneSource& source) {
  const Result<OffscreenContext> context = OffscreenContext::open();
  if (context.ok()) {
    try {
      return drawn_pictures(source);
    } catch (const std::runtime_error&) {  // the driver refuses: the drawing does
    }
  }
  const Drawing section = draw_section_sheet(source.plan(), source.build(), source.measurements(), 0.0);
  return {{"image/png", to_png(section, 150.0), "Axial section"}};
}

Outcome lay_and_share(const std::string& plan_text, const Plan& plan, const ShareOptions& options) {
  Watch watch;
  Progress& progress = watch.progress();
  watch.begin("laying");
  Result<Build> laid = lay(plan, options.settings, progress);
  if (progress.cancelled()) return {exit_stopped, {}};
  if (!laid.ok()) return {exit_unsound, laid.issues()};
  const Issues warnings = laid.issues();

  watch.begin("measuring");
  const auto build = std::make_shared<const Build>(std::move(laid).value());
  const auto measurements = std::make_shared<const Measurements>(measure(plan, *build, progress));
  if (progress.cancelled()) return {exit_stopped, {}};

  watch.begin("drawing");
  const SceneSource source(plan, build, measurements);
  const SharedWind wind{plan_text, plan, *build, *measurements, pictures_of(source)};
  const std::string page = share_page(share_page_template(), wind);
  if (progress.cancelled()) return {exit_stopped, {}};
  const Issues trouble = write_file_atomically(options.file, page);
  if (!trouble.empty()) return {exit_not_written, trouble};
  return {exit_done, warnings};
}

int share(const ShareOptions& options) {
  const Result<std::string> text = read_plan_text(options.plan);
  if (!text.ok()) {
    print_issues(text.issues());
    return exit_unsound;
  }
  const Result<Plan> plan = plan_from_text(text.value(), options.plan);
  print_issues(plan.issues());
  if (!plan.ok()) return exit_unsound;
  if (share_page_template().empty()) {
    fmt::print(stderr,
               "error: this program was built without the share page; configure it with -DLAYWRIGHT_SHARE_PAGE=ON "
               "(Emscripten is needed) and build it again\n");
    return exit_not_written;
  }
  const Outcome outcome = lay_and_share(text.value(), plan.value(), options);
  print_issues(outcome.issues);
  if (outcome.code == exit_stopped) fmt::print(stderr, "stopped; nothing was written\n");
  return outcome.code;
}

// A negative seed would be read as a huge one, and JavaScript counts no further than this.
std::string refuse_seed(const std::string& seed) {
  const bool too_long = seed.size() > 15;
  return seed.starts_with('-') || too_long ? "a seed is a whole number, 0 to 999999999999999" : "";
}

}  // namespace

void add_share_command(CLI::App& program, int& exit_code) {
  CLI::App* command =
      program.add_subcommand("share", "Lay a plan and write it as a page that opens in any browser, offline");
  const auto options = std::make_shared<ShareOptions>();
  command->add_option("PLAN", options->plan, "The lay plan, *.lay.toml")->type_name("")->required();
  command->add_option("-o,--output", options->file, "The page, one HTML file")->type_name("FILE.html")->required();
  command->add_option("--seed", options->settings.seed, "Seed of all scatter; the same seed gives the same build")
      ->type_name("N")
      ->check(CLI::Validator(refuse_seed, ""))
      ->capture_default_str();
  command->footer(
      "The page shows the spool in the round, cut, peeled and played, and lays it anew when its settings are "
      "changed.\n"
      "It holds the whole plan, comments included, and loads nothing from anywhere: it can be mailed, and opened\n"
      "without a network.\n\n"
      "Example:\n"
      "  laywright share samples/even.lay.toml -o even.html");
  command->callback([options, &exit_code] { exit_code = share(*options); });
}

}  // namespace laywright
