// Runs the built program as a person would, through the shell.
#pragma once

#include <sys/wait.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

#include "temporary_folder.h"

namespace laywright {

struct Ran {
  int code = -1;
  std::string out, err;
};

inline std::string content(const std::filesystem::path& file) {
  std::ifstream stream(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

// A folder of its own for each test; commands run inside it.
class Workshop {
 public:
  [[nodiscard]] std::filesystem::path at(const std::string& name) const { return folder_.path() / name; }

  void write(const std::string& name, const std::string& text) const { std::ofstream(at(name)) << text; }

  // `command` with $LW for the program; its output is kept, apart from what it redirects itself.
  [[nodiscard]] Ran run(const std::string& command) const {
    const std::string line = "cd '" + folder_.path().string() + "' && LW='" LAYWRIGHT_PROGRAM "' && { " + command +
                             "; } >.stdout 2>.stderr </dev/null";
    const int status = std::system(line.c_str());
    return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, content(at(".stdout")), content(at(".stderr"))};
  }

  // The program with these arguments, and a signal so many seconds after it has begun to listen for signals, which it
  // blocks for that. It is waited for as long as it takes: one that goes on runs into the test's own limit.
  [[nodiscard]] Ran stopped(const std::string& arguments, const std::string& signal = "INT",
                            double after_s = 0.0) const {
    return run("env --default-signal=INT,TERM \"$LW\" " + arguments +
               " & until grep -qE '^(State:.Z|SigBlk:.*[2367abef]$)' /proc/$!/status; do sleep 0.01; done; sleep " +
               std::to_string(after_s) + "; kill -" + signal + " $!; wait $!");
  }

 private:
  testing::TemporaryFolder folder_;
};

// A plan that lays in no time, or, with many turns, for longer than any test waits.
inline std::string small_plan(long turns = 60) {
  return R"(format = "lay-plan 1"
title = "Small"
[spool]
barrel_diameter = "50 mm"
flange_diameter = "400 mm"
inside_width = "10 mm"
[fiber]
diameter = "0.5 mm"
friction = 0.5
[traverse]
motion = "continuous"
pitch = "0.53 mm"
left_stop = "0.26 mm"
right_stop = "0.26 mm"
start = "left"
free_length = "50 mm"
[traverse.reversal]
kind = "instant"
[wind]
turns = )" +
         std::to_string(turns) + "\n";
}

}  // namespace laywright
