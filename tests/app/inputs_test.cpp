// What is no plain file, or is no input at all: told at once by every command, in words that say what is due.
#include <string>

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include "app/program.h"

using namespace laywright;
using Catch::Matchers::Contains;
namespace fs = std::filesystem;

namespace {

// IN is the input. The limit of time only ends what hangs.
const char* const readers[] = {"check IN",
                               "lay IN",
                               "lay --json IN",
                               "cause IN",
                               "capacity IN",
                               "pattern IN",
                               "sheet IN -o a.pdf",
                               "picture IN -o a.png",
                               "share IN -o a.html",
                               "export IN -o a.csv",
                               "improve IN --trials 8",
                               "study IN --vary traverse.pitch=0.5mm:0.6mm:2",
                               "study --merge IN",
                               "fit --template IN",
                               "fit a.lay.toml IN"};

// An instrumented program reserves terabytes of addresses for itself.
#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
constexpr const char* memory = "unlimited";
#else
constexpr const char* memory = "4000000";
#endif

Ran read(const Workshop& shop, std::string command, const std::string& input) {
  command.replace(command.find("IN"), 2, input);
  return shop.run(fmt::format("(ulimit -v {}; timeout --signal=KILL 60 $LW {})", memory, command));
}

}  // namespace

TEST_CASE("folders, pipes and devices are no inputs, whatever the command") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  fs::create_directory(shop.at("folder"));
  REQUIRE(shop.run("mkfifo pipe && ln -s pipe link").code == 0);
  struct Input {
    const char *name, *kind;
  };
  for (const char* reader : readers) {
    for (const Input& input : {Input{"folder", "is a folder"}, Input{"pipe", "is a pipe"},
                               Input{"link", "is a pipe"}, Input{"/dev/zero", "is a device"}}) {
      const Ran ran = read(shop, reader, input.name);
      CAPTURE(reader, input.name, ran.err);
      CHECK(ran.code == 1);
      CHECK(ran.out.empty());
      CHECK_THAT(ran.err, Contains(std::string(input.name) + ": error: " + input.kind) && Contains("it must be a"));
      CHECK_THAT(ran.err, !Contains("memory"));
    }
  }
}

TEST_CASE("an input that is larger than any of its kind is not read") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  REQUIRE(shop.run("truncate -s 1T large").code == 0);
  for (const char* reader : readers) {
    const Ran ran = read(shop, reader, "large");
    CAPTURE(reader, ran.err);
    CHECK(ran.code == 1);
    CHECK_THAT(ran.err, Contains("large: error: is larger than") && Contains("never is"));
  }
}

TEST_CASE("a shard that is broken is told by its own name and place") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  for (const char* shard : {"1/2", "2/2"}) {
    const std::string command = "$LW study a.lay.toml --vary traverse.pitch=0.5mm:0.6mm:4 --out shards --shard ";
    REQUIRE(shop.run(command + shard).code == 0);
  }
  const std::string merge = "$LW study --merge shards/study-1-of-2.json shards/study-2-of-2.json";
  REQUIRE(shop.run(merge).code == 0);
  const std::string sound = content(shop.at("shards/study-2-of-2.json"));

  shop.write("shards/study-2-of-2.json", sound.substr(0, sound.size() / 2));
  const Ran torn = shop.run(merge);
  CHECK(torn.code == 1);
  CHECK_THAT(torn.err, Contains("shards/study-2-of-2.json:") && Contains("ends in the middle"));
  CHECK_THAT(torn.err, !Contains("exception"));

  std::string altered = sound;
  altered.replace(altered.find("barrel_diameter"), 15, "barel_diameter");
  shop.write("shards/study-2-of-2.json", altered);
  const Ran other = shop.run(merge);
  CHECK(other.code == 1);
  CHECK_THAT(other.err,
             Contains("shards/study-2-of-2.json: error: spool.barel_diameter") && !Contains("a.lay.toml:"));
}

TEST_CASE("a pipe that nobody reads is not waited for, and one that is read gets all") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  REQUIRE(shop.run("mkfifo pipe.csv").code == 0);
  const Ran alone = shop.run("timeout --signal=KILL 60 $LW export a.lay.toml -o pipe.csv");
  CHECK(alone.code == 3);
  CHECK_THAT(alone.err, Contains("pipe.csv") && Contains("nobody reads"));
  CHECK(fs::is_fifo(shop.at("pipe.csv")));
  REQUIRE(shop.run("$LW export a.lay.toml -o plain.csv").code == 0);
  CHECK(shop.run("cat pipe.csv >read.csv & timeout --signal=KILL 60 $LW export a.lay.toml -o pipe.csv && wait && "
                 "cmp plain.csv read.csv")
            .code == 0);
  CHECK(fs::is_fifo(shop.at("pipe.csv")));
}
