// An order over spools in text, JSON, CSV and on paper: one truth. The table is read by Python's csv, the paper by pdftotext.
#include <filesystem>
#include <string>

#include <fmt/format.h>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "answers/batch_report.h"
#include "answers/batch_rows.h"
#include "answers/batch_words.h"
#include "figures/figures.h"
#include "order/reel_shop.h"
#include "paper/batch_files.h"
#include "paper/batch_sheet.h"
#include "paper/cairo_sink.h"
#include "paper/paper_text.h"

using namespace laywright;
using Catch::Matchers::Contains;
using nlohmann::json;

namespace {

const char* const ordered =
    "customer = \"A \\\"and\\\" B, Sons\"\n[[piece]]\nlength = \"150 m\"\ncount = 4\n[[piece]]\nlength = \"500 m\"\n"
    "[delivery]\nleader = \"4 m\"\ntail = \"3 m\"\nsample = \"1 m\"\nsamples = 2\nsplices = 3\n";

json records_of(const std::string& csv) {
  return json::parse(
      read_by("python3 -c 'import csv, json, sys; print(json.dumps(list(csv.DictReader(open(sys.argv[1], "
              "newline=\"\", encoding=\"utf-8\")))))'",
              "batch.csv", csv, ""));
}

double number_in(const json& record, const char* key) { return std::stod(record.at(key).get<std::string>()); }

// One batch for all: it is not changed.
const Batch& batch() {
  static testing::ReelShop shop;
  static const Batch wound = shop.wound(ordered);
  return wound;
}

}  // namespace

TEST_CASE("a row of the table is told in feet, inches and pounds, too, with the units that it is told in") {
  // A foot is 304.8 mm, an inch 25.4 mm, a pound .45359237 kg: the agreement of 1959.
  const BatchRow metric = spool_row(batch(), 0), inch = spool_row(batch(), 0, true);
  CHECK(inch.net == figure(batch().spools[0].net_mm / 304.8, 2));
  CHECK(inch.diameter == figure(batch().winds[batch().spools[0].wind].outer_diameter_mm / 25.4, 5));
  CHECK(inch.fiber == figure(*batch().winds[batch().spools[0].wind].fiber_mass_kg / 0.45359237, 3));
  CHECK(metric.net == figure(batch().spools[0].net_mm / 1e3, 2));
  CHECK((batch_units().net == "m" && batch_units().diameter == "mm" && batch_units().fiber == "kg"));
  CHECK((batch_units(true).net == "ft" && batch_units(true).clearance == "in" && batch_units(true).fiber == "lb"));
  for (const std::string& words : {batch_line(batch(), true), besides_words(batch().order, true), inch.takes,
                                   room_words(batch().kinds[0], true)}) {
    CAPTURE(words);
    CHECK(words.find(" ft") != std::string::npos);
    CHECK(words.find(" m ") == std::string::npos);
    CHECK(words.find(" mm") == std::string::npos);
  }
}

TEST_CASE("text, JSON, table and paper of an order say the same") {
  const json document = json::parse(batch_json(batch()));
  const std::string text = single_spaced(batch_text(batch()));
  const std::vector<Drawing> pages = draw_batch_sheet(batch(), "2026-11-29");
  const std::string paper_words = single_spaced(text_of(to_pdf(pages), 1));
  const json records = records_of(batch_csv(batch()));
  CHECK(document.at("format") == "lay-batch 1");
  const json& spools = document.at("spools");
  REQUIRE(spools.size() == batch().spools.size());
  REQUIRE(records.size() == spools.size() + 1);
  for (std::size_t i = 0; i < spools.size(); ++i) {
    const json &spool = spools[i], &record = records[i];
    CAPTURE(i, spool.dump());
    for (const char* key : {"net_m", "gross_m", "splices", "turns", "time_s"})
      CHECK(number_in(record, key) == Approx(spool.at(key).get<double>()).epsilon(1e-8));
    CHECK(number_in(record, "fiber_kg") == Approx(spool.at("fiber_mass_kg").get<double>()).epsilon(1e-8));
    CHECK(number_in(record, "with_spool_kg") == Approx(spool.at("fiber_mass_kg").get<double>() + 0.5).epsilon(1e-8));
    CHECK(number_in(record, "outer_diameter_mm") == Approx(spool.at("outer_diameter").get<double>()).epsilon(1e-8));
    CHECK(number_in(record, "rim_clearance_mm") == Approx(spool.at("rim_clearance").get<double>()).epsilon(1e-8));
    CHECK(record.at("revision") == spool.at("revision"));
    CHECK(record.at("verdict") == spool.at("verdict").at("grade"));
    CHECK(record.at("reason") == spool.at("verdict").at("reason"));
    const std::string row = fmt::format("{} {} {} {} {} {} {} {} {}", i + 1, figure(spool.at("net_m"), 2),
                                        figure(spool.at("gross_m"), 2), spool.at("splices").get<int>(),
                                        duration_text(spool.at("time_s")), figure(spool.at("fiber_mass_kg"), 3),
                                        figure(spool.at("outer_diameter"), 3), figure(spool.at("rim_clearance"), 2),
                                        spool.at("verdict").at("grade").get<std::string>());
    CHECK_THAT(text, Contains(row));
    CHECK_THAT(paper_words, Contains(row));
    // The verdict with what it is of, as it stands on each wind's own report.
    const std::string verdict = spool.at("verdict").at("line");
    CHECK_THAT(verdict, Contains("(this draw"));
    CHECK_THAT(text, Contains(verdict));
    CHECK_THAT(paper_words, Contains(verdict));
    const std::string takes = record.at("takes");
    CHECK_THAT(text, Contains("reel.lay.toml: " + takes));
    CHECK_THAT(paper_words, Contains("reel.lay.toml: " + takes));
  }
}

