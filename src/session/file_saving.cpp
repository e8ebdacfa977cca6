#include "session/file_saving.h"

#include <utility>

#include "base/atomic_file.h"

namespace laywright {
namespace {

// The rest is writing.
constexpr double making = 0.95;

JobResult<std::size_t> make_and_write(const std::string& path, const MakeFile& make, Progress& progress) {
  const Result<std::string> bytes = make(progress);
  if (progress.cancelled()) return Stopped{};
  if (!bytes) return bytes.issues();
  if (Issues trouble = write_file_atomically(path, bytes.value()); !trouble.empty()) return trouble;
  return bytes.value().size();
}

}  // namespace

void FileWriter::start(std::string path, MakeFile make, std::function<void()> wake) {
  start_set(
      path, [path, make = std::move(make)](Progress& progress) { return make_and_write(path, make, progress); },
      std::move(wake));
}

void FileWriter::start_set(std::string folder, WriteFiles write, std::function<void()> wake) {
  saving_ = FileSaving{std::move(folder), 0.0, std::nullopt, false, 0};
  job_.ask(std::move(write), std::move(wake));
}

bool FileWriter::poll() {
  std::optional<JobResult<std::size_t>> ended = job_.take();
  if (!ended) return false;
  saving_->share = 1.0;
  saving_->outcome = ended->trouble();
  saving_->stopped = ended->stopped();
  if (ended->done()) saving_->bytes = ended->value();
  return true;
}

std::optional<FileSaving> FileWriter::saving() const {
  std::optional<FileSaving> now = saving_;
  if (busy()) now->share = making * job_.share();
  return now;
}

void FileWriter::forget() {
  if (!busy()) saving_.reset();
}

}  // namespace laywright
