// The files of an order over spools: the plan and the set-up sheet of each spool, and the batch as a table and on paper.
#pragma once

#include <mutex>
#include <string>
#include <vector>

#include "order/batch.h"
#include "paper/file_set.h"

namespace laywright {

// Always in the folder; the first one comes last.
inline constexpr const char* batch_table = "batch.csv";
inline constexpr const char* batch_sheet = "batch.pdf";

// In the order in which they are written.
[[nodiscard]] std::vector<std::string> batch_file_names(const Batch& batch);

// Draws the sheets of a wind's spools while the wind is at hand; builds of many winds would not fit into memory together.
class SpoolSheets {
 public:
  SpoolSheets(const Batch& batch, std::string drawn_on);

  // For wind_batch: of all spools that are wound so. One at a time, whatever the threads.
  [[nodiscard]] Issues draw(std::size_t wind, const LaidWind& laid, Progress& progress);

  // All files. Precondition: each wind was drawn.
  [[nodiscard]] Issues add_to(FileSet& files) const;

 private:
  const Batch& batch_;
  std::string drawn_on_;
  std::mutex drawing_;
  std::vector<std::string> sheets_;  // of each spool, as PDF
};

}  // namespace laywright
