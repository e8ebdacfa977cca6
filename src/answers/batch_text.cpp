#include <fmt/format.h>

#include "answers/batch_report.h"
#include "answers/batch_rows.h"
#include "answers/batch_words.h"
#include "base/readable.h"
#include "base/spelling.h"
#include "figures/figures.h"

namespace laywright {
namespace {

std::string line(const BatchRow& row) {
  std::string text =
      fmt::format("  {:<6} {:>12} {:>12} {:>7} {:>11} {:>8} {:>10} {:>9}  {}", row.spool, row.net, row.gross,
                  row.splices, row.time, row.fiber, row.diameter, row.clearance, row.verdict);
  text.erase(text.find_last_not_of(' ') + 1);
  return text + '\n';
}

BatchRow heads() {
  BatchRow row;
  row.spool = "spool";
  row.net = "net";
  row.gross = "gross";
  row.splices = "splices";
  row.time = "time";
  row.fiber = "fiber";
  row.diameter = "diameter";
  row.clearance = "clearance";
  row.verdict = "verdict";
  return row;
}

}  // namespace

std::string batch_text(const Batch& batch) {
  std::string text = capitalised(order_name(batch.order)) + '\n';
  if (!batch.order.title.empty()) text += visible(batch.order.title) + '\n';
  text += paragraph(batch_line(batch) + ".", 0) + '\n' + paragraph(besides_words(batch.order), 2);
  for (const SpoolKind& kind : batch.kinds) text += paragraph(room_words(kind), 2);
  text += '\n' + line(heads()) + line(batch_units());
  for (std::size_t i = 0; i < batch.spools.size(); ++i) {
    const BatchRow row = spool_row(batch, i);
    text += line(row) + paragraph(row.takes, 6) + paragraph(row.reason, 6);
  }
  text += line(total_row(batch));
  return text + '\n' + paragraph(estimate_words(batch), 2);
}

}  // namespace laywright
