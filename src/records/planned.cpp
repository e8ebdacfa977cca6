#include "records/planned.h"

#include <utility>

#include <fmt/format.h>

#include "base/today.h"
#include "measure/layer_width.h"
#include "plan/flatten.h"
#include "plan/revision.h"
#include "takeup/turn_line.h"

namespace laywright {
SpoolRecord planned_record(const Plan& plan, std::string_view text, const LaySettings& settings, const Build& build,
                           const Measurements& measurements) {
  SpoolRecord record;
  record.identity = new_identity();
  record.spool = plan.order().spool;
  record.order = plan.order().number;
  record.machine = machine_of(plan);
  record.title = plan.title();
  record.plan_file = plan.file();
  record.plan_text = flattened(text, plan.asked());
  record.revision = revision_of(plan.draft());
  record.fidelity = settings.fidelity;
  record.seed = fmt::format("{}", settings.seed);
  record.greatest_diameter_mm = measurements.outer_diameter.greatest_mm;
  record.inside_width_mm = plan.spool().inside_width_mm;
  const TurnLine line(build);
  for (std::size_t i = 0; i < line.layers() && i < measurements.layers.size(); ++i) {
    PlannedLayer each;
    each.layer = static_cast<int>(i) + 1;
    each.at_end = i + 1 == line.layers();
    each.turns = each.at_end ? build.turns : line.layer_start_turn(i + 1);
    each.layer_turns = each.turns - line.layer_start_turn(i);
    each.length_mm = line.end_of_layer_mm(i);
    // Nobody measures the width of a layer that is not whole.
    const bool whole = !each.at_end || !measurements.unfinished_layer || i == 0;
    each.width_mm = layer_width_mm(build, whole ? i : i - 1);
    each.outer_diameter_mm = measurements.layers[i].outer_diameter_mm;
    record.planned.push_back(each);
  }
  return record;
}

void name_record(SpoolRecord& record, const RecordNames& names, std::string program) {
  record.program = std::move(program);
  record.date = names.date.empty() ? today() : names.date;
  if (!names.spool.empty()) record.spool = names.spool;
  if (!names.machine.empty()) record.machine = names.machine;
  if (!names.order.empty()) record.order = names.order;
}

std::string machine_of(const Plan& plan) {
  const NamedEntry* machine = entry_of(plan.asked(), EntryKind::machine);
  return machine != nullptr ? machine->name : "";
}

}  // namespace laywright
