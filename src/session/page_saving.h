// The share page of a build, as a file that is saved.
#pragma once

#include <functional>
#include <string>

#include "base/progress.h"
#include "desk/wound.h"
#include "session/file_saving.h"

namespace laywright {

// Of what a page is made: the plan as it stands, whose title and notes may be newer than the build.
struct PageOrder {
  std::function<std::string()> plan_text;
  Plan plan;
  WoundPtr wound;  // full
};

// Gives the page's bytes, or nothing once the progress is cancelled. It is called on a thread of its own.
using MakePage = std::function<std::string(const PageOrder&, Progress&)>;

// By its ending: .html or .htm, in letters of any size.
[[nodiscard]] bool is_page_file(const std::string& path);

// The page's bytes, for a FileWriter.
[[nodiscard]] MakeFile page_maker(PageOrder order, MakePage make);

}  // namespace laywright
