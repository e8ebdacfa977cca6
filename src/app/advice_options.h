// What the commands that lay a plan many times have in common.
#pragma once

#include <string>

#include "app/command_line.h"
#include "jobs/parallel.h"
#include "lay/lay.h"

namespace laywright {

struct AdviceOptions {
  std::string plan;
  bool json = false;
  LaySettings lay;
  int threads = threads_at_hand();
};

// --threads: how many builds are laid at once.
void add_threads_option(CommandLine command, int& threads);

// PLAN, --json, --seed, --fidelity and --threads.
void add_advice_options(CommandLine command, AdviceOptions& options, const char* format);

// Says why there is no result, a person's stop or issues, and returns the exit code. Not while a Watch stands: its bar
// would be in the way.
[[nodiscard]] int conclude(const Issues& issues, bool stopped);

}  // namespace laywright
