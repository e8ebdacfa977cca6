// Files on their way: made and written in the background, as a whole or not at all.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>

#include "base/progress.h"
#include "base/result.h"
#include "jobs/latest_job.h"

namespace laywright {

struct FileSaving {
  std::string path;               // of the file, or of the folder of a set
  double share = 0.0;             // done, 0 to 1
  std::optional<Issues> outcome;  // none while it is being made and written; empty: it was
  bool stopped = false;           // nothing was written
  std::size_t bytes = 0;          // that were written
};

// Makes the file's bytes, on another thread. What it gives once the progress is cancelled is not written.
using MakeFile = std::function<Result<std::string>(Progress&)>;

// Makes and writes a set of files by itself, on another thread: all of them or none. Gives the bytes that were written.
using WriteFiles = std::function<JobResult<std::size_t>(Progress&)>;

// Makes and writes one file, or one set, at a time. One thread uses it.
class FileWriter {
 public:
  // `what` stands in the words of a trouble: "the share page".
  explicit FileWriter(std::string what) : job_(std::move(what)) {}
  // Waits for a file that is being made: a person who leaves has asked for it.
  ~FileWriter() { job_.wait(); }
  FileWriter(const FileWriter&) = delete;
  FileWriter& operator=(const FileWriter&) = delete;

  // Precondition: nothing is being made. `wake` is called from another thread when it is over.
  void start(std::string path, MakeFile make, std::function<void()> wake);
  // The same of a set, into that folder.
  void start_set(std::string folder, WriteFiles write, std::function<void()> wake);
  // Asks for an end soon; what is on its way to the disk is still written.
  void stop() { job_.ask_to_stop(); }

  // True if it has come to its end since the last call.
  bool poll();

  // The last one, as of the last poll(); none: there was none.
  [[nodiscard]] std::optional<FileSaving> saving() const;
  [[nodiscard]] bool busy() const { return job_.busy(); }
  // The last one is over, and was written.
  [[nodiscard]] bool wrote() const {
    return saving_ && saving_->outcome && saving_->outcome->empty() && !saving_->stopped;
  }
  void forget();  // what is over

 private:
  std::optional<FileSaving> saving_;
  LatestJob<std::size_t> job_;  // bytes that were written
};

}  // namespace laywright
