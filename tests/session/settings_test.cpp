// What is remembered comes back; what is broken is noted and never fatal.
#include "bench_for_tests.h"

#include <sys/stat.h>

#include <random>

#include <fmt/format.h>

using namespace laywright;
using namespace laywright::testing;

namespace {

Settings odd_settings() {
  Settings settings;
  settings.window = {1920, 1000, -5, 40, true};
  settings.scale = 1.25;
  settings.view.colouring = Colouring::support;
  settings.view.outside = Outside::faded;
  settings.view.units = Units::inch;
  settings.view.theme = Theme::dark;
  settings.view.camera.projection = Projection::parallel;
  settings.view.findings = settings.view.dimensions = false;
  settings.view.flanges_see_through = true;
  settings.recent = {"/a/b \"quoted\".lay.toml", "/tmp/\xC3\xA9t\xC3\xA9.lay.toml"};
  settings.layout = "[Window][Plan]\nPos=0,0\n[[[[ \"\"\" \\ ]]]]\n";
  settings.page.for_customer = settings.page.letter.verdict = true;
  settings.page.letter.sender = "Corder \"&\" Sons";
  settings.page.logo = "/tmp/mark.svg";
  settings.page.letter.title = "of one plan alone";
  return settings;
}

}  // namespace

TEST_CASE("settings round trip") {
  const Settings settings = odd_settings();
  Issues notes;
  const Settings read = settings_from_text(settings_text(settings), "settings.toml", notes);
  CHECK(notes.empty());
  CHECK(same_settings(settings, read));
  CHECK(read.window == settings.window);
  CHECK(read.recent == settings.recent);
  CHECK(read.layout == settings.layout);
  CHECK(read.view.colouring == Colouring::support);
  CHECK(read.page.for_customer);
  CHECK(read.page.letter.verdict);
  CHECK(read.page.letter.sender == settings.page.letter.sender);
  CHECK(read.page.logo == settings.page.logo);
  CHECK(read.page.letter.title.empty());
  CHECK_FALSE(same_settings(settings, Settings{}));
}

TEST_CASE("each value that does not fit is noted and left as usual, the rest counts") {
  Issues notes;
  const Settings read = settings_from_text(R"(scale = 99
colour = "red"
recent = ["relative.lay.toml", 3, "/x.lay.toml", "/x.lay.toml"]
[window]
width = -5
height = 700
maximized = "yes"
x = 1e40
[view]
units = "furlong"
theme = "dark"
)",
                                           "settings.toml", notes);
  CHECK(read.scale == 1.0);
  CHECK(read.window.width == 1280);
  CHECK(read.window.height == 700);
  CHECK_FALSE(read.window.x);
  CHECK(read.view.units == Units::metric);
  CHECK(read.view.theme == Theme::dark);
  CHECK(read.recent == std::vector<std::string>{"/x.lay.toml"});
  CHECK(notes.size() == 8);
  for (const Issue& note : notes) CHECK(note.severity == Severity::warning);
}

TEST_CASE("half a place of the window is none") {
  Issues notes;
  const Settings settings = settings_from_text("[window]\nX = -10\ny = 20\n", "settings.toml", notes);
  CHECK_FALSE(settings.window.x);
  CHECK_FALSE(settings.window.y);
  REQUIRE(notes.size() == 2);
  CHECK(notes[1].what.find("half a place") != std::string::npos);
}

TEST_CASE("hostile settings never fail") {
  const std::string good = settings_text(odd_settings());
  std::mt19937 random(7);
  for (int i = 0; i < 3000; ++i) {
    std::string text = good;
    for (unsigned k = 0; k <= random() % 6; ++k) {
      const std::size_t at = random() % text.size();
      switch (random() % 4) {
        case 0: text[at] = static_cast<char>(random()); break;
        case 1: text.erase(at, random() % 40); break;
        case 2: text.insert(at, text.substr(random() % text.size(), random() % 60)); break;
        default: text.insert(at, std::string(random() % 50, "[{\"=\n"[random() % 5])); break;
      }
      if (text.empty()) text.assign(1, 'x');
    }
    Issues notes;
    const Settings read = settings_from_text(text, "settings.toml", notes);
    // Whatever was read is fit to be used and to be written again.
    CHECK(read.window.width >= 320);
    CHECK(read.scale <= Settings::largest_scale);
    CHECK(read.recent.size() <= Settings::most_recent);
    Issues again;
    CHECK(same_settings(read, settings_from_text(settings_text(read), "settings.toml", again)));
    CHECK(again.empty());
  }
}

