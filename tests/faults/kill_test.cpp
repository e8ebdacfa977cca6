// The program is killed or stopped, at any moment: files are the old ones or the new ones, never half. Where it is killed
// at a chosen step: killed_step_test.
#include <csignal>
#include <random>

#include <sys/wait.h>
#include <catch2/catch.hpp>

#include "faults/patient.h"
#include "plan/plan_file.h"
#include "plan/plan_writer.h"

using namespace laywright;
namespace fs = std::filesystem;

namespace {

void sleep_us(long microseconds) {
  const timespec time{microseconds / 1'000'000, microseconds % 1'000'000 * 1000};
  nanosleep(&time, nullptr);
}

// Saves two plans over each other, without end.
[[noreturn]] void keep_saving(const fs::path& path, const PlanDraft& one, const PlanDraft& other) {
  for (;;) {
    if (!save_plan(path, one).ok() || !save_plan(path, other).ok()) std::_Exit(1);
  }
}

}  // namespace

TEST_CASE("killed a hundred times while saving a plan") {
  const Workshop shop;
  const fs::path path = shop.at("a.lay.toml");
  PlanDraft one = read_plan(small_plan(), "a.lay.toml").value();
  PlanDraft other = one;
  one.notes = std::string(200'000, '1');  // many writes of the system
  other.notes = std::string(300'000, '2');
  const std::string saved_one = write_plan(one);
  const std::string saved_other = write_plan(other);
  REQUIRE(save_plan(path, one).ok());
  std::mt19937 random(7);
  int found_one = 0;
  for (int kill = 0; kill < 100; ++kill) {
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) keep_saving(path, one, other);
    sleep_us(1000 + static_cast<long>(random() % 15'000));
    REQUIRE(::kill(child, SIGKILL) == 0);
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    REQUIRE(WIFSIGNALED(status));
    const std::string bytes = content(path);
    REQUIRE((bytes == saved_one || bytes == saved_other));
    found_one += bytes == saved_one ? 1 : 0;
  }
  // It was in the middle of its work: both were found.
  WARN(found_one << " of 100 kills left the one plan, the rest the other");
  // What a kill leaves is cleared away by the next one that saves: at most the last is there, and then none.
  CHECK(files_in(shop.at("")).size() <= 2);
  REQUIRE(save_plan(path, one).ok());
  CHECK(files_in(shop.at("")).size() == 1);
}

TEST_CASE("stopped with Ctrl-C at any moment: all files or none") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan(400));
  REQUIRE(shop.run("$LW lay a.lay.toml --out new").code == 0);
  const Files whole = files_in(shop.at("new"));
  std::mt19937 random(9);
  for (int stop = 0; stop < 25; ++stop) {
    const double after_s = 0.001 * static_cast<double>(1 + random() % 400);
    const char* signal = stop % 2 == 0 ? "INT" : "TERM";
    const int code = shop.run(fmt::format("timeout --preserve-status --signal={} {} $LW lay a.lay.toml --out here",
                                          signal, after_s))
                         .code;
    CAPTURE(stop, after_s, code);
    // Before it has begun to listen, and after it has ended its work, the signal ends it as it ends any program.
    const bool known = code == 0 || code == 130 || code == 128 + SIGINT || code == 128 + SIGTERM || code == -1;
    CHECK(known);
    const Files files = without_leavings(files_in(shop.at("here")));
    CHECK((files.empty() || files == whole));
    if (code == 130) CHECK_FALSE(fs::exists(shop.at("here")));
    fs::remove_all(shop.at("here"));
  }
  // Where none of these met it at work, this one does.
  shop.write("long.lay.toml", small_plan(200'000));
  CHECK(shop.stopped("lay long.lay.toml --out here", "TERM").code == 130);
  CHECK_FALSE(fs::exists(shop.at("here")));
}