TEST_CASE("the total line of every document has the exact sums") {
  const json document = json::parse(batch_json(batch())), records = records_of(batch_csv(batch()));
  const json& totals = document.at("totals");
  const json& total = records.back();
  CHECK(total.at("spool") == "total");
  for (const char* key : {"net_m", "gross_m", "splices", "time_s"}) {
    CAPTURE(key);
    double of_document = 0.0, of_table = 0.0;
    for (std::size_t i = 0; i + 1 < records.size(); ++i) {
      of_document += document.at("spools")[i].at(key).get<double>();
      of_table += number_in(records[i], key);
    }
    CHECK(totals.at(key).get<double>() == Approx(of_document).epsilon(1e-12));
    CHECK(number_in(total, key) == Approx(of_table).epsilon(1e-8));
  }
  CHECK(totals.at("net_m") == 1100.0);
  CHECK(totals.at("gross_m").get<double>() ==
        totals.at("net_m").get<double>() + totals.at("leader_m").get<double>() + totals.at("tail_m").get<double>() +
            totals.at("samples_m").get<double>());
  const std::string row =
      fmt::format("otal {} {} {} {} {} {}", figure(totals.at("net_m"), 2), figure(totals.at("gross_m"), 2),
                  totals.at("splices").get<int>(), duration_text(totals.at("time_s")),
                  figure(totals.at("fiber_mass_kg"), 3), totals.at("worst").get<std::string>());
  CHECK_THAT(single_spaced(batch_text(batch())), Contains(row));
  CHECK_THAT(single_spaced(text_of(to_pdf(draw_batch_sheet(batch(), "")), 1)), Contains(row));
}

TEST_CASE("what a spool takes is told piece by piece, and a piece that goes on says where") {
  testing::ReelShop shop;
  Batch whole = shop.wound("[[piece]]\nlength = \"50 m\"\ncount = 3\n[[piece]]\nlength = \"60 m\"\n");
  REQUIRE(whole.spools.size() == 1);
  CHECK(taken_words(whole, whole.spools[0]) == "pieces 1 to 3 (50 m each), piece 4 (60 m)");
  bool goes_on = false;
  for (const BatchSpool& spool : batch().spools) {
    const std::string words = taken_words(batch(), spool);
    goes_on = goes_on || (words.find(" from ") != std::string::npos && words.find(" of 500 m") != std::string::npos);
  }
  CHECK(goes_on);
  CHECK_THAT(single_spaced(batch_text(batch())),
             Contains("estimates") && Contains("3 splices on a spool at most") && Contains("A \"and\" B, Sons"));
  CHECK_THAT(batch_text(whole), Contains("No splices: pieces stay whole."));
}

TEST_CASE("what is not known is said so, with the key that tells it") {
  testing::ReelShop shop;
  std::string bare = testing::reel;
  for (const std::string line : {"linear_mass = \"1 kg/km\"\n", "line_speed = \"60 m/min\"\n"})
    bare.erase(bare.find(line), line.size());
  (void)shop.folder.file("reel.lay.toml", bare);
  const Batch unknown = shop.wound("[[piece]]\nlength = \"50 m\"\n");
  CHECK_THAT(single_spaced(batch_text(unknown)),
             Contains("not known") && Contains("wind.line_speed") && Contains("fiber.linear_mass"));
  CHECK(json::parse(batch_json(unknown)).at("totals").at("time_s").is_null());
  CHECK(records_of(batch_csv(unknown))[0].at("time_s") == "");
}

TEST_CASE("an order of many spools goes over pages, each with its head") {
  testing::ReelShop shop;
  const Batch many = shop.wound("[[piece]]\nlength = \"200 m\"\ncount = 60\n");
  REQUIRE(many.spools.size() == 60);
  const std::vector<Drawing> pages = draw_batch_sheet(many, "2026-11-29");
  CHECK(pages.size() > 1);
  const std::string pdf = to_pdf(pages);
  std::string all;
  for (std::size_t i = 0; i < pages.size(); ++i) {
    const std::string words = single_spaced(text_of(pdf, static_cast<int>(i) + 1));
    CHECK_THAT(words, Contains(fmt::format("page {} of {}, laywright", i + 1, pages.size())) &&
                          Contains("Clearance") && Contains("estimate"));
    all += words;
  }
  for (int spool = 1; spool <= 60; ++spool) CHECK_THAT(all, Contains(fmt::format(" {} 200.00 200.00 0 ", spool)));
  CHECK_THAT(all, Contains("Total 12,000.00 12,000.00"));
}

TEST_CASE("files that would take the place of an order or of its plans are told, whatever they are called") {
  testing::ReelShop shop;
  const Order order = shop.order("[[piece]]\nlength = \"100 m\"\n");
  (void)shop.folder.file("a.order.toml", "");
  const Batch small = batch_of(order, shop.kinds(order)).value();
  const std::filesystem::path folder = shop.folder.path();
  const Issues lost = lost_sources(
      small, {folder / "batch.csv", folder / "reel.lay.toml", folder / "." / "a.order.toml", folder / "b.pdf"});
  REQUIRE(lost.size() == 2);
  CHECK(lost.front().file == (folder / "reel.lay.toml").string());
  CHECK_THAT(lost.front().what, Contains("is a plan of the order, and would be lost"));
  CHECK_THAT(lost.back().what, Contains("is the order itself, and would be lost"));
}
