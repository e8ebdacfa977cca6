// An order laid from its plans to its sheets, one way for the command and the window.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "jobs/job_result.h"
#include "order/batch.h"
#include "paper/batch_files.h"

namespace laywright {

struct OrderLaying {
  LaySettings settings;
  int threads = 1;
  bool draws_sheets = false;
  WindPicture picture;  // for the sheets; none: they have none
  // Of where everything is placed, before the winds are laid; issues end it there. None: nobody looks.
  std::function<Issues(const Batch&)> placed;
};

struct LaidOrder {
  Batch batch;        // order and plans alone where something could not be placed
  Issues not_placed;  // why it cannot be delivered as it stands, each with its line and what to do; empty: it can
  bool full = false;  // as fine as the model needs
  std::vector<std::string> sheets;  // where they are drawn: each spool's set-up sheet, as PDF
  std::string drawn_on;             // the day on which it was laid
};

// Finds out how much each spool takes, which one takes what, and lays and judges the winds; each wind's sheets are drawn while
// its build is at hand. `kinds` as kinds_of() has them.
[[nodiscard]] JobResult<LaidOrder> lay_order(const Order& order, std::vector<SpoolKind> kinds,
                                             const OrderLaying& how, Progress& progress);

}  // namespace laywright
