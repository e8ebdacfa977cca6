#include <filesystem>

#include <fmt/format.h>

#include "answers/batch_report.h"
#include "answers/batch_words.h"
#include "base/readable.h"
#include "base/spelling.h"
#include "figures/figures.h"

namespace laywright {
namespace {

constexpr std::size_t columns = 96;

std::string row(const std::string& spool, const std::string& net, const std::string& gross,
                const std::string& splices, const std::string& time, const std::string& mass,
                const std::string& diameter, const std::string& clearance, const std::string& verdict) {
  std::string line = fmt::format("  {:<6} {:>12} {:>12} {:>7} {:>11} {:>8} {:>10} {:>9}  {}", spool, net, gross,
                                 splices, time, mass, diameter, clearance, verdict);
  line.erase(line.find_last_not_of(' ') + 1);
  return line + '\n';
}

std::string metres(double mm) { return figure(mm / 1e3, 2); }
std::string kilograms(const std::optional<double>& kg) { return kg ? figure(*kg, 3) : "not known"; }

std::string spool_rows(const Batch& batch, std::size_t index) {
  const BatchSpool& spool = batch.spools[index];
  const SpoolWind& wind = batch.winds[spool.wind];
  std::string text =
      row(fmt::format("{}", index + 1), metres(spool.net_mm), metres(spool.gross_mm),
          fmt::format("{}", spool.splices), time_words(wind.time_s), kilograms(wind.fiber_mass_kg),
          figure(wind.outer_diameter_mm, 3), figure(wind.rim_clearance_mm, 2), name_of(wind.verdict.grade));
  const std::string plan = visible(std::filesystem::path(batch.kinds[spool.kind].path).filename().string());
  return text + wrapped(fmt::format("{}: {}", plan, taken_words(batch, spool)), columns, 6) +
         wrapped(capitalised(wind.verdict.reason) + ".", columns, 6);
}

}  // namespace

std::string batch_text(const Batch& batch) {
  const BatchTotals totals = totals_of(batch);
  std::string text = capitalised(order_name(batch.order)) + '\n';
  if (!batch.order.title.empty()) text += visible(batch.order.title) + '\n';
  text += wrapped(batch_line(batch) + ".", columns, 0) + '\n' + wrapped(besides_words(batch.order), columns, 2);
  for (const SpoolKind& kind : batch.kinds) text += wrapped(room_words(kind), columns, 2);
  text += '\n' + row("spool", "net", "gross", "splices", "time", "fiber", "diameter", "clearance", "verdict") +
          row("", "m", "m", "", "", "kg", "mm", "mm", "");
  for (std::size_t i = 0; i < batch.spools.size(); ++i) text += spool_rows(batch, i);
  text += row("total", metres(totals.net_mm), metres(totals.gross_mm), fmt::format("{}", totals.splices),
              time_words(totals.time_s), kilograms(totals.fiber_mass_kg), "", "", name_of(totals.worst));
  return text + '\n' + wrapped(estimate_words(batch), columns, 2);
}

}  // namespace laywright
