#include "answers/batch_rows.h"

#include <filesystem>

#include <fmt/format.h>

#include "answers/batch_words.h"
#include "base/readable.h"
#include "figures/figures.h"
#include "verdict/verdict_words.h"

namespace laywright {
namespace {

std::string length_of(double mm, bool inch) { return figure_in(Amount::fiber_length, mm / 1e3, 2, inch); }
std::string mass_of(const std::optional<double>& kg, bool inch) {
  return kg ? figure_in(Amount::mass, *kg, 3, inch) : "not known";
}

}  // namespace

BatchRow spool_row(const Batch& batch, std::size_t index, bool inch) {
  const BatchSpool& spool = batch.spools[index];
  const SpoolWind& wind = batch.winds[spool.wind];
  const std::string plan = visible(std::filesystem::path(batch.kinds[spool.kind].path).filename().string());
  BatchRow row;
  row.spool = fmt::format("{}", index + 1);
  row.net = length_of(spool.net_mm, inch);
  row.gross = length_of(spool.gross_mm, inch);
  row.splices = fmt::format("{}", spool.splices);
  row.time = time_words(wind.time_s);
  row.fiber = mass_of(wind.fiber_mass_kg, inch);
  row.turns = figure(wind.turns, 1);
  row.diameter = figure_in(Amount::small_length, wind.outer_diameter_mm, 3, inch);
  row.clearance = figure_in(Amount::small_length, wind.rim_clearance_mm, 2, inch);
  row.grade = wind.verdict.grade;
  row.verdict = name_of(row.grade);
  row.takes = fmt::format("{}: {}", plan, taken_words(batch, spool, inch));
  row.reason = verdict_line(wind.verdict);
  return row;
}

BatchRow total_row(const Batch& batch, bool inch) {
  const BatchTotals totals = totals_of(batch);
  BatchRow row;
  row.spool = "total";
  row.net = length_of(totals.net_mm, inch);
  row.gross = length_of(totals.gross_mm, inch);
  row.splices = fmt::format("{}", totals.splices);
  row.time = time_words(totals.time_s);
  row.fiber = mass_of(totals.fiber_mass_kg, inch);
  row.grade = totals.worst;
  row.verdict = name_of(row.grade);
  return row;
}

BatchRow batch_units(bool inch) {
  BatchRow row;
  row.net = row.gross = unit_in(Amount::fiber_length, inch);
  row.fiber = unit_in(Amount::mass, inch);
  row.diameter = row.clearance = unit_in(Amount::small_length, inch);
  return row;
}

}  // namespace laywright
