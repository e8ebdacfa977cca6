#include <catch2/catch.hpp>

#include "app/program.h"

using namespace laywright;
using Catch::Matchers::Contains;
namespace fs = std::filesystem;

TEST_CASE("sheet writes PDF, SVG and PNG, by the ending of the name") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  const Ran pdf = shop.run("$LW sheet a.lay.toml -o a.pdf");
  CHECK(pdf.code == 0);
  CHECK(pdf.out.empty());
  CHECK(pdf.err.empty());
  CHECK(content(shop.at("a.pdf")).starts_with("%PDF-"));
  CHECK_THAT(shop.run("pdfinfo a.pdf").out, Contains("2") && Contains("A4"));
  CHECK_THAT(shop.run("pdftotext a.pdf -").out, Contains("Small") && Contains("emergency stop"));

  CHECK(shop.run("$LW sheet a.lay.toml -o letter.pdf --paper letter").code == 0);
  CHECK_THAT(shop.run("pdfinfo letter.pdf").out, Contains("letter"));
  CHECK(shop.run("$LW sheet a.lay.toml -o one.svg && $LW sheet a.lay.toml -o two.PNG --page 2").code == 0);
  CHECK(shop.run("xmllint --noout --nonet one.svg").code == 0);
  CHECK(content(shop.at("two.PNG")).starts_with("\x89PNG"));
}

TEST_CASE("without OpenGL the sheet is made all the same") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  // No such vendor of a driver: EGL finds none.
  const Ran ran = shop.run("__EGL_VENDOR_LIBRARY_FILENAMES=/nowhere $LW sheet a.lay.toml -o a.pdf");
  CHECK(ran.code == 0);
  CHECK(ran.err.empty());
  CHECK_THAT(shop.run("pdftotext a.pdf -").out, Contains("Checkpoints"));
}

TEST_CASE("the same plan gives the same sheet") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  REQUIRE(shop.run("$LW sheet a.lay.toml -o one.pdf && $LW sheet a.lay.toml -o two.pdf").code == 0);
  CHECK(content(shop.at("one.pdf")) == content(shop.at("two.pdf")));
}

TEST_CASE("a sheet's wrong command line is 2, and says what would do") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  for (const char* command :
       {"$LW sheet a.lay.toml", "$LW sheet a.lay.toml -o a.doc", "$LW sheet a.lay.toml -o a.pdf --page 1",
        "$LW sheet a.lay.toml -o a.png --page 3", "$LW sheet a.lay.toml -o a.pdf --paper a5"}) {
    const Ran ran = shop.run(command);
    CAPTURE(command);
    CHECK(ran.code == 2);
    CHECK_FALSE(ran.err.empty());
  }
  CHECK_THAT(shop.run("$LW sheet a.lay.toml -o a.doc").err, Contains(".pdf, .svg or .png"));
  CHECK_FALSE(fs::exists(shop.at("a.pdf")));
}

TEST_CASE("a sheet that cannot be made leaves the old one") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  shop.write("bad.lay.toml", "format = \"lay-plan 1\"\n");
  shop.write("old.pdf", "old");
  CHECK(shop.run("$LW sheet bad.lay.toml -o old.pdf").code == 1);
  CHECK(content(shop.at("old.pdf")) == "old");
  const Ran nowhere = shop.run("$LW sheet a.lay.toml -o nowhere/a.pdf");
  CHECK(nowhere.code == 3);
  CHECK_THAT(nowhere.err, Contains("nowhere"));
  shop.write("long.lay.toml", small_plan(200'000));
  const Ran stopped = shop.stopped("sheet long.lay.toml -o old.pdf");
  CHECK(stopped.code == 130);
  CHECK(content(shop.at("old.pdf")) == "old");
}

TEST_CASE("lay tells the machine's side, in words and as a block of the document") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan() + "tension = \"2 N\"\nline_speed = \"60 m/min\"\n[takeup]\n" +
                               "control = \"constant torque\"\nspeed_ceiling = \"300 rpm\"\n");
  const Ran text = shop.run("$LW lay a.lay.toml");
  CHECK(text.code == 0);
  // 1 m/s on a barrel of 50 mm needs 378 rpm.
  CHECK_THAT(text.out, Contains("Machine\n") && Contains("378") && Contains("speed ceiling"));
  CHECK_THAT(shop.run("$LW lay a.lay.toml --json").out,
             Contains("\"takeup\"") && Contains("\"kind\": \"speed_ceiling\""));
  shop.write("quiet.lay.toml", small_plan());
  CHECK(shop.run("$LW lay quiet.lay.toml").out.find("Machine") == std::string::npos);
}
