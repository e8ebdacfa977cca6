// The machine has too little memory: the program says so and returns 3; it does not crash, and writes nothing.
#include <catch2/catch.hpp>

#include "faults/patient.h"

using namespace laywright;
using Catch::Matchers::Contains;
namespace fs = std::filesystem;

namespace {

constexpr int least_kilobytes = 20'000, most_kilobytes = 2'000'000;

std::string with_memory(int kilobytes, const std::string& command) {
  return fmt::format("(ulimit -v {}; {})", kilobytes, command);
}

// What the program needs to start at all; the system's loader has errors of its own below that.
int kilobytes_to_start(const Workshop& shop) {
  int kilobytes = least_kilobytes;
  while (kilobytes < most_kilobytes && shop.run(with_memory(kilobytes, "$LW --version")).code != 0) {
    kilobytes += kilobytes / 20;
  }
  return kilobytes;
}

}  // namespace

// An instrumented program reserves terabytes of addresses for itself.
#if !defined(__SANITIZE_ADDRESS__) && !defined(__SANITIZE_THREAD__)

TEST_CASE("a wind too large for the memory that is there") {
  const Workshop shop;
  // 80 km of fine wire, about 800 MB.
  std::string plan = small_plan(300'000);
  plan.replace(plan.find("\"10 mm\""), 7, "\"100 mm\"");
  plan.replace(plan.find("\"0.5 mm\""), 8, "\"0.2 mm\"");
  plan.replace(plan.find("\"0.53 mm\""), 9, "\"0.21 mm\"");
  shop.write("a.lay.toml", plan);
  const int start = kilobytes_to_start(shop);
  CAPTURE(start);
  for (const int more : {30'000, 120'000, 200'000}) {
    CAPTURE(more);
    const Ran ran = shop.run(with_memory(start + more, "$LW lay a.lay.toml --out reports"));
    CHECK(ran.code == 3);
    CHECK_THAT(ran.err, Contains("too little memory"));
    CHECK(ran.out.empty());
    CHECK_FALSE(fs::exists(shop.at("reports")));
  }
}

TEST_CASE("any amount of memory is enough, or told to be too little") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan(200));
  const int start = kilobytes_to_start(shop);
  int enough = 0;
  int too_little = 0;
  for (int more = 0; more <= 100'000; more += more < 20'000 ? 2'000 : 16'000) {
    const Ran ran = shop.run(with_memory(start + more, "$LW lay a.lay.toml --out reports"));
    CAPTURE(start, more, ran.err);
    CHECK((ran.code == 0 || ran.code == 3));
    ++(ran.code == 0 ? enough : too_little);
    if (ran.code == 3) CHECK_THAT(ran.err, Contains("memory"));
    if (ran.code == 3) CHECK_FALSE(fs::exists(shop.at("reports")));
    fs::remove_all(shop.at("reports"));
  }
  CHECK(enough > 0);
  CHECK(too_little > 0);
}

#endif
