// The machine has too little memory: the program says so and returns 3; it does not crash, and writes nothing.
#include <algorithm>
#include <string>

#include <catch2/catch.hpp>

#include "faults/patient.h"

// An instrumented program reserves terabytes of addresses for itself.
#if !defined(__SANITIZE_ADDRESS__) && !defined(__SANITIZE_THREAD__)

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

// Files in a folder and below, without what stands beside its place still: in hidden folders, where the memory did not
// do for clearing away either.
std::ptrdiff_t written_files(const fs::path& folder) {
  const Files files = files_in(folder);
  return std::count_if(files.begin(), files.end(),
                       [](const auto& file) { return file.first.find(".laywright-") == std::string::npos; });
}

}  // namespace

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

TEST_CASE("any amount of memory is enough for each command, or told to be too little") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan(200));
  shop.write("a.csv", "layer,layer_turns\n1,18\n2,18\n3,18\n");
  const int start = kilobytes_to_start(shop);
  // Each writes into "out", if it writes.
  for (const std::string command :
       {"check a.lay.toml", "lay a.lay.toml --out out/reports", "sheet a.lay.toml -o out/a.pdf",
        "picture a.lay.toml -o out/a.png --size 320x200", "export a.lay.toml -o out/a.glb",
        "export a.lay.toml -o out/a.webp --size 160x120 --seconds 0.5 --fps 4", "share a.lay.toml -o out/a.html",
        "cause a.lay.toml --threads 8", "improve a.lay.toml --trials 8 --threads 8",
        "fit a.lay.toml a.csv --threads 8", "capacity a.lay.toml --fidelity 0.3",
        "study a.lay.toml --vary traverse.pitch=0.5mm:0.6mm:4 --threads 8 --out out/study",
        "profile " LAYWRIGHT_SOURCE_DIR "/samples/even.lay.toml " LAYWRIGHT_SOURCE_DIR
        "/samples/even-rendered.jpg --fidelity 0.05 --csv out/a.csv"}) {
    fs::create_directory(shop.at("out"));
    const Ran whole = shop.run("$LW " + command);
    if (command.starts_with("share") && whole.err.find("built without the share page") != std::string::npos)
      continue;
    CAPTURE(start, command, whole.err);
    CHECK(whole.code == 0);
    int too_little = 0;
    for (int more = 0; more <= 1'500'000; more += std::max(2'000, more / 4)) {
      fs::remove_all(shop.at("out"));
      fs::create_directory(shop.at("out"));
      const Ran ran = shop.run(with_memory(start + more, "$LW " + command));
      CAPTURE(more, ran.err);
      CHECK((ran.code == 0 || ran.code == 3));
      if (ran.code == 0) continue;
      ++too_little;
      CHECK_THAT(ran.err, Contains("memory"));
      CHECK(written_files(shop.at("out")) == 0);
    }
    if (!command.starts_with("check")) CHECK(too_little > 0);
  }
}

#endif
