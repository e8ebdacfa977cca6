#include "order/batch.h"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <utility>

#include <fmt/format.h>

#include "advise/capacity.h"
#include "advise/robust.h"
#include "base/quantity.h"
#include "base/quantity_text.h"
#include "base/readable.h"
#include "base/units.h"
#include "plan/plan_file.h"
#include "plan/plan_writer.h"

namespace laywright {
namespace {

std::string metres(double mm) { return format_quantity(mm, *find_unit(mm >= mm_per_km ? "km" : "m"), 7); }

Result<SpoolKind> kind_of(const Order& order, const OrderedSpools& ordered, const EntrySource& entries) {
  const std::string path = (std::filesystem::path(order.file).parent_path() / ordered.plan).string();
  const auto unusable = [&](Issues issues) {
    issues.push_back(order_issue(order, ordered.line, "plan", fmt::format("\"{}\"", ordered.plan),
                                 "is not a plan that can be used: see its own issues"));
    return issues;
  };
  const Result<std::string> text = read_plan_text(path);
  if (!text.ok()) return unusable(text.issues());
  const Result<Plan> plan = plan_from_text(text.value(), path, &entries);
  if (!plan.ok()) return unusable(plan.issues());
  return {SpoolKind{ordered, path, text.value(), plan.value(), 0.0, 0.0}, plan.issues()};
}

double greatest_room(const std::vector<SpoolKind>& kinds) {
  double room = 0.0;
  for (const SpoolKind& kind : kinds) room = std::max(room, kind.room_mm);
  return room;
}

// Where the order has that piece.
int line_of(const Order& order, std::size_t piece) {
  for (const OrderedPieces& pieces : order.pieces) {
    if (piece < static_cast<std::size_t>(pieces.count)) return pieces.line;
    piece -= static_cast<std::size_t>(pieces.count);
  }
  return 0;
}

// Pieces that fit onto no spool, whatever else is on it: one issue for those of one line.
Issues too_long(const Order& order, const std::vector<SpoolKind>& kinds) {
  Issues issues;
  if (order.splices > 0) return issues;
  const double most = greatest_room(kinds);
  for (const OrderedPieces& pieces : order.pieces) {
    if (pieces.length_mm <= most) continue;
    issues.push_back(order_issue(
        order, pieces.line, "piece.length", fmt::format("\"{}\"", metres(pieces.length_mm)),
        fmt::format(
            "is more than a spool takes, {} besides leader, tail and samples; allow splices ([delivery] splices = "
            "1), so that the piece is cut and goes on on the next spool, or choose a larger spool, or deliver "
            "shorter pieces",
            metres(most))));
  }
  return issues;
}

Issue too_few(const Order& order, const std::vector<double>& pieces, const Assignment& assignment) {
  double left = 0.0;
  for (const std::size_t piece : assignment.left) left += pieces[piece];
  return order_issue(
      order, line_of(order, assignment.left.front()), "spool", "",
      fmt::format(
          "{} of {} in all found no spool; have more or larger spools at hand (their count){}",
          counted(assignment.left.size(), "piece"), metres(left),
          order.splices > 0 ? ", or allow more splices on a spool" : ", or allow splices ([delivery] splices)"));
}

// Leader, tail and samples leave nothing.
Issues no_room(const Order& order, const std::vector<SpoolKind>& kinds) {
  Issues issues;
  for (const SpoolKind& kind : kinds) {
    if (kind.room_mm > 0.0) continue;
    issues.push_back(order_issue(
        order, kind.ordered.line, "plan", fmt::format("\"{}\"", kind.ordered.plan),
        fmt::format("takes {} up to its rim clearance, which leader, tail and samples ({}) use up; shorten them, or "
                    "choose a larger spool",
                    metres(kind.fits_mm), metres(order.besides_mm()))));
  }
  return issues;
}

}  // namespace

std::vector<double> pieces_of(const Order& order) {
  std::vector<double> pieces;
  for (const OrderedPieces& each : order.pieces)
    pieces.insert(pieces.end(), static_cast<std::size_t>(each.count), each.length_mm);
  return pieces;
}

Result<std::vector<SpoolKind>> kinds_of(const Order& order, const EntrySource& entries) {
  std::vector<SpoolKind> kinds;
  Issues issues;
  for (const OrderedSpools& ordered : order.spools) {
    Result<SpoolKind> kind = kind_of(order, ordered, entries);
    issues.insert(issues.end(), kind.issues().begin(), kind.issues().end());
    if (kind.ok()) kinds.push_back(std::move(kind).value());
  }
  if (has_error(issues)) return issues;
  return {std::move(kinds), std::move(issues)};
}

Issues find_room(const Order& order, std::vector<SpoolKind>& kinds, const LaySettings& settings, int threads,
                 const Stretch& stretch) {
  // Kinds that share a plan need one wind.
  std::vector<std::size_t> first(kinds.size()), different;
  for (std::size_t i = 0; i < kinds.size(); ++i) {
    first[i] = static_cast<std::size_t>(
        std::find_if(kinds.begin(), kinds.end(), [&](const SpoolKind& kind) { return kind.path == kinds[i].path; }) -
        kinds.begin());
    if (first[i] == i) different.push_back(i);
  }
  std::vector<Issues> issues(kinds.size());
  run_parallel(different.size(), threads, stretch, [&](std::size_t i, Progress& progress) {
    SpoolKind& kind = kinds[different[i]];
    const Result<Capacity> found = capacity(kind.plan, settings, progress);
    if (!found.ok()) {
      issues[different[i]] = found.issues();
    } else {
      kind.fits_mm = found.value().first_touch_mm;
    }
  });
  Issues all;
  for (std::size_t i = 0; i < kinds.size(); ++i) {
    SpoolKind& kind = kinds[i];
    all.insert(all.end(), issues[i].begin(), issues[i].end());
    kind.fits_mm = kinds[first[i]].fits_mm;
    // In whole metres, as a counter is set.
    kind.room_mm = std::max(0.0, std::floor((kind.fits_mm - order.besides_mm()) / mm_per_m) * mm_per_m);
    if (kind.ordered.most_mm) kind.room_mm = std::min(kind.room_mm, *kind.ordered.most_mm);
  }
  return all;
}

Result<Batch> batch_of(const Order& order, const std::vector<SpoolKind>& kinds) {
  if (Issues issues = no_room(order, kinds); !issues.empty()) return issues;
  if (Issues issues = too_long(order, kinds); !issues.empty()) return issues;
  Batch batch;
  batch.order = order;
  batch.kinds = kinds;
  batch.pieces_mm = pieces_of(order);
  std::vector<SpoolRoom> rooms;
  for (const SpoolKind& kind : kinds) rooms.push_back({kind.room_mm, kind.ordered.count});
  Assignment assignment = assign(batch.pieces_mm, rooms, order.splices);
  if (!assignment.left.empty()) return too_few(order, batch.pieces_mm, assignment);
  batch.fewest = assignment.fewest;
  for (SpoolTakes& takes : assignment.spools) {
    BatchSpool& spool = batch.spools.emplace_back();
    spool.kind = takes.kind;
    for (const Taken& taken : takes.taken) spool.net_mm += taken.length_mm;
    spool.gross_mm = spool.net_mm + order.besides_mm();
    spool.splices = order.splices > 0 ? static_cast<int>(takes.taken.size()) - 1 : 0;
    spool.taken = std::move(takes.taken);
    const auto same = [&](const SpoolWind& wind) {
      return kinds[wind.kind].path == kinds[spool.kind].path && wind.gross_mm == spool.gross_mm;
    };
    const auto wind = std::find_if(batch.winds.begin(), batch.winds.end(), same);
    spool.wind = static_cast<std::size_t>(wind - batch.winds.begin());
    if (wind != batch.winds.end()) continue;
    SpoolWind& another = batch.winds.emplace_back();
    another.kind = spool.kind;
    another.gross_mm = spool.gross_mm;
  }
  if (batch.spools.size() > static_cast<std::size_t>(most_spools)) {
    return order_issue(order, 0, "spool", "",
                       fmt::format("it takes {} spools; make several orders of it, of {} at most",
                                   batch.spools.size(), most_spools));
  }
  return batch;
}

PlanDraft draft_of(const Batch& batch, std::size_t index) {
  const BatchSpool& spool = batch.spools[index];
  PlanDraft draft = batch.kinds[spool.kind].plan.draft();
  draft.file = name_of_spool(batch, index) + ".lay.toml";
  // A title of its own, since that of the plan may speak of another length.
  const std::string title = fmt::format("{}, spool {} of {}", batch.order.title, index + 1, batch.spools.size());
  if (!batch.order.title.empty() && character_count(title) <= longest_title) draft.title = title;
  draft.wind.turns.reset();
  draft.wind.diameter_mm.reset();
  draft.wind.length_mm = spool.gross_mm;
  draft.order = {batch.order.number, batch.order.customer, batch.order.lot,
                 fmt::format("{} of {}", index + 1, batch.spools.size())};
  return draft;
}

std::string name_of_spool(const Batch& batch, std::size_t index) {
  const std::size_t digits = fmt::format("{}", batch.spools.size()).size();
  return fmt::format("spool-{:0{}}", index + 1, digits);
}

std::string plan_text_of(const Batch& batch, std::size_t index) {
  const SpoolKind& kind = batch.kinds[batch.spools[index].kind];
  const std::string order = batch.order.number.empty() ? "an order" : "order " + batch.order.number;
  const std::string head = fmt::format(
      "# Spool {} of {} of {}. All comments below were written for {}, which it was made from.\n", index + 1,
      batch.spools.size(), visible(order), visible(std::filesystem::path(kind.path).filename().string()));
  return head + write_plan(kind.text, kind.plan.draft(), draft_of(batch, index));
}

BatchTotals totals_of(const Batch& batch) {
  BatchTotals totals;
  totals.fiber_mass_kg = totals.time_s = 0.0;
  const auto add = [](std::optional<double>& sum, const std::optional<double>& value) {
    sum = sum && value ? std::optional(*sum + *value) : std::nullopt;
  };
  for (const BatchSpool& spool : batch.spools) {
    const SpoolWind& wind = batch.winds[spool.wind];
    totals.net_mm += spool.net_mm;
    totals.gross_mm += spool.gross_mm;
    totals.leader_mm += batch.order.leader_mm;
    totals.tail_mm += batch.order.tail_mm;
    totals.samples_mm += batch.order.samples_mm();
    totals.splices += spool.splices;
    add(totals.fiber_mass_kg, wind.fiber_mass_kg);
    add(totals.time_s, wind.time_s);
    totals.worst = std::max(totals.worst, wind.verdict.grade);
  }
  return totals;
}

Issues wind_batch(Batch& batch, const LaySettings& settings, int threads, const Stretch& stretch,
                  const EachWind& each) {
  std::vector<Issues> issues(batch.winds.size());
  run_parallel(batch.winds.size(), threads, stretch, [&](std::size_t i, Progress& progress) {
    SpoolWind& wind = batch.winds[i];
    const auto first = std::find_if(batch.spools.begin(), batch.spools.end(),
                                    [&](const BatchSpool& spool) { return spool.wind == i; });
    const Result<Plan> plan = check(draft_of(batch, static_cast<std::size_t>(first - batch.spools.begin())));
    if (!plan.ok()) {
      issues[i] = plan.issues();
      return;
    }
    Result<Build> laid = lay(plan.value(), settings, progress);
    if (progress.cancelled()) return;
    if (!laid.ok()) {
      issues[i] = laid.issues();
      return;
    }
    const auto build = std::make_shared<const Build>(std::move(laid).value());
    const auto measurements = std::make_shared<const Measurements>(measure(plan.value(), *build, progress));
    if (progress.cancelled()) return;
    const TakeupRun run = take_up(plan.value(), *build, *measurements, progress);
    if (progress.cancelled()) return;
    wind.turns = build->turns;
    wind.stations_per_turn = build->stations_per_turn;
    wind.outer_diameter_mm = measurements->outer_diameter.greatest_mm;
    wind.rim_clearance_mm = measurements->rim_clearance_mm;
    wind.fiber_mass_kg = measurements->fiber_mass_kg;
    wind.time_s = run.time_s;
    wind.verdict = verdict_of(plan.value(), *build, *measurements, &run);
    if (const int draws = due_draws(plan.value().draft()); draws > 1) {
      // Other winds take the other processors already.
      auto judged = over_draws(plan.value(), settings, wind.verdict, draws, 1, progress);
      if (!judged) return;
      wind.verdict = std::move(*judged);
    }
    if (each) issues[i] = each(i, {plan.value(), build, measurements, run, wind.verdict}, progress);
  });
  for (const Issues& found : issues)
    if (!found.empty()) return found;
  return {};
}

}  // namespace laywright
