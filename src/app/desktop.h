// The desktop program: a window with its panels and pictures, around a workbench.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "store/catalogues.h"

namespace laywright {

struct DesktopOptions {
  std::vector<std::string> plans;                       // empty: the last that was open, or the sample
  std::string state_file;                               // empty: none is written
  std::shared_ptr<const Catalogues> entries = nullptr;  // of catalogues
  std::string size;                                     // "1280x800"; empty: as remembered
};

// Runs until the window is closed; an exit code. Without a display or OpenGL it says so on standard error.
[[nodiscard]] int run_desktop(const DesktopOptions& options);

}  // namespace laywright
