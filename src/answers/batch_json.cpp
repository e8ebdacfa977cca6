#include <filesystem>

#include "answers/batch_report.h"
#include "answers/batch_words.h"
#include "base/units.h"
#include "figures/document_text.h"
#include "figures/json_number.h"
#include "plan/revision.h"
#include "verdict/verdict_words.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

Json text_or_null(const std::string& text) { return text.empty() ? Json(nullptr) : Json(text); }

Json order_block(const Order& order) {
  return {{"file", order.file},
          {"title", order.title},
          {"number", text_or_null(order.number)},
          {"customer", text_or_null(order.customer)},
          {"lot", text_or_null(order.lot)},
          {"leader_m", order.leader_mm / mm_per_m},
          {"tail_m", order.tail_mm / mm_per_m},
          {"sample_m", order.sample_mm / mm_per_m},
          {"samples", order.samples},
          {"splices", order.splices}};
}

Json plan_block(const SpoolKind& kind) {
  return {{"file", kind.path},
          {"count", kind.ordered.count ? Json(*kind.ordered.count) : Json(nullptr)},
          {"fits_m", kind.fits_mm / mm_per_m},
          {"rim_clearance", kind.plan.limits().rim_clearance_mm},
          {"room_m", kind.room_mm / mm_per_m}};
}

Json spool_block(const Batch& batch, std::size_t index) {
  const BatchSpool& spool = batch.spools[index];
  const SpoolWind& wind = batch.winds[spool.wind];
  Json takes = Json::array();
  for (const Taken& taken : spool.taken)
    takes.push_back({{"piece", taken.piece + 1},
                     {"from_m", taken.from_mm / mm_per_m},
                     {"length_m", taken.length_mm / mm_per_m}});
  return {{"spool", index + 1},
          {"name", name_of_spool(batch, index)},
          {"plan", batch.kinds[spool.kind].path},
          {"revision", revision_of(draft_of(batch, index))},
          {"takes", std::move(takes)},
          {"net_m", spool.net_mm / mm_per_m},
          {"gross_m", spool.gross_mm / mm_per_m},
          {"splices", spool.splices},
          {"turns", number(wind.turns)},
          {"stations_per_turn", wind.stations_per_turn},
          {"time_s", number(wind.time_s)},
          {"fiber_mass_kg", number(wind.fiber_mass_kg)},
          {"mass_with_spool_kg", number(mass_with_spool_kg(batch, spool))},
          {"outer_diameter", number(wind.outer_diameter_mm)},
          {"rim_clearance", number(wind.rim_clearance_mm)},
          {"verdict",
           {{"grade", name_of(wind.verdict.grade)},
            {"line", verdict_line(wind.verdict)},
            {"reason", wind.verdict.reason},
            {"first", wind.verdict.first ? Json(*wind.verdict.first) : Json(nullptr)}}}};
}

Json totals_block(const Batch& batch) {
  const BatchTotals totals = totals_of(batch);
  return {{"spools", batch.spools.size()},         {"fewest", batch.fewest},
          {"net_m", totals.net_mm / mm_per_m},     {"leader_m", totals.leader_mm / mm_per_m},
          {"tail_m", totals.tail_mm / mm_per_m},   {"samples_m", totals.samples_mm / mm_per_m},
          {"gross_m", totals.gross_mm / mm_per_m}, {"splices", totals.splices},
          {"time_s", number(totals.time_s)},       {"fiber_mass_kg", number(totals.fiber_mass_kg)},
          {"worst", name_of(totals.worst)}};
}

}  // namespace

std::string batch_json(const Batch& batch) {
  Json pieces = Json::array(), plans = Json::array(), spools = Json::array();
  for (const double piece : batch.pieces_mm) pieces.push_back(piece / mm_per_m);
  for (const SpoolKind& kind : batch.kinds) plans.push_back(plan_block(kind));
  for (std::size_t i = 0; i < batch.spools.size(); ++i) spools.push_back(spool_block(batch, i));
  return document_text({{"format", "lay-batch 1"},
                        {"order", order_block(batch.order)},
                        {"pieces_m", std::move(pieces)},
                        {"plans", std::move(plans)},
                        {"spools", std::move(spools)},
                        {"totals", totals_block(batch)}});
}

}  // namespace laywright
