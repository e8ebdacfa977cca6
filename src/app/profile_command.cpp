#include "app/profile_command.h"

#include <cmath>
#include <filesystem>
#include <memory>
#include <new>
#include <optional>
#include <string>

#include <fmt/format.h>

#include "advise/as_wound.h"
#include "advise/setting_text.h"
#include "app/command_outcome.h"
#include "app/number_option.h"
#include "app/output.h"
#include "app/watch.h"
#include "app/wind_options.h"
#include "app/wound_plan.h"
#include "app/written_files.h"
#include "base/atomic_file.h"
#include "base/typed_quantity.h"
#include "figures/figures.h"
#include "measure/surface.h"
#include "paper/cairo_sink.h"
#include "paper/profile_chart.h"
#include "photo/profile_report.h"
#include "photo/read_photo.h"
#include "plan/plan_file.h"

namespace laywright {
namespace {

struct ProfileOptions {
  std::string plan, photo;
  bool json = false, shaped_flanges = false;
  std::string distance;
  double spool_error_percent = 0.1;
  std::optional<int> layer;
  std::optional<double> turns;
  std::string csv, measured, picture;
  LaySettings lay;
};

Issues read_distance(const Plan& plan, const std::string& text, PhotoSettings& settings) {
  if (text.empty()) return {};
  const ParsedQuantity parsed = parse_typed(text, Dimension::length);
  if (!parsed.quantity) return {option_issue("--distance", text, parsed.problem)};
  const double least = plan.spool().flange_diameter_mm;
  if (!(parsed.quantity->value >= least && parsed.quantity->value <= 1e6)) {
    return {option_issue("--distance", text, "is no distance from which both flanges are seen",
                         fmt::format("from the flange diameter, {:g} mm, to 1 km", least))};
  }
  settings.distance_mm = parsed.quantity->value;
  return {};
}

// With neither a layer nor turns: the end of the wind, as it lies then.
PlannedThen planned_then(const Plan& plan, const ProfileOptions& options, const WoundPlan& wound) {
  const Measurements& measured = *wound.measurements;
  PlannedThen planned;
  if (options.layer) {
    planned.when = fmt::format("when layer {} has ended", *options.layer);
    const auto index = static_cast<std::size_t>(*options.layer - 1);
    if (index < measured.layers.size()) planned.diameter_mm = measured.layers[index].outer_diameter_mm;
    return planned;
  }
  if (options.turns) {
    planned.when = fmt::format("at {:g} turns", *options.turns);
    return planned;
  }
  planned.when = "at the end of the wind";
  if (!measured.layers.empty()) planned.diameter_mm = measured.layers.back().outer_diameter_mm;
  planned.unfinished = measured.unfinished_layer;
  if (!options.json && options.csv.empty() && options.picture.empty()) return planned;
  Progress progress;
  const Surface surface = find_surface(plan, *wound.build, progress);
  planned.x_mm = surface.profile.x_mm;
  for (const double crest : surface.crest_mm) planned.outline_mm.push_back(2.0 * crest);
  return planned;
}

std::string measured_table(const Plan& plan, const ProfileOptions& options, const EdgeProfile& profile) {
  Reading reading;
  reading.layer = options.layer;
  reading.counter_turns = options.turns;
  reading.at_end = !options.layer && !options.turns;
  const auto zones = zone_diameters(profile, plan);
  for (std::size_t zone = 0; zone < zone_count; ++zone) {
    // A thousandth of a millimetre is finer than any photograph.
    if (zones[zone]) reading.diameter_mm[zone] = std::round(1000.0 * zones[zone]->diameter_mm) / 1000.0;
  }
  return as_wound_table({reading});
}

ProfileChart chart_of(const Plan& plan, const EdgeProfile& profile, const PlannedThen& planned) {
  ProfileChart chart;
  chart.title = title_of(plan);
  chart.line = fmt::format("The outline in a photograph {}, and the build's", planned.when);
  chart.width_mm = plan.spool().inside_width_mm;
  chart.seen_x_mm = profile.x_mm;
  chart.seen_mm = profile.diameter_mm;
  for (std::size_t i = 0; i < profile.x_mm.size(); ++i) chart.sigma_mm.push_back(profile.sigma_mm(i));
  chart.build_x_mm = planned.x_mm;
  chart.build_mm = planned.outline_mm;
  if (planned.x_mm.empty() && planned.diameter_mm) {
    const auto zones = zones_of(plan);
    for (std::size_t zone = 0; zone < zone_count; ++zone)
      chart.build_levels.push_back({zones[zone].from_mm, zones[zone].to_mm, (*planned.diameter_mm)[zone]});
  }
  chart.notes = {estimate_words(), fmt::format("The lens is {}.", lens_words(profile.found))};
  if (std::string last = last_layer_words(planned); !last.empty()) chart.notes.push_back(std::move(last));
  if (std::string blurred = blurred_words(plan, profile); !blurred.empty())
    chart.notes.push_back(std::move(blurred));
  return chart;
}

Issues write_picture(const std::string& file, const ProfileChart& chart) {
  const Drawing drawing = profile_chart(chart);
  const std::string bytes = std::filesystem::path(file).extension() == ".svg" ? to_svg(drawing) : to_png(drawing);
  if (bytes.empty()) throw std::bad_alloc();
  return write_file_atomically(file, bytes);
}

CommandOutcome deliver(const Plan& plan, const ProfileOptions& options, const EdgeProfile& profile) {
  Watch watch;
  WoundPlan wound = lay_and_measure(plan, options.lay, watch);
  if (!wound.build) return wound.outcome;
  const PlannedThen planned = planned_then(plan, options, wound);
  Issues trouble;
  if (!options.csv.empty()) trouble = write_file_atomically(options.csv, profile_csv(profile, planned));
  if (trouble.empty() && !options.measured.empty()) {
    trouble = write_file_atomically(options.measured, measured_table(plan, options, profile));
  }
  if (trouble.empty() && !options.picture.empty())
    trouble = write_picture(options.picture, chart_of(plan, profile, planned));
  if (!trouble.empty()) return {exit_not_written, trouble, {}};
  return {exit_done, wound.outcome.issues,
          options.json ? profile_json(plan, profile, planned) : profile_text(plan, profile, planned)};
}

int run(const ProfileOptions& options, const EntrySource& entries) {
  const Result<Plan> plan = load_plan(options.plan, &entries);
  print_issues(plan.issues());
  if (!plan.ok()) return exit_unsound;
  PhotoSettings settings;
  settings.spool_error = 0.01 * options.spool_error_percent;
  settings.flat_flanges = !options.shaped_flanges;
  if (const Issues trouble = read_distance(plan.value(), options.distance, settings); !trouble.empty()) {
    print_issues(trouble);
    return exit_command_line;
  }
  const Result<GreyPhoto> photo = load_photo(options.photo);
  print_issues(photo.issues());
  if (!photo.ok()) return exit_unsound;
  const Result<EdgeProfile> profile = edge_profile(photo.value(), plan.value(), settings);
  if (!profile.ok()) {
    Issues issues = profile.issues();
    for (Issue& issue : issues) issue.file = options.photo;
    print_issues(issues);
    return exit_unsound;
  }
  return conclude(deliver(plan.value(), options, profile.value()));
}

void add_options(CommandLine command, ProfileOptions& options) {
  const CommandOption plan =
      command.add_option("PLAN", options.plan, "The lay plan, *.lay.toml").type_name("").required();
  const CommandOption photo =
      command.add_option("PHOTO", options.photo, "The photograph, a JPEG or PNG file").type_name("").required();
  command.add_flag("--json", options.json, "Print one JSON document (format \"lay-profile 1\") instead of text");
  command
      .add_option("--distance", options.distance,
                  "From the camera to the spool's axis, like \"1.5 m\"; found by the inside width if not given")
      .type_name("LENGTH");
  command
      .add_option("--spool-error", options.spool_error_percent,
                  "One sigma of the real spool's flange diameter and inside width, in percent of the plan's")
      .type_name("PERCENT")
      .check(number_between(0.001, 5.0))
      .capture_default_str();
  command.add_flag("--shaped-flanges", options.shaped_flanges,
                   "The flanges are not flat outside: what bends their edges is not taken for the lens");
  const CommandOption layer =
      command.add_option("--layer", options.layer, "The layer that had just ended; else the wind's end")
          .type_name("N")
          .check(number_between(1, 1'000'000));
  command.add_option("--turns", options.turns, "What the counter showed, where no layer had just ended")
      .type_name("N")
      .check(number_between(0.0, 1e9))
      .excludes(layer);
  const CommandOption csv = command.add_option("--csv", options.csv, "Write the profile, place by place, as a table")
                                .type_name("FILE.csv");
  const CommandOption measured =
      command
          .add_option("--measured", options.measured, "Write the diameters as a table of readings, as fit takes it")
          .type_name("FILE.csv");
  const CommandOption picture =
      command.add_option("--picture", options.picture, "Draw the profile over the build's, .png or .svg")
          .type_name("FILE");
  add_wind_options(command, options.lay);
  guard_inputs(command, {plan, photo}, {{csv, {".csv"}}, {measured, {".csv"}}, {picture, {".png", ".svg"}, true}});
}

}  // namespace

void add_profile_command(CommandLine program, const EntrySource& entries, int& exit_code) {
  const CommandLine command =
      program.add_command("profile", "The outer diameters of a wound spool from a photograph");
  const auto options = std::make_shared<ProfileOptions>();
  add_options(command, *options);
  command.footer(
      "The photograph shows the spool from the side, its axis about level, with light ground all round both "
      "flanges. It\n"
      "is not cropped, and taken from some flange diameters away, straight before the spool's middle. Scale comes "
      "from the\n"
      "plan's flange diameter. What cannot be trusted is refused. Estimates; stop the machine before you go near "
      "it.\n\n"
      "Examples:\n"
      "  laywright profile plan.lay.toml spool.jpg --distance \"1.5 m\"\n"
      "  laywright profile plan.lay.toml spool.jpg --measured measured.csv\n"
      "  laywright profile plan.lay.toml spool.jpg --picture profile.png\n");
  command.callback([options, &entries, &exit_code] { exit_code = run(*options, entries); });
}

}  // namespace laywright
