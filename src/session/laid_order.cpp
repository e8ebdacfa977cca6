#include "session/laid_order.h"

#include <filesystem>
#include <utility>

#include "base/today.h"
#include "session/advice.h"

namespace laywright {
namespace {

namespace fs = std::filesystem;

// Of the way, finding out how much fits: it is laid up to the rim, farther than most winds go.
constexpr double filling = 0.5;

}  // namespace

JobResult<LaidOrder> lay_order(const Order& order, std::vector<SpoolKind> kinds, bool full,
                               const WindPicture& picture, Progress& progress) {
  LaySettings settings;
  if (!full) settings.fidelity = quick_fidelity;
  LaidOrder laid;
  laid.full = full;
  laid.drawn_on = today();
  Issues trouble = find_room(order, kinds, settings, advice_threads(), {progress, 0.0, filling});
  if (progress.cancelled()) return Stopped{};
  if (trouble.empty()) {
    Result<Batch> placed = batch_of(order, kinds);
    trouble = placed.issues();
    if (placed.ok()) laid.batch = std::move(placed).value();
  }
  if (!trouble.empty()) {
    laid.batch.order = order;
    laid.batch.kinds = std::move(kinds);
    laid.not_placed = std::move(trouble);
    return laid;
  }
  SpoolSheets sheets(laid.batch, picture, laid.drawn_on);
  EachWind each;
  if (full)
    each = [&](std::size_t wind, const LaidWind& wound, Progress& own) { return sheets.draw(wind, wound, own); };
  trouble = wind_batch(laid.batch, settings, advice_threads(), {progress, filling, 1.0}, each);
  if (progress.cancelled()) return Stopped{};
  if (!trouble.empty()) return trouble;
  laid.sheets = sheets.sheets();
  return laid;
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
