#include <filesystem>

#include <fmt/format.h>

#include "answers/batch_report.h"
#include "answers/batch_words.h"
#include "base/readable.h"
#include "figures/csv_field.h"
#include "plan/revision.h"

namespace laywright {
namespace {

std::string lengths(double net_mm, double leader_mm, double tail_mm, double samples_mm, double gross_mm) {
  return fmt::format("{},{},{},{},{}", field(net_mm / 1e3), field(leader_mm / 1e3), field(tail_mm / 1e3),
                     field(samples_mm / 1e3), field(gross_mm / 1e3));
}

}  // namespace

std::string batch_csv(const Batch& batch) {
  std::string csv =
      "spool,plan,revision,takes,net_m,leader_m,tail_m,samples_m,gross_m,splices,turns,time_s,fiber_kg,with_spool_"
      "kg,"
      "outer_diameter_mm,rim_clearance_mm,verdict,reason\n";
  const Order& order = batch.order;
  for (std::size_t i = 0; i < batch.spools.size(); ++i) {
    const BatchSpool& spool = batch.spools[i];
    const SpoolWind& wind = batch.winds[spool.wind];
    const std::string plan = std::filesystem::path(batch.kinds[spool.kind].path).filename().string();
    csv += fmt::format("{},{},{},{},{},{},{},{},{},{},{},{},{},{}\n", i + 1, quoted(valid_utf8(plan)),
                       revision_of(draft_of(batch, i)), quoted(taken_words(batch, spool)),
                       lengths(spool.net_mm, order.leader_mm, order.tail_mm, order.samples_mm(), spool.gross_mm),
                       spool.splices, field(wind.turns), field(wind.time_s), field(wind.fiber_mass_kg),
                       field(mass_with_spool_kg(batch, spool)), field(wind.outer_diameter_mm),
                       field(wind.rim_clearance_mm), name_of(wind.verdict.grade), quoted(wind.verdict.reason));
  }
  const BatchTotals totals = totals_of(batch);
  csv += fmt::format("total,,,,{},{},,{},{},,,,{},\n",
                     lengths(totals.net_mm, totals.leader_mm, totals.tail_mm, totals.samples_mm, totals.gross_mm),
                     totals.splices, field(totals.time_s), field(totals.fiber_mass_kg), name_of(totals.worst));
  return csv;
}

}  // namespace laywright
