#include "session/new_plan_commands.h"

#include "session/bench_inside.h"

namespace laywright {

Command cmd::propose_plan(const NewRequest& request) {
  return {{.name = "propose a plan", .needs = Needs::nothing, .act = [request](const BenchInside& in) {
             in.beginning.ask(request, in.bench.options().entries);
             return in.beginning.issues().empty();
           }}};
}

Command cmd::stop_proposing() {
  return {{.name = "stop proposing a plan",
           .needs = Needs::nothing,
           .why_not =
               [](const Workbench& bench) {
                 return bench.beginning().status().busy ? "" : "No plan is being searched for.";
               },
           .act = [](const BenchInside& in) { in.beginning.stop(); }}};
}

Command cmd::open_proposed() {
  return {{.name = "open the proposed plan",
           .needs = Needs::nothing,
           .why_not =
               [](const Workbench& bench) {
                 return bench.beginning().proposed() ? ""
                                                     : "There is no proposal: say spool, fiber and length first.";
               },
           .act = [](const BenchInside& in) { return in.open_proposed(); }}};
}

}  // namespace laywright
