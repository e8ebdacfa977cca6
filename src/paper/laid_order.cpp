#include "paper/laid_order.h"

#include <utility>

#include "base/today.h"

namespace laywright {
namespace {

// Of the way, finding out how much fits: it is laid up to the rim, farther than most winds go.
constexpr double filling = 0.5;

}  // namespace

JobResult<LaidOrder> lay_order(const Order& order, std::vector<SpoolKind> kinds, const OrderLaying& how,
                               Progress& progress) {
  LaidOrder laid;
  laid.full = how.settings.fidelity >= 1.0;
  laid.drawn_on = today();
  Issues trouble = find_room(order, kinds, how.settings, how.threads, {progress, 0.0, filling});
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
  if (how.placed) trouble = how.placed(laid.batch);
  if (!trouble.empty()) return trouble;
  SpoolSheets sheets(laid.batch, how.picture, laid.drawn_on);
  EachWind each;
  if (how.draws_sheets)
    each = [&](std::size_t wind, const LaidWind& wound, Progress& own) { return sheets.draw(wind, wound, own); };
  trouble = wind_batch(laid.batch, how.settings, how.threads, {progress, filling, 1.0}, each);
  if (progress.cancelled()) return Stopped{};
  if (!trouble.empty()) return trouble;
  laid.sheets = sheets.sheets();
  return laid;
}

}  // namespace laywright
