// The share page of a build, on its way into a file.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>

#include "base/issue.h"
#include "base/progress.h"
#include "workbench/worker.h"
#include "workbench/wound.h"

namespace laywright {

// Of what a page is made: the plan as it stands, whose title and notes may be newer than the build.
struct PageOrder {
  std::function<std::string()> plan_text;
  Plan plan;
  WoundPtr wound;  // full
};

// Gives the page's bytes, or nothing once the progress is cancelled. It is called on a thread of its own.
using MakePage = std::function<std::string(const PageOrder&, Progress&)>;

struct PageSaving {
  std::string path;
  double share = 0.0;             // done, 0 to 1
  std::optional<Issues> outcome;  // none while it is being made and written
  bool stopped = false;           // nothing was written
  std::size_t bytes = 0;          // that were written
};

// By its ending: .html or .htm, in letters of any size.
[[nodiscard]] bool is_page_file(const std::string& path);

// Makes and writes one page at a time.
class PageWriter {
 public:
  // Its end waits for a page that is being made: a person who leaves has asked for it.

  // Precondition: nothing is being made. `wake` is called from another thread when it is over.
  void start(PageOrder order, std::string path, MakePage make, std::function<void()> wake);
  // Asks for an end soon; what is on its way to the disk is still written.
  void stop();

  // The last one; none: there was none.
  [[nodiscard]] std::optional<PageSaving> saving() const;
  [[nodiscard]] bool busy() const;
  void forget();  // what is over

 private:
  struct Job;
  std::shared_ptr<Job> job_;
  Worker worker_;
};

}  // namespace laywright
