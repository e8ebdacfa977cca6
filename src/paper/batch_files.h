// The files of an order over spools: the plan and the set-up sheet of each spool, and the batch as a table and on paper.
#pragma once

#include <filesystem>
#include <functional>
#include <mutex>
#include <string>
#include <vector>

#include "order/batch.h"
#include "paper/drawing.h"
#include "paper/file_set.h"

namespace laywright {

// Always in the folder; the first one comes last.
inline constexpr const char* batch_table = "batch.csv";
inline constexpr const char* batch_sheet = "batch.pdf";

// "spool-2.lay.toml": the plan of that spool.
[[nodiscard]] std::string batch_plan(const Batch& batch, std::size_t spool);

// In the order in which they are written.
[[nodiscard]] std::vector<std::string> batch_file_names(const Batch& batch);

// One issue for each of these files that would take the place of the order or of a plan that it was made from; "." and links
// do not hide one.
[[nodiscard]] Issues lost_sources(const Batch& batch, const std::vector<std::filesystem::path>& written);

// Draws a wind for its sheets. Without pixels where nothing can be drawn, or once the progress is cancelled.
using WindPicture = std::function<Bitmap(const LaidWind&, Progress&)>;

// Draws the sheets of a wind's spools while the wind is at hand; builds of many winds would not fit into memory together.
class SpoolSheets {
 public:
  // Without a picture the sheets have none.
  SpoolSheets(const Batch& batch, WindPicture picture, std::string drawn_on);

  // For wind_batch: of all spools that are wound so. One at a time, whatever the threads.
  [[nodiscard]] Issues draw(std::size_t wind, const LaidWind& laid, Progress& progress);

  // Of each spool, as PDF; empty where its wind was not drawn.
  [[nodiscard]] const std::vector<std::string>& sheets() const { return sheets_; }

 private:
  const Batch& batch_;
  WindPicture picture_;
  std::string drawn_on_;
  std::mutex drawing_;
  std::vector<std::string> sheets_;
};

// Adds all files. `sheets` as SpoolSheets has them. Returns no issues, or why a file cannot be written.
[[nodiscard]] Issues add_batch(FileSet& files, const Batch& batch, const std::vector<std::string>& sheets,
                               const std::string& drawn_on);

}  // namespace laywright
