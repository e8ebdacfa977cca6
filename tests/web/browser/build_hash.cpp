// Prints the hash of the build of a plan: build_hash PLAN [SEED]. For comparing builds across machines.
#include <cstdio>
#include <cstdlib>

#include "lay/lay.h"
#include "plan/plan_file.h"

int main(int argc, char** argv) {
  using namespace laywright;
  if (argc < 2) return 2;
  const Result<Plan> plan = load_plan(argv[1]);
  if (!plan) return 1;
  LaySettings settings;
  if (argc > 2) settings.seed = std::strtoull(argv[2], nullptr, 10);
  Progress progress;
  const Result<Build> build = lay(plan.value(), settings, progress);
  if (!build) return 1;
  std::printf("%016llx\n", static_cast<unsigned long long>(build.value().hash()));
  return 0;
}