TEST_CASE("a workbench starts whatever stands in its settings, and says what it ignored") {
  TemporaryFolder folder;
  std::filesystem::create_directories(folder.path() / "config");
  SECTION("broken text") { folder.file("config/settings.toml", "[[[ \x01 no"); }
  SECTION("a text of another kind") { folder.file("config/settings.toml", "width 3"); }
  SECTION("deep nesting") { folder.file("config/settings.toml", "a = " + std::string(100, '[')); }
  SECTION("a folder in its place") { std::filesystem::create_directories(folder.path() / "config/settings.toml"); }
  SECTION("a pipe in its place") { REQUIRE(::mkfifo((folder.path() / "config/settings.toml").c_str(), 0600) == 0); }
  SECTION("too large") { folder.file("config/settings.toml", std::string(3'000'000, '#')); }
  Workbench bench(options_in(folder));
  REQUIRE(bench.notices().size() == 1);
  REQUIRE_FALSE(bench.notices().front().issues.empty());
  for (const Issue& issue : bench.notices().front().issues) {
    CAPTURE(issue.what);
    CHECK(issue.what.find("is ignored") == 0);
    CHECK(issue.what.find("plan") == std::string::npos);  // it is none
  }
  CHECK(bench.settings().window == WindowPlace{});
}

TEST_CASE("what a person chose is there at the next start") {
  TemporaryFolder folder;
  const std::string file = folder.file("a.lay.toml", small_plan);
  {
    Workbench bench(options_in(folder));
    bench.apply(cmd::open(file));
    bench.apply(cmd::toggle_theme());
    bench.apply(cmd::set_colouring(Colouring::gap));
    bench.set_window({1000, 600, 10, 20, false});
  }
  Workbench bench(options_in(folder));
  bench.start({});
  REQUIRE(bench.active() != nullptr);
  CHECK(document(bench).path() == file);  // the newest of the recent ones
  CHECK(bench.active()->stage.view.theme == Theme::dark);
  CHECK(bench.active()->stage.view.colouring == Colouring::gap);
  CHECK(bench.settings().window.width == 1000);
  CHECK(bench.settings().window.x == 10);
}

TEST_CASE("a place that cannot be written to is no reason to fail") {
  TemporaryFolder folder;
  Workbench::Options options;
  options.folders = {"/proc/no/config", "/proc/no/state"};
  Workbench bench(options);
  bench.start({});
  CHECK(bench.apply(cmd::open(folder.file("a.lay.toml", small_plan))));
  bench.apply(cmd::type_field("traverse.pitch", "1.1 mm"));
  bench.poll(Workbench::Clock::now() + std::chrono::hours(1));
  CHECK(document(bench).dirty());
}

TEST_CASE("folders follow the XDG base directories") {
  // XDG Base Directory Specification 0.8: defaults below the home, relative paths ignored.
  const auto set = [](const char* name, const char* value) { ::setenv(name, value, 1); };
  const std::string old_home = std::getenv("HOME") != nullptr ? std::getenv("HOME") : "/";
  set("HOME", "/home/me");
  set("XDG_CONFIG_HOME", "/elsewhere");
  set("XDG_STATE_HOME", "relative");
  CHECK(Folders::of_person().config == "/elsewhere/laywright");
  CHECK(Folders::of_person().state == "/home/me/.local/state/laywright");
  ::unsetenv("XDG_CONFIG_HOME");
  ::unsetenv("XDG_STATE_HOME");
  CHECK(Folders::of_person().config == "/home/me/.config/laywright");
  set("HOME", old_home.c_str());
}

TEST_CASE("the recent list is short, newest first, each once") {
  std::vector<std::string> recent;
  for (int i = 0; i < 30; ++i) recent = with_recent(recent, fmt::format("/{}", i % 12));
  CHECK(recent.size() == Settings::most_recent);
  CHECK(recent.front() == "/5");
  CHECK(std::set<std::string>(recent.begin(), recent.end()).size() == recent.size());
}
