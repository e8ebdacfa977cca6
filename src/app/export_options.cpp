#include "app/export_options.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <filesystem>
#include <string_view>

#include <fmt/format.h>

#include "app/export_animation.h"
#include "app/number_option.h"
#include "app/ranges.h"
#include "app/wind_options.h"
#include "app/written_files.h"
#include "base/quantity.h"
#include "base/quantity_text.h"
#include "base/spelling.h"

namespace laywright {
namespace {

constexpr unsigned bit(ExportKind kind) { return static_cast<unsigned>(kind); }

constexpr unsigned moving = bit(ExportKind::turntable) | bit(ExportKind::fill);
constexpr unsigned maps = bit(ExportKind::map_svg) | bit(ExportKind::map_png);
constexpr unsigned sections = bit(ExportKind::section_svg) | bit(ExportKind::section_png);
constexpr unsigned pixels = bit(ExportKind::section_png) | bit(ExportKind::map_png);
constexpr unsigned solid = bit(ExportKind::glb), lines = bit(ExportKind::vtp), table = bit(ExportKind::csv);
constexpr unsigned everything = ~0U;

struct Use {
  const char* option;
  unsigned kinds;
};
// What is not named here (camera, cuts, size) is of moving pictures.
constexpr std::array uses{
    Use{"PLAN", everything},
    Use{"--output", everything},
    Use{"--show", everything},
    Use{"--seed", everything},
    Use{"--fidelity", everything},
    Use{"--sides", solid},
    Use{"--floats", solid},
    Use{"--tolerance", solid | lines},
    Use{"--at-most", solid | lines | table},
    Use{"--layers", solid | lines | table | maps | moving},
    Use{"--see-through", solid | moving},
    Use{"--until", maps | moving},
    Use{"--colour", maps | moving},
    Use{"--inch", maps | moving},
    Use{"--angle", sections},
    Use{"--dpi", pixels},
};

struct Named {
  const char* ending;
  const char* show;
  ExportKind kind;
};
// The first of an ending is what it means without --show.
constexpr std::array kinds{
    Named{".glb", "", ExportKind::glb},
    Named{".vtp", "", ExportKind::vtp},
    Named{".csv", "", ExportKind::csv},
    Named{".svg", "section", ExportKind::section_svg},
    Named{".png", "section", ExportKind::section_png},
    Named{".svg", "map", ExportKind::map_svg},
    Named{".png", "map", ExportKind::map_png},
    Named{".webp", "turntable", ExportKind::turntable},
    Named{".webp", "fill", ExportKind::fill},
};

Issue wrong(const char* option, const std::string& value, const std::string& what) {
  Issue issue;
  issue.key = option;
  issue.value = value;
  issue.what = what;
  return issue;
}

std::vector<std::string> endings() {
  std::vector<std::string> all;
  for (const Named& kind : kinds) {
    if (std::find(all.begin(), all.end(), kind.ending) == all.end()) all.emplace_back(kind.ending);
  }
  return all;
}

// The ending is one of them.
Result<ExportKind> kind_of(const std::string& ending, const ExportOptions& options) {
  const auto named = std::find_if(kinds.begin(), kinds.end(), [&](const Named& kind) {
    return ending == kind.ending && (options.show.empty() || options.show == kind.show);
  });
  if (named != kinds.end()) return named->kind;
  std::string shows;
  for (const Named& kind : kinds) {
    if (ending == kind.ending && *kind.show != '\0') shows += (shows.empty() ? "" : " or ") + std::string(kind.show);
  }
  if (shows.empty()) return wrong("--show", options.show, fmt::format("a {} file is always the same", ending));
  return wrong("--show", options.show, fmt::format("a {} file shows {}", ending, shows));
}

std::string check_length(const std::string& text) {
  const ParsedQuantity length = parse_quantity(text, Dimension::length);
  if (!length.quantity || !(length.quantity->value >= 0.0)) return "a length with its unit is due, like \"0.05 mm\"";
  return "";
}

void add_model_options(CommandLine command, ExportOptions& options) {
  const char* const group = "Models and tables (.glb, .vtp, .csv)";
  command.add_option("--sides", options.sides, "Sides of the fiber's tube in a .glb, 3 to 32")
      .type_name("N")
      .check(number_between(3, 32))
      .group(group);
  command
      .add_flag("--floats", options.floats,
                "A .glb with 32-bit numbers, twice as large, for programs that do not read KHR_mesh_quantization")
      .group(group);
  command
      .add_option("--tolerance", options.tolerance,
                  "How far lines (.vtp) or the tube (.glb) may lie off the fiber, like \"0.05 mm\"")
      .type_name("LENGTH")
      .check(check_length)
      .group(group);
  command
      .add_option("--at-most", options.at_most_mb,
                  "Size of the file in megabytes: 50 for a .glb, which is made coarser to fit, 1000 for others")
      .type_name("MB")
      .check(number_between(0.1, 100000.0))
      .group(group);
}

void add_drawing_options(CommandLine command, ExportOptions& options) {
  const char* const group = "Drawings (.svg, .png)";
  command.add_option("--angle", options.angle_deg, "Spool angle of the section, in degrees")
      .type_name("DEG")
      .check(number_between(-360.0, 360.0))
      .capture_default_str()
      .group(group);
  command.add_option("--dpi", options.dots_per_inch, "Dots per inch of a .png, 50 to 1200")
      .type_name("N")
      .check(number_between(50.0, 1200.0))
      .capture_default_str()
      .group(group);
}

CommandOption add_animation_options(CommandLine command, ExportOptions& options) {
  const char* const group = "Moving pictures (.webp, --frames)";
  const CommandOption frames =
      command
          .add_option("--frames", options.frames_folder, "Also, or instead, each frame as a PNG file in this folder")
          .type_name("DIR")
          .group(group);
  command.add_option("--fps", options.frames_per_second, "Frames per second, 1 to 60")
      .type_name("N")
      .check(number_between(1.0, 60.0))
      .capture_default_str()
      .group(group);
  command.add_option("--seconds", options.seconds, "How long it lasts, 0.5 to 60")
      .type_name("S")
      .check(number_between(0.5, 60.0))
      .capture_default_str()
      .group(group);
  command.add_option("--quality", options.quality, "Of a .webp, 0 to 100; 100 is without loss")
      .type_name("Q")
      .check(number_between(0.0, 100.0))
      .capture_default_str()
      .group(group);
  return frames;
}

}  // namespace

void add_export_options(CommandLine command, ExportOptions& options) {
  const CommandOption plan =
      command.add_option("PLAN", options.plan, "The lay plan, *.lay.toml").type_name("").required();
  const CommandOption file =
      command.add_option("-o,--output", options.file, "The file; its ending says what is made").type_name("FILE");
  command
      .add_option("--show", options.show,
                  "section or map in a .svg or .png; turntable or fill in a .webp. The first by default")
      .type_name("WHAT")
      .check(one_of({"section", "map", "turntable", "fill"}));
  add_wind_options(command, options.settings, "Wind");
  add_model_options(command, options);
  add_drawing_options(command, options);
  const CommandOption frames = add_animation_options(command, options);
  options.view.size = "960x540";
  add_view_options(command, options.view);
  guard_inputs(command, {plan},
               {{file, endings(), true}, {frames, {}, false, [&options] { return names_of_frames(options); }}});
}

Result<ExportKind> export_kind(const CommandLine& command, const ExportOptions& options) {
  if (options.file.empty() && options.frames_folder.empty())
    return wrong("--output", "", "say with -o FILE what is to be made, or with --frames DIR where frames go");
  const Result<ExportKind> kind = kind_of(options.file.empty() ? ".webp" : ending_of(options.file), options);
  if (!kind.ok()) return kind;
  for (CommandOption option : command.options()) {
    if (!option.given()) continue;
    const std::string name = option.name();
    const auto use = std::find_if(uses.begin(), uses.end(), [&](const Use& entry) { return name == entry.option; });
    const unsigned meant = use == uses.end() ? moving : use->kinds;
    if ((meant & bit(kind.value())) != 0) continue;
    const std::string what = meant == moving ? "it is for moving pictures (.webp, --frames)"
                                             : "it says nothing of such a file; see `laywright export --help`";
    return wrong(option.name().c_str(), options.file, what);
  }
  return kind;
}

Result<LayerRange> layers_from(const ExportOptions& options, std::size_t layers_of_wind) {
  LayerRange range;
  const auto chosen = read_pair<int>(options.view.layers, ':');
  if (!chosen) return range;
  if (static_cast<std::size_t>(chosen->first) > layers_of_wind)
    return wrong("--layers", options.view.layers, "this wind has " + counted(layers_of_wind, "layer"));
  range.first = chosen->first;
  range.last = chosen->second;
  return range;
}

std::optional<double> tolerance_mm(const ExportOptions& options) {
  if (options.tolerance.empty()) return std::nullopt;
  return parse_quantity(options.tolerance, Dimension::length).quantity->value;
}

}  // namespace laywright
