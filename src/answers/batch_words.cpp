#include "answers/batch_words.h"

#include <algorithm>
#include <climits>
#include <filesystem>

#include <fmt/format.h>

#include "base/readable.h"
#include "figures/figures.h"

namespace laywright {
namespace {

// Lengths of an order are those of a counter, as exact as they are written.
std::string ordered_text(double mm, bool inch) { return fiber_text(mm, 6, inch); }

bool is_whole(const Batch& batch, const Taken& taken) {
  return taken.from_mm == 0.0 && taken.length_mm == batch.pieces_mm[taken.piece];
}

std::string part_words(const Batch& batch, const Taken& taken, bool inch) {
  return fmt::format("piece {} from {} to {} of {}", taken.piece + 1, ordered_text(taken.from_mm, inch),
                     ordered_text(taken.from_mm + taken.length_mm, inch),
                     ordered_text(batch.pieces_mm[taken.piece], inch));
}

// "248", or "124 to 248" where the winds differ.
std::string stations_words(const Batch& batch) {
  int fewest = INT_MAX, most = 0;
  for (const SpoolWind& wind : batch.winds) {
    fewest = std::min(fewest, wind.stations_per_turn);
    most = std::max(most, wind.stations_per_turn);
  }
  return fewest < most ? fmt::format("{} to {}", fewest, most) : fmt::format("{}", most);
}

}  // namespace

std::string order_name(const Order& order) {
  std::string name;
  const auto add = [&](const char* before, const std::string& text) {
    if (!text.empty()) name += fmt::format("{}{}{}", name.empty() ? "" : ", ", before, visible(text));
  };
  add("order ", order.number);
  add("", order.customer);
  add("lot ", order.lot);
  return name.empty() ? "order " + visible(std::filesystem::path(order.file).filename().string()) : name;
}

std::string batch_line(const Batch& batch, bool inch) {
  double length = 0.0;
  for (const double piece : batch.pieces_mm) length += piece;
  return fmt::format("{} in {} over {}{}", ordered_text(length, inch), counted(batch.pieces_mm.size(), "piece"),
                     counted(batch.spools.size(), "spool"),
                     batch.fewest ? ", the fewest that do" : "; whether fewer would do is not certain");
}

std::string besides_words(const Order& order, bool inch) {
  std::string words = fmt::format("On each spool besides: leader {}, tail {}", ordered_text(order.leader_mm, inch),
                                  ordered_text(order.tail_mm, inch));
  if (order.samples > 0)
    words += fmt::format(", {} of {}, wound last and cut off", counted(order.samples, "sample"),
                         ordered_text(order.sample_mm, inch));
  words += order.splices == 0 ? ". No splices: pieces stay whole."
                              : fmt::format(". {} on a spool at most.", counted(order.splices, "splice"));
  return words;
}

std::string taken_words(const Batch& batch, const BatchSpool& spool, bool inch) {
  std::string words;
  for (std::size_t i = 0; i < spool.taken.size();) {
    const Taken& first = spool.taken[i];
    const double length = batch.pieces_mm[first.piece];
    std::size_t end = i + 1;
    while (end < spool.taken.size() && is_whole(batch, first) && is_whole(batch, spool.taken[end]) &&
           spool.taken[end].piece == first.piece + (end - i) && batch.pieces_mm[spool.taken[end].piece] == length)
      ++end;
    words += words.empty() ? "" : ", ";
    if (end - i > 1) {
      words += fmt::format("pieces {} to {} ({} each)", first.piece + 1, first.piece + end - i,
                           ordered_text(length, inch));
    } else if (is_whole(batch, first)) {
      words += fmt::format("piece {} ({})", first.piece + 1, ordered_text(length, inch));
    } else {
      words += part_words(batch, first, inch);
    }
    i = end;
  }
  return words;
}

std::string room_words(const SpoolKind& kind, bool inch) {
  const std::string name = visible(std::filesystem::path(kind.path).filename().string());
  const bool ordered = kind.ordered.most_mm && kind.room_mm == *kind.ordered.most_mm;
  return fmt::format(
      "{} takes {} of delivered fiber on a spool, {}; {} in all fit up to a rim clearance of {}, an estimate.", name,
      amount_text(Amount::fiber_length, kind.room_mm / 1e3, 1, inch),
      ordered ? "as the order limits it" : "as far as it fits",
      amount_text(Amount::fiber_length, kind.fits_mm / 1e3, 1, inch),
      short_size_text(kind.plan.limits().rim_clearance_mm, 4, inch));
}

std::string time_words(const std::optional<double>& time_s) { return time_s ? duration_text(*time_s) : "not known"; }

std::string estimate_words(const Batch& batch) {
  std::string words =
      "Times, masses, diameters and clearances are estimates. A time is that of winding at the plan's line speed, "
      "without "
      "setting up; masses are of the fiber before samples are cut off.";
  words += fmt::format(" Computed with {} stations per turn.", stations_words(batch));
  const auto unknown = [&](auto SpoolWind::*value) {
    for (const SpoolWind& wind : batch.winds)
      if (!(wind.*value)) return true;
    return false;
  };
  if (unknown(&SpoolWind::time_s)) words += " Where the plan says wind.line_speed, the time is told.";
  if (unknown(&SpoolWind::fiber_mass_kg)) words += " Where it says fiber.linear_mass, the mass is told.";
  return words;
}

std::optional<double> mass_with_spool_kg(const Batch& batch, const BatchSpool& spool) {
  const std::optional<double>& fiber = batch.winds[spool.wind].fiber_mass_kg;
  const std::optional<double>& empty = batch.kinds[spool.kind].plan.spool().mass_kg;
  return fiber && empty ? std::optional(*fiber + *empty) : std::nullopt;
}

}  // namespace laywright
