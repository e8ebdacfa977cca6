// Commands that ask for advice on the active plan, and follow it; answers come in the background.
#pragma once

#include <cstddef>

#include "session/advice_request.h"
#include "session/command.h"

namespace laywright::cmd {

Command explain_finding();  // why the chosen one is there
Command search_better(const BetterRequest& request = {});
Command run_study(const StudyRequest& request);
Command judge_draws();  // the build, by the worst of the usual number of draws
Command stop_advice(AdviceKind kind);
Command forget_advice(AdviceKind kind);  // the answer is read
// The plan as an answer would have it; with `compare`, beside the build as it was.
Command set_advised(AdviceKind kind, std::size_t option, bool compare = false);

}  // namespace laywright::cmd
