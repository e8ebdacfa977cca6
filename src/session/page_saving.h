// The share page of a build, as a file that is saved.
#pragma once

#include <functional>
#include <string>

#include "base/progress.h"
#include "desk/wound.h"
#include "session/file_saving.h"
#include "session/page_choices.h"

namespace laywright {

// Of what a page is made: the plan as it stands, whose title and notes may be newer than the build.
struct PageOrder {
  std::function<std::string()> plan_text;
  Plan plan;
  WoundPtr wound;  // full
  PageChoices choices{};
};

// Gives the page's bytes, nothing once the progress is cancelled, or why there is no page. It is called on a thread of its own.
using MakePage = std::function<Result<std::string>(const PageOrder&, Progress&)>;

// By its ending: .html or .htm, in letters of any size.
[[nodiscard]] bool is_page_file(const std::string& path);

// The page's bytes, for a FileWriter.
[[nodiscard]] MakeFile page_maker(PageOrder order, MakePage make);

}  // namespace laywright
