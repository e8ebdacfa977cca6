#include "answers/batch_rows.h"

#include <filesystem>

#include <fmt/format.h>

#include "answers/batch_words.h"
#include "base/readable.h"
#include "base/spelling.h"
#include "figures/figures.h"

namespace laywright {
namespace {

std::string metres(double mm) { return figure(mm / 1e3, 2); }
std::string kilograms(const std::optional<double>& kg) { return kg ? figure(*kg, 3) : "not known"; }

}  // namespace

BatchRow spool_row(const Batch& batch, std::size_t index) {
  const BatchSpool& spool = batch.spools[index];
  const SpoolWind& wind = batch.winds[spool.wind];
  const std::string plan = visible(std::filesystem::path(batch.kinds[spool.kind].path).filename().string());
  BatchRow row;
  row.spool = fmt::format("{}", index + 1);
  row.net = metres(spool.net_mm);
  row.gross = metres(spool.gross_mm);
  row.splices = fmt::format("{}", spool.splices);
  row.time = time_words(wind.time_s);
  row.fiber = kilograms(wind.fiber_mass_kg);
  row.turns = figure(wind.turns, 1);
  row.diameter = figure(wind.outer_diameter_mm, 3);
  row.clearance = figure(wind.rim_clearance_mm, 2);
  row.grade = wind.verdict.grade;
  row.verdict = name_of(row.grade);
  row.takes = fmt::format("{}: {}", plan, taken_words(batch, spool));
  row.reason = capitalised(wind.verdict.reason) + ".";
  return row;
}

BatchRow total_row(const Batch& batch) {
  const BatchTotals totals = totals_of(batch);
  BatchRow row;
  row.spool = "total";
  row.net = metres(totals.net_mm);
  row.gross = metres(totals.gross_mm);
  row.splices = fmt::format("{}", totals.splices);
  row.time = time_words(totals.time_s);
  row.fiber = kilograms(totals.fiber_mass_kg);
  row.grade = totals.worst;
  row.verdict = name_of(row.grade);
  return row;
}

}  // namespace laywright
