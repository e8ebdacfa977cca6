#include "session/order_commands.h"

#include <fmt/format.h>

#include "session/bench_inside.h"
#include "session/reasons.h"

namespace laywright {
namespace {

std::string why_no_order(const Workbench& bench) { return bench.order().file().empty() ? reason::no_order : ""; }

std::string why_no_plan_of(const Workbench& bench, std::size_t spool) {
  const std::shared_ptr<const LaidOrder>& laid = bench.order().laid();
  return laid && spool < laid->batch.spools.size() ? "" : "The order has no such spool, or is not laid yet.";
}

}  // namespace

Command cmd::show_order() {
  return {{.name = "order", .needs = Needs::nothing, .act = [](const BenchInside& in) {
             in.question = in.order.file().empty() ? Question::order_to_open : Question::order;
           }}};
}

Command cmd::open_order(const std::string& file) {
  return {{.name = "open order " + file, .needs = Needs::nothing, .act = [file](const BenchInside& in) {
             in.open_order(file);
           }}};
}

Command cmd::lay_order_again() {
  return {{.name = "lay order again",
           .needs = Needs::nothing,
           .why_not = why_no_order,
           .act = [](const BenchInside& in) { in.open_order(std::string(in.order.file())); }}};
}

Command cmd::stop_laying_order() {
  return {{.name = "stop laying the order",
           .needs = Needs::nothing,
           .why_not =
               [](const Workbench& bench) { return bench.order().status().busy ? "" : "No order is being laid."; },
           .act = [](const BenchInside& in) { in.order.stop_laying(); }}};
}

Command cmd::write_order(const std::string& folder) {
  return {{.name = "write order " + folder,
           .needs = Needs::nothing,
           .why_not = why_not_write_order,
           .act = [folder](const BenchInside& in) {
             in.question = Question::order;
             in.order.write(folder);
           }}};
}

Command cmd::stop_writing_order() {
  return {{.name = "stop writing the order",
           .needs = Needs::nothing,
           .why_not =
               [](const Workbench& bench) { return bench.order().is_writing() ? "" : "No order is being written."; },
           .act = [](const BenchInside& in) { in.order.stop_writing(); }}};
}

Command cmd::open_spool_plan(std::size_t spool) {
  return {{.name = fmt::format("open the plan of spool {}", spool + 1),
           .needs = Needs::nothing,
           .why_not = [spool](const Workbench& bench) { return why_no_plan_of(bench, spool); },
           .act = [spool](const BenchInside& in) { return in.open_spool_plan(spool); }}};
}

}  // namespace laywright
