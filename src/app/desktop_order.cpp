#include "app/desktop_order.h"

#include "answers/batch_rows.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

Json issues_json(const Issues& issues) {
  Json all = Json::array();
  for (const Issue& issue : issues)
    all.push_back({{"file", issue.file}, {"line", issue.line}, {"key", issue.key}, {"what", issue.what}});
  return all;
}

Json row_json(const BatchRow& row) {
  return {{"takes", row.takes},     {"net", row.net},           {"gross", row.gross},
          {"turns", row.turns},     {"diameter", row.diameter}, {"clearance", row.clearance},
          {"verdict", row.verdict}, {"reason", row.reason},     {"time", row.time}};
}

}  // namespace

Json saving_json(const FileSaving& saving) {
  return {{"path", saving.path},
          {"share", saving.share},
          {"done", saving.outcome.has_value()},
          {"stopped", saving.stopped},
          {"trouble", saving.outcome && !saving.outcome->empty() ? saving.outcome->front().what : ""}};
}

Json order_json(const OpenOrder& open, bool inch) {
  const InquiryStatus status = open.status();
  Json spools = Json::array(), total = nullptr;
  const LaidOrder* laid = open.laid().get();
  if (laid != nullptr && laid->not_placed.empty()) {
    for (std::size_t i = 0; i < laid->batch.spools.size(); ++i) {
      spools.push_back(row_json(spool_row(laid->batch, i, inch)));
      const std::optional<std::string> file = open.written_plan(i);
      spools.back()["written"] = file ? Json(*file) : Json(nullptr);
    }
    total = row_json(total_row(laid->batch, inch));
  }
  const std::optional<FileSaving> saving = open.saving();
  return {{"file", open.file()},
          {"issues", issues_json(open.issues())},
          {"busy", status.busy},
          {"stopped", status.stopped},
          {"share", status.share},
          {"trouble", status.trouble},
          {"full", laid != nullptr && laid->full},
          {"not_placed", issues_json(laid != nullptr ? laid->not_placed : Issues{})},
          {"spools", std::move(spools)},
          {"total", std::move(total)},
          {"saving", saving ? saving_json(*saving) : Json(nullptr)}};
}

}  // namespace laywright
