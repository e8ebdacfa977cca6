// The disk is full, or may not be written to: the program says so, returns 3, and what stood there stands there still.
#include <catch2/catch.hpp>

#include "faults/patient.h"

using namespace laywright;
using Catch::Matchers::Contains;
namespace fs = std::filesystem;

namespace {

// Files may not grow beyond this many blocks of 512 bytes. Ignoring the signal makes a write fail, as on a full disk.
std::string with_little_room(int blocks, const std::string& command) {
  return fmt::format("(trap '' XFSZ; ulimit -f {}; {})", blocks, command);
}

// A disk of its own in the folder `disk`, so small, where the system lets anybody have one.
std::string on_small_disk(int kilobytes, const std::string& command) {
  return fmt::format(
      "LW=\"$LW\" unshare --map-root-user --mount sh -c 'mount -t tmpfs -o size={}k none disk && {}; status=$?; "
      "ls -A disk >left; exit $status'",
      kilobytes, command);
}

}  // namespace

TEST_CASE("reports on a full disk: none is replaced, nothing is left") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  REQUIRE(shop.run("$LW lay a.lay.toml --out old --seed 5").code == 0);
  const Files before = files_in(shop.at("old"));
  for (const int blocks : {0, 1, 4, 64, 400}) {
    CAPTURE(blocks);
    // Not the output of the program itself: that goes into files, too.
    CHECK(shop.run(with_little_room(blocks, "$LW lay a.lay.toml --out old >/dev/null 2>/dev/null")).code == 3);
    CHECK(shop.run(with_little_room(blocks, "$LW lay a.lay.toml --out new >/dev/null 2>/dev/null")).code == 3);
    CHECK_FALSE(fs::exists(shop.at("new")));
    CHECK(files_in(shop.at("old")) == before);
  }
  // And the limit alone does no harm.
  CHECK(shop.run(with_little_room(1'000'000, "$LW lay a.lay.toml --out old >/dev/null 2>/dev/null")).code == 0);
}

TEST_CASE("one file on a full disk: the old one stays") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  fs::create_directory(shop.at("here"));
  shop.write("here/out.csv", "old");
  // Through a pipe, what it says takes no room.
  const Ran ran = shop.run(with_little_room(8, "$LW export a.lay.toml -o here/out.csv 2>&1") + " | cat");
  CHECK_THAT(ran.out, Contains("here/out.csv") && Contains("cannot be written"));
  CHECK(shop.run(with_little_room(8, "$LW export a.lay.toml -o here/out.csv >/dev/null 2>/dev/null")).code == 3);
  CHECK(files_in(shop.at("here")) == Files{{"out.csv", "old"}});
}

TEST_CASE("a disk that really is full") {
  const Workshop shop;
  fs::create_directory(shop.at("disk"));
  if (shop.run(on_small_disk(64, "true")).code != 0) {
    WARN("not run: this system lets nobody mount a disk of their own");
    return;
  }
  shop.write("a.lay.toml", small_plan());
  const Ran set = shop.run(on_small_disk(64, "$LW lay a.lay.toml --out disk/reports"));
  CHECK(set.code == 3);
  CHECK_THAT(set.err, Contains("disk/reports") && Contains("No space left"));
  CHECK(content(shop.at("left")).empty());
  const Ran file = shop.run(on_small_disk(64, "$LW export a.lay.toml -o disk/a.csv"));
  CHECK(file.code == 3);
  CHECK_THAT(file.err, Contains("disk/a.csv") && Contains("No space left"));
  CHECK(content(shop.at("left")).empty());
  CHECK(shop.run(on_small_disk(20'000, "$LW lay a.lay.toml --out disk/reports")).code == 0);
}

TEST_CASE("a folder that may not be written to") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  fs::create_directory(shop.at("shut"));
  std::ofstream(shop.at("shut") / "out.csv") << "old";
  fs::copy_file(LAYWRIGHT_PROGRAM, shop.at("program"));
  fs::permissions(shop.at("shut"),
                  fs::perms::owner_read | fs::perms::owner_exec | fs::perms::others_read | fs::perms::others_exec);
  fs::permissions(shop.at(""), fs::perms::all);
  const Ran set = shop.run(bound_by_permissions("./program lay a.lay.toml --out shut"));
  CHECK(set.code == 3);
  CHECK_THAT(set.err, Contains("shut") && Contains("Permission denied"));
  const Ran below = shop.run(bound_by_permissions("./program lay a.lay.toml --out shut/reports"));
  CHECK(below.code == 3);
  const Ran file = shop.run(bound_by_permissions("./program export a.lay.toml -o shut/out.csv"));
  CHECK(file.code == 3);
  CHECK_THAT(file.err, Contains("shut/out.csv"));
  fs::permissions(shop.at("shut"), fs::perms::all);
  CHECK(files_in(shop.at("shut")) == Files{{"out.csv", "old"}});
}
