// Prints the hashes of several builds, for same_bits.sh to compare between configurations.
#include <cstdint>
#include <cstdio>
#include <cstdlib>

#include "lay/random_plans.h"

using namespace laywright;

int main() {
  for (std::uint64_t seed = 501; seed <= 516; ++seed) {
    const Plan plan = random_plans::plan_of(random_plans::draft(seed, {true, true, true, 40.0}));
    const Build build = random_plans::laid(plan, seed);
    std::printf("%llu %d %zu %016llx\n", static_cast<unsigned long long>(seed), build.stations_per_turn,
                build.nodes.size(), static_cast<unsigned long long>(build.hash()));
  }
  return EXIT_SUCCESS;
}
