// Saving a share page from the window's side; what stands in the page is tests/web's matter.
#include "bench_for_tests.h"

#include <atomic>
#include <new>

#include "jobs/no_more_threads.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

// What a page is made of, put one after the other.
std::string plain_page(const PageOrder& order, Progress&) {
  return "title: " + order.plan.title() + "; turns: " + std::to_string(order.wound->build().turns) + "\n" +
         order.plan_text();
}

// A bench with a plan that lies, and the way to a file beside it.
struct Sharer {
  TemporaryFolder folder;
  Workbench bench;

  explicit Sharer(MakePage make) : bench(options(std::move(make))) {
    const auto plan = folder.path() / "small.lay.toml";
    std::ofstream(plan) << small_plan;
    bench.start({plan.string()});
    wait_for_build(bench);
  }

  Workbench::Options options(MakePage make) {
    Workbench::Options options = options_in(folder);
    options.make_page = std::move(make);
    return options;
  }

  [[nodiscard]] std::string path(const char* name) const { return (folder.path() / name).string(); }

  FileSaving saved(const char* name) {
    REQUIRE(bench.apply(cmd::save_page(path(name))));
    return outcome();
  }
  FileSaving outcome() {
    REQUIRE(wait_until(bench, [&] { return bench.page_saving() && bench.page_saving()->outcome; }));
    return *bench.page_saving();
  }
  [[nodiscard]] const std::string& last_notice() const { return bench.notices().back().text; }
};

}  // namespace

TEST_CASE("a page is made of the plan as it stands, not as it was saved") {
  Sharer sharer(plain_page);
  Workbench& bench = sharer.bench;
  REQUIRE(bench.apply(cmd::set_title("Another title", 1)));
  REQUIRE(bench.apply(cmd::ask(cmd::Question::share_page)));
  wait_for_build(bench);
  const FileSaving saving = sharer.saved("a.html");
  CHECK(saving.outcome->empty());
  CHECK_FALSE(saving.stopped);
  const std::string page = contents(sharer.path("a.html"));
  CHECK(saving.bytes == page.size());
  CHECK(page.find("title: Another title; turns: 100.0") != std::string::npos);
  CHECK(page.find("title = \"Another title\"") != std::string::npos);
  CHECK(page.find("# A plan with comments.") != std::string::npos);
  CHECK(bench.question() == cmd::Question::share_page);  // which tells that it is saved
  CHECK(sharer.saved("b.HTM").outcome->empty());
}

TEST_CASE("without the page in the program, and under a name no browser takes, it says what would help") {
  Sharer without(MakePage{});
  CHECK_FALSE(without.bench.apply(cmd::ask(cmd::Question::share_page)));
  CHECK(without.last_notice().find("LAYWRIGHT_SHARE_PAGE") != std::string::npos);
  CHECK_FALSE(without.bench.apply(cmd::save_page(without.path("a.html"))));

  Sharer with(plain_page);
  CHECK_FALSE(with.bench.apply(cmd::save_page(with.path("a.pdf"))));
  CHECK(with.last_notice().find(".html") != std::string::npos);
  REQUIRE(with.bench.apply(cmd::type_field("traverse.pitch", "wide", 0)));
  CHECK_FALSE(with.bench.apply(cmd::save_page(with.path("a.html"))));
  CHECK(with.last_notice().find("not sound") != std::string::npos);
  CHECK_FALSE(std::filesystem::exists(with.path("a.html")));
}

TEST_CASE("a page that is stopped leaves the file as it was, how far it is, is told") {
  std::atomic<bool> begun = false;
  Sharer sharer([&begun](const PageOrder&, Progress& progress) {
    progress.report(0.5);
    begun = true;
    while (!progress.cancelled()) std::this_thread::sleep_for(std::chrono::milliseconds(1));
    return std::string("half a page");
  });
  Workbench& bench = sharer.bench;
  CHECK_FALSE(bench.apply(cmd::stop_saving_page()));
  std::ofstream(sharer.path("a.html")) << "the old page";
  REQUIRE(bench.apply(cmd::save_page(sharer.path("a.html"))));
  REQUIRE(wait_until(bench, [&] { return begun.load(); }));
  CHECK(bench.page_saving()->share == Approx(0.5).margin(0.05));
  CHECK(bench.seconds_to_next_poll().value() <= 0.1);
  CHECK_FALSE(bench.apply(cmd::save_page(sharer.path("b.html"))));  // one at a time
  REQUIRE(bench.apply(cmd::stop_saving_page()));
  CHECK(sharer.outcome().stopped);
  CHECK(contents(sharer.path("a.html")) == "the old page");
}

