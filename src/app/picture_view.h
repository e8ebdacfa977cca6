// The options of `laywright picture` that say what is seen, and the view that they give.
#pragma once

#include <optional>
#include <string>

#include "app/command_line.h"
#include "base/result.h"
#include "scene/scene_source.h"

namespace laywright {

struct PictureView {
  std::string size = "1600x900";
  std::string name = "front";
  std::optional<double> azimuth_deg, elevation_deg;
  double zoom = 1.0;
  std::string look_at;  // "X:ANGLE"
  std::string cut, across, layers, until;
  std::optional<double> section_deg;
  std::string
      colouring;  // empty: layers where a cut or a choice of them shows some, or findings are marked; else material
  std::optional<int> finding;
  bool findings = false, faded = false, see_through = false, no_figures = false, guide = false, dark = false,
       inch = false;
  bool parallel = false;
};

void add_view_options(CommandLine command, PictureView& options);

// The view of this build. What an option asks for and the build has not (a layer, a finding) is an issue.
[[nodiscard]] Result<View> view_from(const PictureView& options, const SceneSource& source);

}  // namespace laywright
