// What the window shows, as JSON: for tests that drive it from outside.
#pragma once

#include <string>
#include <vector>

#include "paint/painter.h"
#include "ui/panel_state.h"

namespace laywright {

struct DesktopTimes {
  double first_frame_ms = 0.0;    // from the start of the program to the first frame with its panels
  double first_picture_ms = 0.0;  // to the first that shows a build; 0: none yet
  double longest_turn_ms = 0.0;   // of the loop, without waiting, since the first picture
  double last_turn_ms = 0.0;
  std::uint64_t frames = 0, pictures = 0;
  std::uint64_t inputs = 0;      // that these frames know of: WindowNews::inputs
  std::vector<double> turns_ms;  // of the last turns, the newest last
  Painter::Times painter;
  bool painted = false;  // the picture is as fine as it gets
  bool rests = false;    // no further frame is due: nothing moves before the next input or news
};

[[nodiscard]] std::string state_json(const Workbench& bench, const PanelState& panels, const Shown& shown,
                                     const DesktopTimes& times);

}  // namespace laywright
