// The system starts no further thread: what a command computes, it computes on the one that it has.
#include <string>

#include <catch2/catch.hpp>

#include "faults/patient.h"

// A sanitizer wants to be loaded first.
#if !defined(__SANITIZE_ADDRESS__) && !defined(__SANITIZE_THREAD__)

using namespace laywright;

TEST_CASE("where no further thread can be started, each command that computes does so on its own") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan(200));
  shop.write("a.csv", "layer,layer_turns\n1,18\n2,18\n3,18\n");
  shop.write("none", "");
  const std::string refused = "export NO_THREADS_WHILE=$PWD/none LD_PRELOAD=" NO_THREADS_LIBRARY "; ";
  for (const std::string command :
       {"lay a.lay.toml", "cause a.lay.toml --threads 8", "improve a.lay.toml --trials 8 --threads 8",
        "fit a.lay.toml a.csv --threads 8", "follow a.lay.toml a.csv --threads 8",
        "capacity a.lay.toml --fidelity 0.3", "study a.lay.toml --vary traverse.pitch=0.5mm:0.6mm:4 --threads 8",
        "payoff a.lay.toml",
        "profile " LAYWRIGHT_SOURCE_DIR "/samples/even.lay.toml " LAYWRIGHT_SOURCE_DIR
        "/samples/even-rendered.jpg --fidelity 0.05"}) {
    CAPTURE(command);
    const Ran as_ever = shop.run("$LW " + command), alone = shop.run(refused + "$LW " + command);
    CAPTURE(alone.err);
    CHECK(as_ever.code == 0);
    CHECK(alone.code == 0);
    CHECK(alone.out == as_ever.out);
  }
}

#endif
