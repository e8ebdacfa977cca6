// The options of `laywright export`, and which of them mean something for which kind of file.
#pragma once

#include <optional>
#include <string>

#include "app/command_line.h"
#include "app/picture_view.h"
#include "base/result.h"
#include "export/thinned_line.h"
#include "lay/lay.h"

namespace laywright {

enum class ExportKind : unsigned {
  glb = 1,
  vtp = 2,
  csv = 4,
  section_svg = 8,
  section_png = 16,
  map_svg = 32,
  map_png = 64,
  turntable = 128,
  fill = 256,
};

struct ExportOptions {
  std::string plan, file, frames_folder, show;
  LaySettings settings;
  PictureView view;
  std::optional<int> sides;
  bool floats = false;
  std::string tolerance;  // a length
  std::optional<double> at_most_mb;
  double angle_deg = 0.0, dots_per_inch = 200.0;
  double frames_per_second = 20.0, seconds = 6.0, quality = 80.0;
};

void add_export_options(CommandLine command, ExportOptions& options);

// What is to be made: from the file's ending and --show. Issues: no such kind, or options that say nothing of it.
[[nodiscard]] Result<ExportKind> export_kind(const CommandLine& command, const ExportOptions& options);

// The layers of --layers. An issue where the wind has not so many.
[[nodiscard]] Result<LayerRange> layers_from(const ExportOptions& options, std::size_t layers_of_wind);

// The length of --tolerance, mm.
[[nodiscard]] std::optional<double> tolerance_mm(const ExportOptions& options);

}  // namespace laywright
