// A workbench in a folder of its own, and small plans to put on it.
#pragma once

#include <catch2/catch.hpp>

#include <chrono>
#include <filesystem>
#include <fstream>
#include <functional>
#include <iterator>
#include <set>
#include <string>
#include <thread>

#include "session/advice_commands.h"
#include "session/camera_commands.h"
#include "session/compare_commands.h"
#include "session/file_commands.h"
#include "session/lesson_commands.h"
#include "session/plan_commands.h"
#include "session/scrub_commands.h"
#include "session/show_commands.h"
#include "session/view_commands.h"
#include "session/window_commands.h"
#include "session/workbench.h"
#include "temporary_folder.h"

namespace laywright::testing {

inline std::string contents(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

// 1 mm fiber on a 100 mm barrel, 20.5 mm wide: 20 turns a layer, laid in a few milliseconds.
inline constexpr const char* small_plan = R"(# A plan with comments.
format = "lay-plan 1"
title = "Small spool"

[spool]
barrel_diameter = "100 mm"   # bare
flange_diameter = "140 mm"
inside_width = "20.5 mm"

[fiber]
diameter = "1 mm"
friction = 0.5               # a guess

[traverse]
pitch = "1.02 mm"
left_stop = "0.5 mm"
right_stop = "0.5 mm"
free_length = "100 mm"

[wind]
turns = 100
line_speed = "60 m/min"
)";

inline std::string sample(const std::string& name) {
  return std::string(LAYWRIGHT_SOURCE_DIR) + "/samples/" + name + ".lay.toml";
}

inline Workbench::Options options_in(const TemporaryFolder& folder) {
  Workbench::Options options;
  options.folders = {folder.path() / "config", folder.path() / "state"};
  return options;
}

// Polls until it is so; false after `seconds`: far longer than it takes anywhere, so that only what never comes is missed.
inline bool wait_until(Workbench& bench, const std::function<bool()>& so, double seconds = 300.0) {
  using Clock = std::chrono::steady_clock;
  const auto end = Clock::now() + std::chrono::duration<double>(seconds);
  while (true) {
    bench.poll();
    if (so()) return true;
    if (Clock::now() > end) return false;
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
  }
}

// Long enough after an edit that a copy of unsaved work is due.
inline void poll_later(Workbench& bench) { bench.poll(Workbench::Clock::now() + std::chrono::seconds(10)); }

// Copies of unsaved work on the disk, of all workbenches in this folder.
inline std::size_t copies_in(const TemporaryFolder& folder) {
  std::size_t count = 0;
  std::error_code error;
  for (const auto& file : std::filesystem::recursive_directory_iterator(folder.path() / "state", error)) {
    if (file.path().extension() == ".toml") ++count;
  }
  return count;
}

inline bool await_copies(const TemporaryFolder& folder, std::size_t count) {
  for (int i = 0; i < 300'000; ++i) {  // minutes, for what takes a moment
    if (copies_in(folder) == count) return true;
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
  }
  return false;
}

// The full build of the plan as it stands.
inline bool is_laid(const Workbench& bench) {
  return bench.active() != nullptr && bench.active()->document->laid_in_full();
}
inline void wait_for_build(Workbench& bench) {
  REQUIRE(wait_until(bench, [&] { return is_laid(bench); }));
}

inline const Document& document(const Workbench& bench) { return *bench.active()->document; }

// A workbench on which a plan is open and laid.
struct LaidBench {
  TemporaryFolder folder;
  Workbench bench;

  explicit LaidBench(const std::string& plan) : bench(options_in(folder)) {
    REQUIRE(bench.apply(cmd::open(folder.file("a.lay.toml", plan))));
    wait_for_build(bench);
  }
};

}  // namespace laywright::testing
