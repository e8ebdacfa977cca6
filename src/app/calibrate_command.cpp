#include "app/calibrate_command.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "app/exit_code.h"
#include "app/number_option.h"
#include "app/output.h"
#include "base/number.h"
#include "base/readable.h"
#include "base/text_distance.h"
#include "figures/calibration_text.h"
#include "plan/dial_text.h"

namespace laywright {
namespace {

struct CalibrateOptions {
  std::string dial;
  std::vector<std::string> readings;
  std::string unit = "div";
  double step = 0.0;  // none
  std::string diameter;
  bool inverse = false, points = false, from_left = false;
};

Issue refused(const std::string& key, const std::string& value, std::string what, std::string allowed = "") {
  Issue issue;
  issue.key = key;
  issue.value = value.empty() ? "" : visible(value);
  issue.what = std::move(what);
  issue.allowed = std::move(allowed);
  return issue;
}

// "36=0.225 mm"; of turning back "2=0.5".
Issues add_reading(const std::string& text, const FieldInfo& field, CalibrationRequest& request) {
  const std::size_t at = text.find('=');
  const std::optional<double> reading = read_number<double>(text.substr(0, at));
  const std::string example =
      field.kind == FieldKind::quantity ? "36=\"1.5 " + std::string(field.usual_unit) + "\"" : "2=0.5";
  if (at == std::string::npos || !reading)
    return {refused("READING=VALUE", text,
                    fmt::format("must be a reading of the dial and what it gave, like {}", example))};
  const std::string value = text.substr(at + 1);
  if (field.kind != FieldKind::quantity) {
    const std::optional<double> turns = read_number<double>(value);
    if (!turns) return {refused("READING=VALUE", text, "is in turns of the spool, a plain number", "2=0.5")};
    request.points.push_back({*reading, *turns});
    return {};
  }
  const ParsedQuantity parsed = parse_quantity(value, field.dimension);
  if (!parsed.quantity) return {refused("READING=VALUE", text, parsed.problem)};
  if (request.unit == nullptr) request.unit = parsed.quantity->unit;
  request.points.push_back({*reading, parsed.quantity->value});
  return {};
}

// What the dial would be in a plan; read back, so that the same rules hold.
Issues check_table(const CalibrationRequest& request, const std::string& text) {
  MachineDials read;
  Issues issues;
  const Result<Entry> document = read_document(text.substr(text.find("\n[machine")), "");
  if (!document.ok()) return document.issues();
  read_dials(*document.value().child("machine")->child("dials"), "", read, issues, [](const std::string&, int) {});
  for (Issue& issue : issues) issue.line = 0;
  if (issues.empty() && read.dials.count(request.dial) == 0)
    issues.push_back(refused(request.dial, "", "is no dial"));
  return issues;
}

Issues read_options(const CalibrateOptions& options, CalibrationRequest& request) {
  const FieldInfo* field = field_of_dial(options.dial);
  if (field == nullptr) {
    std::vector<std::string> names;
    for (const DialPlace& place : dial_places()) names.emplace_back(place.name);
    const std::string nearest = nearest_word(options.dial, names);
    return {refused("DIAL", options.dial,
                    nearest.empty() ? "is no dial" : fmt::format("is no dial; did you mean {}?", nearest),
                    fmt::format("{}", fmt::join(names, ", ")))};
  }
  request.dial = options.dial;
  request.given.unit = options.unit;
  request.given.law = options.inverse ? DialLaw::inverse : DialLaw::proportional;
  request.given.from_left = options.from_left;
  request.as_measured = options.points;
  if (options.step > 0.0) request.given.step = options.step;
  if (options.inverse && options.points)
    return {refused("--inverse", "", "is a law, and --points print what was measured; give one")};
  if (options.from_left && options.dial != "right_stop")
    return {refused("--from-left", "", "belongs to the dial right_stop")};
  if (!options.diameter.empty()) {
    if (options.dial != "tension") return {refused("--diameter", options.diameter, "belongs to the dial tension")};
    const ParsedQuantity parsed = parse_quantity(options.diameter, Dimension::length);
    if (!parsed.quantity) return {refused("--diameter", options.diameter, parsed.problem)};
    request.given.diameter_mm = parsed.quantity->value;
  }
  for (const std::string& each : options.readings) {
    if (Issues trouble = add_reading(each, *field, request); !trouble.empty()) return trouble;
  }
  return {};
}

int run(const CalibrateOptions& options) {
  CalibrationRequest request;
  Issues trouble = read_options(options, request);
  if (trouble.empty()) {
    const Result<Calibration> found = calibrate(request.points, request.given.law);
    trouble = found.issues();
    if (found.ok()) {
      const std::string text = calibration_text(request, found.value());
      trouble = check_table(request, text);
      if (trouble.empty()) return print(text) ? exit_done : exit_not_written;
    }
  }
  print_issues(trouble);
  return exit_command_line;
}

}  // namespace

void add_calibrate_command(CommandLine program, int& exit_code) {
  const CommandLine command = program.add_command("calibrate", "A dial of a machine, from two or three readings");
  const auto options = std::make_shared<CalibrateOptions>();
  command
      .add_option("DIAL", options->dial,
                  "What it sets: pitch, left_stop, right_stop, reversal, tension, line_speed, speed_ceiling")
      .type_name("")
      .required();
  command
      .add_option("READING=VALUE", options->readings,
                  "What the dial was set to, and what was measured then, two or more")
      .type_name("")
      .required();
  command.add_option("--unit", options->unit, "What the dial counts, in a word")
      .type_name("WORD")
      .capture_default_str();
  command.add_option("--step", options->step, "The dial is set to whole steps of this")
      .type_name("NUMBER")
      .check(number_between(1e-6, 1e6));
  command.add_flag("--inverse", options->inverse, "The value goes as one over the reading, like turns per inch");
  command.add_flag("--points", options->points, "Print the readings themselves in place of a line: for a clutch");
  command.add_option("--diameter", options->diameter, "Of a clutch: on what diameter the pull was measured")
      .type_name("LENGTH");
  command.add_flag("--from-left", options->from_left,
                   "Of the right stop: its place was measured from the left flange face");
  command.footer(
      "Prints how far each reading lies from the straight line (through two, or nearest to more by least squares), "
      "and the\n"
      "table for a catalogue's machine or for a plan. Measure with guards closed, on a slow line: mind the "
      "in-running nip.\n\n"
      "Examples:\n"
      "  laywright calibrate pitch 30=\"0.188 mm\" 60=\"0.374 mm\" 90=\"0.563 mm\" --unit teeth --step 1\n"
      "  laywright calibrate tension 0.1=\"0.7 N\" 0.2=\"1.7 N\" 0.3=\"3.2 N\" --unit A --points --diameter \"60 "
      "mm\"");
  command.callback([options, &exit_code] { exit_code = run(*options); });
}

}  // namespace laywright
