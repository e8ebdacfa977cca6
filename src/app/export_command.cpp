#include "app/export_command.h"

#include <filesystem>
#include <memory>
#include <new>

#include <fmt/format.h>

#include "app/command_outcome.h"
#include "app/export_animation.h"
#include "app/export_options.h"
#include "app/output.h"
#include "app/wound_plan.h"
#include "base/atomic_file.h"
#include "base/quantity_text.h"
#include "base/readable.h"
#include "export/file_size.h"
#include "export/glb.h"
#include "export/map_sheet.h"
#include "export/vtp.h"
#include "figures/csv.h"
#include "paper/cairo_sink.h"
#include "paper/section_sheet.h"
#include "plan/plan_file.h"

namespace laywright {
namespace {

constexpr double glb_megabytes = 50.0, other_megabytes = 1000.0;

double most_bytes(const ExportOptions& options, double otherwise_mb) {
  return options.at_most_mb.value_or(otherwise_mb) * bytes_per_megabyte;
}

// The sentence that is printed; of something like a pipe nothing is said, since it may be standard output.
std::string written(const ExportOptions& options, const std::string& more) {
  std::error_code error;
  const std::filesystem::path file(options.file);
  if (!std::filesystem::is_regular_file(file, error)) return {};
  const auto bytes = static_cast<double>(std::filesystem::file_size(file, error));
  return fmt::format("Written: {}, {}\n{}", visible(options.file), size_of_file(bytes), more);
}

CommandOutcome ended(Issues trouble, const Progress& progress) {
  if (progress.cancelled()) return {exit_stopped, {}, {}};
  return {trouble.empty() ? exit_done : exit_not_written, std::move(trouble), {}};
}

CommandOutcome export_glb(const SceneSource& source, const ExportOptions& options, const LayerRange& layers,
                          Progress& progress) {
  GlbSettings settings;
  settings.layers = layers;
  settings.sides = options.sides;
  settings.tolerance_mm = tolerance_mm(options);
  settings.most_bytes = most_bytes(options, glb_megabytes);
  settings.numbers = options.floats ? Numbers::floats : Numbers::small;
  settings.flanges_see_through = options.view.see_through;
  const Result<Glb> glb = make_glb(source, settings, progress);
  if (!glb.ok()) return {exit_not_written, glb.issues(), {}};
  CommandOutcome done = ended(write_file_atomically(options.file,
                                                    [&](std::ostream& out) {
                                                      if (progress.cancelled()) return false;
                                                      write_glb(out, glb.value());
                                                      return true;
                                                    }),
                              progress);
  const GlbFacts& facts = glb.value().facts;
  done.text =
      written(options, fmt::format("Layers {} to {}, {} sides; off the laid fiber's surface by at most {} mm, "
                                   "of which the step is {} mm\n",
                                   facts.first_layer, facts.last_layer, facts.sides,
                                   short_figure(facts.deviation_mm, 2), short_figure(facts.step_mm, 2)));
  if (!facts.note.empty()) done.text += fmt::format("Note: {}\n", facts.note);
  return done;
}

CommandOutcome export_vtp(const SceneSource& source, const ExportOptions& options, const LayerRange& layers,
                          Progress& progress) {
  VtpSettings settings;
  settings.layers = layers;
  settings.tolerance_mm = tolerance_mm(options).value_or(0.0);
  settings.most_bytes = most_bytes(options, other_megabytes);
  const Result<VtpLine> line = plan_vtp(source, settings);
  if (!line.ok()) return {exit_not_written, line.issues(), {}};
  CommandOutcome done =
      ended(write_file_atomically(options.file,
                                  [&](std::ostream& out) { return write_vtp(out, source, line.value(), progress); }),
            progress);
  done.text = written(options, fmt::format("{} with {} points; off the fiber by at most {} mm\n",
                                           counted(line.value().line.layers.size(), "line"), line.value().points,
                                           short_figure(line.value().line.deviation_mm, 2)));
  return done;
}

CommandOutcome export_csv(const Build& build, const ExportOptions& options, const LayerRange& layers,
                          Progress& progress) {
  PathSettings settings;
  settings.first_layer = layers.first;
  settings.last_layer = layers.last;
  settings.most_rows = static_cast<std::size_t>(most_bytes(options, other_megabytes) / path_row_bytes);
  const std::size_t step = path_step(build, settings);
  CommandOutcome done = ended(write_file_atomically(options.file,
                                                    [&](std::ostream& out) {
                                                      write_path_csv(out, build, progress, settings);
                                                      return !progress.cancelled();
                                                    }),
                              progress);
  done.text = written(options, step == 1 ? ""
                                         : fmt::format("Note: one node in {}, to stay within {}\n", step,
                                                       size_of_file(most_bytes(options, other_megabytes))));
  return done;
}

CommandOutcome export_drawing(const SceneSource& source, ExportKind kind, const ExportOptions& options,
                              Progress& progress) {
  Drawing drawing;
  if (kind == ExportKind::section_svg || kind == ExportKind::section_png) {
    drawing = draw_section_sheet(source.plan(), source.build(), source.measurements(), options.angle_deg);
  } else {
    const Result<View> view = view_from(options.view, source);
    if (!view.ok()) return {exit_command_line, view.issues(), {}};
    drawing = draw_map_sheet(source, view.value());
  }
  const bool scalable = kind == ExportKind::section_svg || kind == ExportKind::map_svg;
  const std::string bytes = scalable ? to_svg(drawing) : to_png(drawing, options.dots_per_inch);
  if (bytes.empty()) throw std::bad_alloc();
  if (progress.cancelled()) return {exit_stopped, {}, {}};
  CommandOutcome done = ended(write_file_atomically(options.file, bytes), progress);
  done.text = written(options, "");
  return done;
}

CommandOutcome export_build(const SceneSource& source, ExportKind kind, const ExportOptions& options,
                            Progress& progress) {
  const Result<LayerRange> layers = layers_from(options, source.build().strokes.size());
  if (!layers.ok()) return {exit_command_line, layers.issues(), {}};
  switch (kind) {
    case ExportKind::glb: return export_glb(source, options, layers.value(), progress);
    case ExportKind::vtp: return export_vtp(source, options, layers.value(), progress);
    case ExportKind::csv: return export_csv(source.build(), options, layers.value(), progress);
    case ExportKind::turntable:
    case ExportKind::fill: return export_animation(source, kind, options, progress);
    default: return export_drawing(source, kind, options, progress);
  }
}

CommandOutcome lay_and_export(const Plan& plan, ExportKind kind, const ExportOptions& options) {
  Watch watch;
  const WoundPlan wound = lay_and_measure(plan, options.settings, watch);
  if (!wound.outcome.done()) return wound.outcome;

  const SceneSource source(plan, wound.build, wound.measurements);
  watch.begin(kind == ExportKind::turntable || kind == ExportKind::fill ? "drawing" : "writing");
  CommandOutcome done = export_build(source, kind, options, watch.progress());
  done.issues.insert(done.issues.begin(), wound.outcome.issues.begin(), wound.outcome.issues.end());
  return done;
}

int export_plan(const CommandLine& command, ExportOptions options, const EntrySource& entries) {
  const Result<ExportKind> kind = export_kind(command, options);
  if (!kind.ok()) {
    print_issues(kind.issues());
    return exit_command_line;
  }
  // Of a map one wants to know where it is uneven.
  const bool map = kind.value() == ExportKind::map_svg || kind.value() == ExportKind::map_png;
  if (map && !command.option("--colour").given()) options.view.colouring = "height";
  const Result<Plan> plan = load_plan(options.plan, &entries);
  print_issues(plan.issues());
  if (!plan.ok()) return exit_unsound;
  return conclude(lay_and_export(plan.value(), kind.value(), options));
}

}  // namespace

void add_export_command(CommandLine program, const EntrySource& entries, int& exit_code) {
  const CommandLine command =
      program.add_command("export", "Lay a plan and write it for other programs: model, lines, table, pictures");
  const auto options = std::make_shared<ExportOptions>();
  add_export_options(command, *options);
  command.footer(
      "The ending of FILE says what is made:\n"
      "  .glb         solid model (glTF 2.0): the fiber as a tube, layer by layer, and the spool\n"
      "  .vtp         the fiber as lines (VTK), with turn, layer, rise, gap, support, length and tension\n"
      "  .csv         the fiber's path as a table\n"
      "  .svg, .png   the axial section, or with --show map the unrolled surface or layer\n"
      "  .webp        the spool turns once, or with --show fill the wind grows\n\n"
      "Picture, camera and what is seen are those of `laywright picture`, for moving pictures. Of them, --layers "
      "also\n"
      "is for models, tables and maps, --see-through for models, and --colour, --until and --inch for maps.\n\n"
      "Examples:\n"
      "  laywright export samples/even.lay.toml -o even.glb\n"
      "  laywright export samples/even.lay.toml -o even.vtp --tolerance \"0.01 mm\"\n"
      "  laywright export samples/even.lay.toml -o layer-5.svg --show map --layers 5:5 --colour gap\n"
      "  laywright export samples/even.lay.toml -o fill.webp --show fill --cut 30:120 --plain\n"
      "  laywright export samples/even.lay.toml --frames out/frames --show turntable --size 1920x1080");
  command.callback(
      [options, command, &entries, &exit_code] { exit_code = export_plan(command, *options, entries); });
}

}  // namespace laywright
