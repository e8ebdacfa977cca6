// An order worked out: which spool takes what, each wind laid and judged.
//
// The delivered fiber of a spool is its net length. Its gross length is wound: net + leader + tail + samples, all of it within
// the plan's rim clearance. Samples are wound last and cut off then.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "jobs/parallel.h"
#include "lay/lay.h"
#include "measure/measurements.h"
#include "order/assign.h"
#include "order/order.h"
#include "takeup/takeup_run.h"
#include "verdict/verdict.h"

namespace laywright {

// Spools of one kind, with their plan.
struct SpoolKind {
  OrderedSpools ordered;
  std::string path;  // of the plan, from where the program runs
  std::string text;  // of its file
  Plan plan;
  double fits_mm =
      0.0;  // until the first fiber is as near to the rim as the plan allows: an estimate of the lay model
  double room_mm =
      0.0;  // of delivered fiber: what fits less leader, tail and samples, in whole metres, or the order's most
};

// What comes of a wind; spools that are wound alike share one.
struct SpoolWind {
  std::size_t kind = 0;
  double gross_mm = 0.0;
  double turns = 0.0;
  double outer_diameter_mm = 0.0, rim_clearance_mm = 0.0;
  std::optional<double> fiber_mass_kg;  // of the gross length
  std::optional<double> time_s;         // of winding; none where the plan does not tell its line speed
  WindVerdict verdict;
  int stations_per_turn = 0;  // that it was laid with
};

struct BatchSpool {
  std::size_t kind = 0, wind = 0;
  std::vector<Taken> taken;
  double net_mm = 0.0, gross_mm = 0.0;
  int splices = 0;
};

struct Batch {
  Order order;
  std::vector<SpoolKind> kinds;
  std::vector<double> pieces_mm;  // to deliver, in the order of the file
  std::vector<BatchSpool> spools;
  bool fewest = false;  // it is certain that no fewer spools would do
  std::vector<SpoolWind> winds;
};

struct BatchTotals {
  double net_mm = 0.0, gross_mm = 0.0, leader_mm = 0.0, tail_mm = 0.0, samples_mm = 0.0;
  int splices = 0;
  std::optional<double> fiber_mass_kg, time_s;  // where all spools have them
  Grade worst = Grade::good;
};
[[nodiscard]] BatchTotals totals_of(const Batch& batch);

// The pieces of the order, one by one.
[[nodiscard]] std::vector<double> pieces_of(const Order& order);

// Reads and checks the plans of the order. Errors: the plans' own issues, and where the order names them.
[[nodiscard]] Result<std::vector<SpoolKind>> kinds_of(const Order& order, const EntrySource& entries);

// Lays each plan up to its rim clearance, for how much fits. Returns no issues, or why a plan cannot be laid. Cancelled
// through the stretch's progress, the kinds are incomplete.
[[nodiscard]] Issues find_room(const Order& order, std::vector<SpoolKind>& kinds, const LaySettings& settings,
                               int threads, const Stretch& stretch);

// Which spool takes what; nothing is laid. Errors: a piece that no spool takes, too few spools at hand; each says what to do.
[[nodiscard]] Result<Batch> batch_of(const Order& order, const std::vector<SpoolKind>& kinds);

// The plan of a spool: that of its kind, ended at the gross length, with the order, "2 of 3" as its spool, and the order's title
// where it has one. `index` of
// `batch.spools`.
[[nodiscard]] PlanDraft draft_of(const Batch& batch, std::size_t index);
// "spool-2": files of a spool are named so.
[[nodiscard]] std::string name_of_spool(const Batch& batch, std::size_t index);
// The text of its file: that of the kind's plan, changed in place, below a line that says so.
[[nodiscard]] std::string plan_text_of(const Batch& batch, std::size_t index);

// A wind as it is laid, for who draws it.
struct LaidWind {
  const Plan& plan;  // of the first spool that is wound so
  std::shared_ptr<const Build> build;
  std::shared_ptr<const Measurements> measurements;
  const TakeupRun& run;
  const WindVerdict& verdict;
};
// Called on the threads that lay, once for each wind; returns no issues, or why the whole order
// comes to nothing.
using EachWind = std::function<Issues(std::size_t wind, const LaidWind& laid, Progress& progress)>;

// Lays and judges each different wind once. Returns no issues, or why not. Cancelled: the batch's winds are incomplete.
[[nodiscard]] Issues wind_batch(Batch& batch, const LaySettings& settings, int threads, const Stretch& stretch,
                                const EachWind& each = {});

}  // namespace laywright
