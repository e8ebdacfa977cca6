#include "session/order_work.h"

#include <filesystem>
#include <utility>

#include "session/advice.h"

namespace laywright {

namespace fs = std::filesystem;

OrderLaying order_laying(bool full, const WindPicture& picture) {
  OrderLaying how;
  if (!full) how.settings.fidelity = quick_fidelity;
  how.threads = advice_threads();
  how.draws_sheets = full;
  how.picture = picture;
  return how;
}

JobResult<std::size_t> write_order(const LaidOrder& laid, const std::string& folder, Progress& progress) {
  std::vector<fs::path> written;
  for (const std::string& name : batch_file_names(laid.batch)) written.push_back(fs::path(folder) / name);
  if (Issues lost = lost_sources(laid.batch, written); !lost.empty()) return lost;
  Result<FileSet> opened = FileSet::into(folder);
  if (!opened.ok()) return opened.issues();
  FileSet files = std::move(opened).value();
  Issues trouble = add_batch(files, laid.batch, laid.sheets, laid.drawn_on);
  if (progress.cancelled()) return Stopped{};
  if (trouble.empty()) trouble = files.commit();
  if (!trouble.empty()) return trouble;
  std::size_t bytes = 0;
  for (const fs::path& file : written) {
    std::error_code gone;
    const auto size = fs::file_size(file, gone);
    if (!gone) bytes += static_cast<std::size_t>(size);
  }
  return bytes;
}

}  // namespace laywright
