#include "workbench/page_saving.h"

#include <exception>
#include <mutex>
#include <new>
#include <utility>

#include "base/atomic_file.h"
#include "base/spelling.h"

namespace laywright {
namespace {

// The rest is writing.
constexpr double making = 0.95;

Issue trouble(const std::string& path, std::string what) {
  Issue issue;
  issue.file = path;
  issue.what = std::move(what);
  return issue;
}

}  // namespace

struct PageWriter::Job {
  Job(PageOrder o, std::string p, MakePage m) : order(std::move(o)), path(std::move(p)), make(std::move(m)) {}

  PageOrder order;
  std::string path;
  MakePage make;
  Progress progress;
  std::mutex mutex;
  std::optional<PageSaving> over;

  // As a whole or not at all.
  [[nodiscard]] PageSaving run() {
    PageSaving saving{path, 1.0, Issues{}, false, 0};
    try {
      const std::string page = make(order, progress);
      saving.stopped = progress.cancelled();
      if (saving.stopped) return saving;
      saving.outcome = write_file_atomically(path, page);
      saving.bytes = page.size();
    } catch (const std::bad_alloc&) {
      saving.outcome = Issues{trouble(path, "there is too little memory for the page")};
    } catch (const std::exception& error) {
      saving.outcome = Issues{trouble(path, error.what())};
    }
    return saving;
  }
};

bool is_page_file(const std::string& path) {
  const std::string ending = ending_of(path);
  return ending == ".html" || ending == ".htm";
}

void PageWriter::start(PageOrder order, std::string path, MakePage make, std::function<void()> wake) {
  job_ = std::make_shared<Job>(std::move(order), std::move(path), std::move(make));
  worker_.run([job = job_, wake = std::move(wake)] {
    PageSaving saving = job->run();
    {
      const std::lock_guard lock(job->mutex);
      job->over = std::move(saving);
      job->order.wound.reset();  // a build is large
    }
    wake();
  });
}

void PageWriter::stop() {
  if (job_) job_->progress.cancel();
}

std::optional<PageSaving> PageWriter::saving() const {
  if (!job_) return std::nullopt;
  const std::lock_guard lock(job_->mutex);
  if (job_->over) return job_->over;
  return PageSaving{job_->path, making * job_->progress.share(), std::nullopt, false, 0};
}

bool PageWriter::busy() const {
  const std::optional<PageSaving> now = saving();
  return now && !now->outcome;
}

void PageWriter::forget() {
  if (!busy()) job_.reset();
}

}  // namespace laywright
