// No command writes over what it reads, or writes a kind of file under another one's ending.
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "app/program.h"

using namespace laywright;
using Catch::Matchers::Contains;
namespace fs = std::filesystem;

namespace {

// A command, and the ending of a file that it writes.
struct Writer {
  std::string command, ending;
};

const std::vector<Writer> writers{{"picture PLAN -o ", ".png"},    {"share PLAN -o ", ".html"},
                                  {"sheet PLAN -o ", ".pdf"},      {"sheet PLAN -o ", ".svg"},
                                  {"export PLAN -o ", ".glb"},     {"export PLAN -o ", ".csv"},
                                  {"export PLAN -o ", ".webp"},    {"improve PLAN --trials 8 -o ", ".toml"},
                                  {"open PLAN --state ", ".json"}, {"open other.lay.toml PLAN --state ", ".json"}};

// The command with this plan and this output.
std::string line(const Writer& writer, const std::string& plan, const std::string& output) {
  std::string command = writer.command;
  command.replace(command.find("PLAN"), 4, plan);
  return "env -u DISPLAY -u WAYLAND_DISPLAY $LW " + command + output;
}

void refuses(const Workshop& shop, const std::string& command, const std::string& named) {
  CAPTURE(command);
  const Ran ran = shop.run(command);
  CHECK(ran.code == 2);
  CHECK(ran.out.empty());
  CHECK_THAT(ran.err, Contains(named) && Contains("is what the command reads"));
}

}  // namespace

TEST_CASE("no command writes over its plan, by whatever name that has") {
  for (const Writer& writer : writers) {
    const Workshop shop;
    const std::string plan = "a" + writer.ending;
    shop.write(plan, small_plan());
    shop.write("other.lay.toml", small_plan());
    fs::create_directory(shop.at("deep"));
    fs::create_symlink("../" + plan, shop.at("deep/symbolic" + writer.ending));
    fs::create_hard_link(shop.at(plan), shop.at("deep/hard" + writer.ending));
    for (const std::string& output : {plan, "./deep/../" + plan, shop.at(plan).string(),
                                      "deep/symbolic" + writer.ending, "deep/hard" + writer.ending}) {
      refuses(shop, line(writer, plan, output), output);
    }
    // And the other way round: the plan is read through the link.
    refuses(shop, line(writer, "deep/symbolic" + writer.ending, plan), plan);
    CHECK(content(shop.at(plan)) == small_plan());
    CHECK(fs::is_symlink(shop.at("deep/symbolic" + writer.ending)));
  }
}

TEST_CASE("no set of files takes the place of what is read") {
  const Workshop shop;
  fs::create_directory(shop.at("out"));
  for (const char* name : {"section.svg", "study.json", "study-2-of-3.json", "frame-0007.png"}) {
    shop.write("out/" + std::string(name), small_plan());
  }
  refuses(shop, "$LW lay out/section.svg --out out", "out/section.svg");
  refuses(shop, "$LW lay ./out/../out/section.svg --out out/ --json", "out/section.svg");
  refuses(shop, "$LW study out/study.json --vary traverse.pitch=0.5mm:0.6mm:2 --out out", "out/study.json");
  refuses(shop, "$LW study out/study-2-of-3.json --vary traverse.pitch=0.5mm:0.6mm:3 --shard 2/3 --out out",
          "out/study-2-of-3.json");
  refuses(shop, "$LW study --merge out/study-2-of-3.json out/study.json --out out", "out/study.json");
  refuses(shop, "$LW export out/frame-0007.png --frames out --seconds 1", "out/frame-0007.png");
  for (const auto& file : fs::directory_iterator(shop.at("out"))) CHECK(content(file.path()) == small_plan());
  // Beside what is written, a plan may stand.
  CHECK(shop.run("$LW lay out/frame-0007.png --out out").code == 0);
}

TEST_CASE("an ending of another kind of file is refused, and the good ones are told") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  const std::vector<Writer> good{{"picture PLAN -o ", ".png"},
                                 {"share PLAN -o ", ".html or .htm"},
                                 {"sheet PLAN -o ", ".pdf, .svg or .png"},
                                 {"export PLAN -o ", ".glb, .vtp, .csv, .svg, .png or .webp"},
                                 {"improve PLAN --trials 8 -o ", ".toml"},
                                 {"open PLAN --state ", ".json"}};
  for (const Writer& writer : good) {
    for (const char* output : {"b.txt", "b", "b.lay.toml.bak", ".png.txt"}) {
      const Ran ran = shop.run(line(writer, "a.lay.toml", output));
      CAPTURE(writer.command, output, ran.err);
      CHECK(ran.code == 2);
      CHECK_THAT(ran.err, Contains(output) && Contains("must be " + writer.ending));
      CHECK_FALSE(fs::exists(shop.at(output)));
    }
  }
  CHECK(shop.run("$LW picture a.lay.toml -o b.lay.toml").code == 2);
  CHECK(shop.run("$LW picture a.lay.toml -o B.PNG --size 64x64").code == 0);
  // What is no file says nothing by its name.
  CHECK(shop.run("$LW picture a.lay.toml -o /dev/stdout --size 64x64 | head -c 4").out == "\x89PNG");
}

TEST_CASE("an output without a name is told, not left out") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  for (const char* command :
       {"$LW lay a.lay.toml --out ''", "$LW study a.lay.toml --vary traverse.pitch=0.5mm:0.6mm:2 --out ''",
        "$LW improve a.lay.toml --trials 8 -o ''", "$LW picture a.lay.toml -o ''", "$LW sheet a.lay.toml -o ''",
        "$LW export a.lay.toml -o ''", "$LW export a.lay.toml --frames ''", "$LW share a.lay.toml -o ''"}) {
    const Ran ran = shop.run(command);
    CAPTURE(command);
    CHECK(ran.code == 2);
    CHECK(ran.out.empty());
    CHECK_THAT(ran.err, Contains("the name of a"));
  }
}

TEST_CASE("a link stays a link, whatever is written and whether its file is there or not") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  fs::create_directory(shop.at("real"));
  const auto link = [&](const std::string& name, const std::string& to) { fs::create_symlink(to, shop.at(name)); };
  shop.write("real/old.csv", "old");
  link("old.csv", "real/old.csv");
  link("new.csv", "real/new.csv");
  for (const std::string name : {"old.csv", "new.csv"}) {
    CHECK(shop.run("$LW export a.lay.toml -o " + name).code == 0);
    CHECK(fs::is_symlink(shop.at(name)));
    CHECK_THAT(content(shop.at("real/" + name)), Contains("turn,"));
  }
  link("folder", "real");
  CHECK(shop.run("$LW lay a.lay.toml --out folder").code == 0);
  CHECK(fs::is_symlink(shop.at("folder")));
  CHECK(fs::exists(shop.at("real/summary.txt")));
  // All files or none cannot be had where one of them stands elsewhere.
  fs::create_directory(shop.at("reports"));
  link("reports/sheet.pdf", "../real/elsewhere.pdf");
  const Ran ran = shop.run("$LW lay a.lay.toml --out reports");
  CHECK(ran.code == 3);
  CHECK_THAT(ran.err, Contains("reports/sheet.pdf") && Contains("no link is replaced"));
  CHECK(fs::is_symlink(shop.at("reports/sheet.pdf")));
  CHECK(std::distance(fs::directory_iterator(shop.at("reports")), fs::directory_iterator()) == 1);
}