TEST_CASE("a page that fails is told of, in the dialog or, when that is closed, as all else is") {
  Sharer sharer([](const PageOrder& order, Progress& progress) -> std::string {
    if (order.plan.title() == "Cursed") throw std::runtime_error("the printer is on fire");
    return plain_page(order, progress);
  });
  Workbench& bench = sharer.bench;
  REQUIRE(bench.apply(cmd::save_page(sharer.path("no/a.html"))));
  REQUIRE(bench.apply(cmd::answered()));
  CHECK_FALSE(sharer.outcome().outcome->empty());
  REQUIRE_FALSE(bench.notices().empty());
  CHECK(sharer.last_notice().find("was not written") != std::string::npos);

  const std::size_t notices = bench.notices().size();
  REQUIRE(bench.apply(cmd::set_title("Cursed", 2)));
  wait_for_build(bench);
  const std::string what = sharer.saved("b.html").outcome->front().what;
  CHECK(what.find("the share page (the printer is on fire)") != std::string::npos);
  CHECK(bench.notices().size() == notices);
  CHECK_FALSE(std::filesystem::exists(sharer.path("b.html")));
}

TEST_CASE("whatever a page throws is told, and so is that no thread is to be had for it") {
  Sharer sharer([](const PageOrder& order, Progress& progress) -> std::string {
    if (order.plan.title() == "Vast") throw std::bad_alloc();
    if (order.plan.title() == "Strange") throw 7;
    return plain_page(order, progress);
  });
  Workbench& bench = sharer.bench;
  const auto what = [&] { return sharer.saved("a.html").outcome->at(0).what; };
  REQUIRE(bench.apply(cmd::set_title("Vast", 1)));
  wait_for_build(bench);
  {
    const NoMoreThreads none;
    CHECK(what().find("no further thread for the share page") != std::string::npos);
  }
  CHECK(what().find("not enough memory for the share page") != std::string::npos);
  REQUIRE(bench.apply(cmd::set_title("Strange", 2)));
  wait_for_build(bench);
  CHECK(what().find("went wrong with the share page") != std::string::npos);
  CHECK_FALSE(std::filesystem::exists(sharer.path("a.html")));
  REQUIRE(bench.apply(cmd::set_title("Plain", 3)));
  wait_for_build(bench);
  CHECK(sharer.saved("a.html").outcome->empty());
}

TEST_CASE("a page and a sheet that were asked for are written, even when the program ends at once") {
  const TemporaryFolder elsewhere;
  const std::string page = (elsewhere.path() / "a.html").string(), sheet = (elsewhere.path() / "a.svg").string();
  {
    Sharer sharer(plain_page);
    Drawing drawing;
    drawing.width_mm = drawing.height_mm = 10.0;
    const auto pages = std::make_shared<const std::vector<Drawing>>(1, drawing);
    REQUIRE(sharer.bench.apply(cmd::save_page(page)));
    REQUIRE(sharer.bench.apply(cmd::save_sheet(sheet, pages, 1)));
  }
  CHECK(contents(page).starts_with("title: "));
  CHECK(contents(sheet).find("</svg>") != std::string::npos);
}

TEST_CASE("neither a page nor a sheet takes the place of the plan, by whatever name that has") {
  Sharer sharer(plain_page);
  wait_for_build(sharer.bench);
  const std::string plan = contents(sharer.path("small.lay.toml"));
  std::filesystem::create_symlink("small.lay.toml", sharer.path("link.html"));
  std::filesystem::create_hard_link(sharer.path("small.lay.toml"), sharer.path("link.pdf"));
  CHECK_FALSE(sharer.bench.apply(cmd::save_page(sharer.path("link.html"))));
  CHECK(sharer.last_notice().find("page was not saved") != std::string::npos);
  const auto pages = std::make_shared<const std::vector<Drawing>>(2);
  CHECK_FALSE(sharer.bench.apply(cmd::save_sheet(sharer.path("link.pdf"), pages, 1)));
  CHECK(sharer.last_notice().find("sheet was not saved") != std::string::npos);
  CHECK(contents(sharer.path("small.lay.toml")) == plan);
}
