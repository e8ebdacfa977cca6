#include "app/picture_command.h"

#include <array>
#include <functional>
#include <memory>
#include <new>
#include <stdexcept>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "app/command_outcome.h"
#include "app/output.h"
#include "app/picture_beside.h"
#include "app/picture_maker.h"
#include "app/picture_view.h"
#include "app/several_plans.h"
#include "app/wind_options.h"
#include "app/wound_plan.h"
#include "app/written_files.h"
#include "base/atomic_file.h"
#include "paint/offscreen_context.h"
#include "paint/png.h"
#include "paper/fonts.h"
#include "plan/plan_file.h"

namespace laywright {
namespace {

// Of the time, about; packing takes the rest.
constexpr double drawing_part = 0.8;

struct PictureOptions {
  std::vector<std::string> plans;
  std::string output, beside;
  PictureView view;
  LaySettings settings;
  bool transparent = false;
};

PictureStyle style_of(const PictureOptions& options) {
  PictureStyle style;
  style.figures = !options.view.no_figures;
  style.transparent = options.transparent;
  return style;
}

// Empty when cancelled. `from`, `to`: of the work.
Image drawn(const SceneSource& source, const View& view, const PictureStyle& style, double from, double to,
            Progress& progress) {
  return PictureMaker(source, style).draw(view, [&](double share) {
    progress.report(from + (to - from) * share);
    return !progress.cancelled();
  });
}

using DrawImage = std::function<Image(const PictureStyle& style, Progress& progress)>;

CommandOutcome draw_file(const DrawImage& draw, const PictureOptions& options, const WriteBytes& write,
                         Progress& progress) {
  const Result<OffscreenContext> context = OffscreenContext::open();
  if (!context.ok()) return {exit_not_written, context.issues(), {}};
  std::string bytes;
  try {
    const Image image = draw(style_of(options), progress);
    if (!progress.cancelled()) bytes = to_png(image, [&] { return !progress.cancelled(); });
  } catch (const std::runtime_error& error) {
    Issue issue;
    issue.what = fmt::format("no picture can be drawn: {}; try a smaller --size", error.what());
    return {exit_not_written, {issue}, {}};
  }
  if (progress.cancelled()) return {exit_stopped, {}, {}};
  if (bytes.empty()) throw std::bad_alloc();
  Issues trouble = write(bytes);
  if (!trouble.empty()) return {exit_not_written, std::move(trouble), {}};
  return {};
}

CommandOutcome draw_one(const SceneSource& source, const PictureOptions& options, const WriteBytes& write,
                        Progress& progress) {
  const Result<View> view = view_from(options.view, source);
  if (!view.ok()) return {exit_command_line, view.issues(), {}};
  const auto draw = [&](const PictureStyle& style, Progress& shown) {
    return drawn(source, view.value(), style, 0.0, drawing_part, shown);
  };
  return draw_file(draw, options, write, progress);
}

CommandOutcome draw_both(const SceneSource& first, const SceneSource& second, const PictureOptions& options,
                         const WriteBytes& write, Progress& progress) {
  const Result<std::array<View, 2>> views = views_beside(options.view, first, second, progress);
  if (!views.ok()) return {exit_command_line, views.issues(), {}};
  const auto draw = [&](PictureStyle style, Progress& shown) -> Image {
    style.text_scale = text_scale_beside(options.view);
    const Image left = drawn(first, views.value()[0], style, 0.0, 0.5 * drawing_part, shown);
    if (shown.cancelled()) return {};
    const Image right = drawn(second, views.value()[1], style, 0.5 * drawing_part, drawing_part, shown);
    return shown.cancelled() ? Image{} : side_by_side(left, right, options.view, options.transparent);
  };
  return draw_file(draw, options, write, progress);
}

CommandOutcome lay_and_draw(const Plan& plan, const PictureOptions& options, const WriteBytes& write, Watch& watch,
                            PlanRow* row) {
  Progress& progress = watch.progress();
  WoundPlan wound = lay_and_measure(plan, options.settings, watch);
  if (!wound.outcome.done()) return wound.outcome;
  if (row != nullptr) {
    const TakeupRun run = take_up(plan, *wound.build, *wound.measurements, progress);
    if (progress.cancelled()) return {exit_stopped, {}, {}};
    const auto verdict = judged_over_draws(plan, options.settings, wound, run, {}, watch);
    if (!verdict) return {exit_stopped, {}, {}};
    *row = plan_row(plan, *wound.build, *wound.measurements, *verdict);
  }

  watch.begin("drawing");
  const SceneSource source(plan, wound.build, wound.measurements);
  CommandOutcome outcome = draw_one(source, options, write, progress);
  outcome.issues.insert(outcome.issues.begin(), wound.outcome.issues.begin(), wound.outcome.issues.end());
  return outcome;
}

CommandOutcome lay_and_draw_both(const Plan& first, const Plan& second, const PictureOptions& options,
                                 const WriteBytes& write, Watch& watch) {
  watch.begin_plan(1, 2);
  const WoundPlan left = lay_and_measure(first, options.settings, watch);
  if (!left.outcome.done()) return left.outcome;
  watch.begin_plan(2, 2);
  const WoundPlan right = lay_and_measure(second, options.settings, watch);
  if (!right.outcome.done()) return right.outcome;
  watch.begin("drawing");
  CommandOutcome outcome =
      draw_both(SceneSource(first, left.build, left.measurements),
                SceneSource(second, right.build, right.measurements), options, write, watch.progress());
  for (const WoundPlan* each : {&right, &left})
    outcome.issues.insert(outcome.issues.begin(), each->outcome.issues.begin(), each->outcome.issues.end());
  return outcome;
}

int make_picture_of_both(const std::string& file, const PictureOptions& options, const EntrySource& entries) {
  const Result<Plan> first = load_plan(file, &entries), second = load_plan(options.beside, &entries);
  print_issues(first.issues());
  print_issues(second.issues());
  if (!first.ok() || !second.ok()) return exit_unsound;
  print_issues(missing_fonts());
  const auto made = [&] {
    Watch watch;
    const auto write = [&](const std::string& bytes) { return write_file_atomically(options.output, bytes); };
    return lay_and_draw_both(first.value(), second.value(), options, write, watch);
  };
  return conclude(made());
}

int make_picture(const std::string& file, const PictureOptions& options, const EntrySource& entries) {
  const Result<Plan> plan = load_plan(file, &entries);
  print_issues(plan.issues());
  if (!plan.ok()) return exit_unsound;
  print_issues(missing_fonts());
  const auto made = [&] {
    Watch watch;
    const auto write = [&](const std::string& bytes) { return write_file_atomically(options.output, bytes); };
    return lay_and_draw(plan.value(), options, write, watch, nullptr);
  };
  return conclude(made());
}

int make_pictures(const PictureOptions& options, const EntrySource& entries) {
  const std::vector<std::string> files = named_once(options.plans);
  if (!options.beside.empty() && files.size() > 1) {
    Issue issue;
    issue.key = "--beside";
    issue.value = options.beside;
    issue.what = "stands beside one plan";
    print_issues({issue});
    return exit_command_line;
  }
  if (!options.beside.empty()) return make_picture_of_both(files.front(), options, entries);
  if (files.size() == 1) return make_picture(files.front(), options, entries);
  print_issues(missing_fonts());
  return make_of_several({files, options.output, ".png"}, entries,
                         [&](const Plan& plan, const std::string& name, Watch& watch, OfSeveral& several) {
                           return into_folder(options.output, name, [&](const WriteBytes& write) {
                             return lay_and_draw(plan, options, write, watch, &several.row);
                           });
                         });
}

void add_options(CommandLine command, PictureOptions& options) {
  const CommandOption plan =
      command.add_option("PLAN", options.plans, "Lay plans, *.lay.toml").type_name("").required();
  const CommandOption file =
      command
          .add_option(
              "-o,--output", options.output,
              "The picture, a PNG file; of several plans a folder for pictures that are named after them, made "
              "where missing")
          .type_name("FILE.png")
          .required();
  const CommandOption beside =
      command
          .add_option("--beside", options.beside,
                      "Another plan, drawn on the right half: seen from the same place, colours on one scale")
          .type_name("PLAN");
  guard_inputs(command, {plan, beside},
               {{file, {".png"}, false, [&options] { return names_in_folder(options.plans, ".png"); }}});
  add_view_options(command, options.view);
  command.add_flag("--transparent", options.transparent, "No ground: for slides and web pages").group("Picture");
  add_wind_options(command, options.settings, "Wind");
}

}  // namespace

void add_picture_command(CommandLine program, const EntrySource& entries, int& exit_code) {
  const CommandLine command = program.add_command("picture", "Lay plans and draw each spool into a PNG file");
  const auto options = std::make_shared<PictureOptions>();
  add_options(command, *options);
  command.footer(
      "Angles: 0 is on top of the spool, 90 in front, 180 below. No window and no graphics card are needed.\n"
      "Several plans end with a table of all; the exit code is that of the plan that fared worst.\n\n"
      "Examples:\n"
      "  laywright picture samples/even.lay.toml -o even.png\n"
      "  laywright picture samples/parallel.lay.toml -o cut.png --cut 30:120\n"
      "  laywright picture samples/long-dwell.lay.toml -o edges.png --colour height --findings\n"
      "  laywright picture samples/even.lay.toml -o close.png --zoom 12 --look-at 5:70\n"
      "  laywright picture samples/even.lay.toml -o slide.png --transparent --plain --size 3840x2160\n"
      "  laywright picture samples/even.lay.toml --beside samples/loose-traverse.lay.toml -o both.png --colour "
      "rise\n"
      "  laywright picture samples/turns-back-*.lay.toml -o out/pictures");
  command.callback([options, &entries, &exit_code] { exit_code = make_pictures(*options, entries); });
}

}  // namespace laywright
