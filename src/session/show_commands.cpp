#include "session/show_commands.h"

#include "session/bench_inside.h"

namespace laywright {
namespace {

std::string not_shown(const Workbench& bench) {
  return bench.showing() ? "" : "Nothing is shown to others: begin with F9.";
}

// Of what is being shown.
template <class Act>
Command while_shown(const char* name, Act act) {
  return {{.name = name, .needs = Needs::nothing, .why_not = not_shown, .act = act}};
}

}  // namespace

Command cmd::show() {
  return {
      {.name = "show", .needs = Needs::active_build, .act = [](const BenchInside& in) { in.showing = Showing{}; }}};
}

Command cmd::pause_show() {
  return while_shown("pause the show", [](const BenchInside& in) { in.showing->paused = !in.showing->paused; });
}

Command cmd::tell_sizes() {
  return while_shown("tell sizes", [](const BenchInside& in) { in.showing->details = !in.showing->details; });
}

Command cmd::leave_show() {
  return while_shown("leave the show", [](const BenchInside& in) { in.showing.reset(); });
}

}  // namespace laywright
