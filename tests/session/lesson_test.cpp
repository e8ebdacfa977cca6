// Lessons on the workbench: every one that ships is run to its end, with right answers and with wrong ones.
#include "bench_for_tests.h"

#include "lesson/claims.h"
#include "scene/camera.h"
#include "session/command_rows.h"
#include "session/lesson_look.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

const std::filesystem::path lesson_folder = std::filesystem::path(LAYWRIGHT_SOURCE_DIR) / "samples" / "lessons";

struct InLesson {
  TemporaryFolder folder;
  Workbench bench;

  explicit InLesson(const std::string& file = "", double flight_s = 0.0) : bench(options(folder, flight_s)) {
    if (!file.empty()) open(file);
  }
  static Workbench::Options options(const TemporaryFolder& folder, double flight_s) {
    Workbench::Options options = options_in(folder);
    options.lessons = lesson_folder;
    options.flight_s = flight_s;
    return options;
  }
  void open(const std::string& file) {
    REQUIRE(bench.apply(cmd::open_lesson(file)));
    REQUIRE(bench.apply(cmd::set_picture_size(480, 600)));  // one of two, in a window of 1280
    wait_for_step();
  }
  [[nodiscard]] const LessonRun& run() const { return *bench.lesson(); }
  [[nodiscard]] const Stage& stage() const { return bench.active()->stage; }
  void wait_for_step() {
    REQUIRE(wait_until(bench, [&] { return !run().waits && !stage().flight; }));
  }
  void wait_for_try() {
    REQUIRE(wait_until(bench, [&] { return bench.tried() && bench.tried()->settled; }));
  }
};

std::string file_of(const char* name) { return (lesson_folder / name).string(); }

std::vector<std::string> all_files() {
  std::vector<std::string> files;
  for (const auto& entry : std::filesystem::directory_iterator(lesson_folder))
    files.push_back(entry.path().string());
  std::sort(files.begin(), files.end());
  return files;
}

// What the lesson looks at is in the picture, and two fibers side by side are 40 pixels of it.
void check_near(const InLesson& in) {
  const View& view = in.stage().view;
  CHECK(view.wedge.has_value());  // a cut
  const LookAt& look = *in.run().lesson->look;
  // Of a bare place, the place itself.
  double size = 2.0 * in.bench.wound()->source.d();
  std::optional<Vec3> place;
  if (look.finding) {
    const auto [own, spot] = first_spot(in.run().as_given, *look.finding);
    REQUIRE(spot);
    place = spot->heart();
    const double width = own.plan().spool().inside_width_mm;
    if (look.finding->kind == FindingKind::flange_gap) size = 2.0 * std::min(spot->x_mm, width - spot->x_mm);
  } else {
    // The first turn at that flange.
    const Plan& plan = in.bench.wound()->plan();
    const double d = plan.fiber().diameter_mm, width = plan.spool().inside_width_mm;
    place = in_space(*look.side == Side::left ? 0.5 * d : width - 0.5 * d,
                     0.5 * (plan.spool().barrel_diameter_mm + d), 0.0);
  }
  CHECK(size / mm_per_px(view) > 40.0);
  const auto at = in_picture(view, *place);
  REQUIRE(at);
  CHECK((at->x > 0.0 && at->x < view.width_px && at->y > 0.0 && at->y < view.height_px));
}

void check_view(const InLesson& in) {
  const LessonStep& step = in.run().now();
  const View& view = in.stage().view;
  const auto own = static_cast<std::size_t>(in_hand(step));
  CHECK(in.bench.active()->id == in.run().desks[own]);
  CHECK(in.bench.comparison()->document == in.run().desks[1 - own]);
  CHECK(in.bench.comparison()->on_right == (own == 0));  // the first is on the left
  CHECK(in.bench.other_stage().view.camera == view.camera);
  if (step.point && step.point->finding) {
    REQUIRE(view.chosen_finding);
    const Finding& finding = in.bench.wound()->measurements().findings[*view.chosen_finding];
    CHECK(finding.kind == *step.point->finding);
    if (step.point->side) CHECK(finding.side == step.point->side);
  }
  if (step.point && step.point->layer) CHECK(view.last_layer == step.point->layer);
  if (step.cut) CHECK(view.wedge.has_value());
  // Seen from near, outward is up: a spool that hangs upside down is not told from a valley.
  if (step.cut && step.point) {
    CHECK(glm::dot(up_of(view.camera), in_space(0.0, 1.0, angle_of(view.camera.target))) > 0.5);
    CHECK(right_of(view.camera).x > 0.0);  // left is left
  }
  if (looks_from_near(in.run()) && !step.point) check_near(in);
  if (step.play) CHECK(in.stage().playback.playing);
}

// The play of a step goes from the bare spool to the end of its layer, in its time.
void check_play(InLesson& in) {
  const Play play = *in.run().now().play;
  auto now = Workbench::Clock::now() + std::chrono::hours(1);
  in.bench.poll(now);
  int quarters = 0;
  while (in.stage().playback.playing && quarters < 1000) {
    in.bench.poll(now += std::chrono::milliseconds(250));
    ++quarters;
  }
  CHECK(0.25 * quarters == Approx(play.seconds).margin(0.26));
  double longest = 0.0;
  for (const WoundPtr& wound : in.run().as_given) {
    double length = 0.0;
    for (const LayerRow& row : wound->measurements().layers)
      length += row.layer <= play.to_layer ? row.length_mm : 0.0;
    longest = std::max(longest, length);
  }
  if (play.until) {
    const auto [wound, spot] = first_spot(in.run().as_given, *play.until);
    REQUIRE(spot);
    CHECK(in.run().place == spot->heart());
    longest = length_at_turn(wound.source, laid_at(wound, *spot, play.until->kind));
  }
  CHECK(in.stage().playback.wanted_mm == Approx(longest));
}

// To its end; gives what the trying step moved: before and after.
void take(InLesson& in, bool rightly) {
  const Lesson& lesson = *in.run().lesson;
  bool tried = false;
  for (std::size_t k = 0; k < lesson.steps.size(); ++k) {
    INFO("step " << k + 1);
    if (k > 0) REQUIRE(in.bench.apply(cmd::go_in_lesson(1)));
    in.wait_for_step();
    REQUIRE(in.run().step == k);
    const LessonStep& step = lesson.steps[k];
    if (!outcome_hidden(in.run())) check_view(in);
    const LaidPair laid = laid_pair(in.run());
    CHECK(with_figures(step.say, laid).find("...") == std::string::npos);
    for (const Claim& claim : step.claims) CHECK(judge(claim, laid).holds);
    if (step.question) {
      const bool hidden = outcome_hidden(in.run());
      if (hidden) CHECK(moment_of(in.stage().playback, *in.bench.wound()).layer == 1);
      const std::size_t wrong = step.question->right == 0 ? 1 : 0;
      REQUIRE(in.bench.apply(cmd::answer_lesson(rightly ? step.question->right : wrong)));
      CHECK((*in.run().answer() == step.question->right) == rightly);
      in.wait_for_step();
      // As long as another question is to come, it would be answered by what is seen.
      const auto later = std::any_of(lesson.steps.begin() + static_cast<std::ptrdiff_t>(k) + 1, lesson.steps.end(),
                                     [](const LessonStep& each) { return each.question.has_value(); });
      CHECK(outcome_hidden(in.run()) == later);
      if (hidden && !later) CHECK(moment_of(in.stage().playback, *in.bench.wound()).at_end);
      CHECK_FALSE(in.bench.apply(cmd::answer_lesson(step.question->right)));  // the first answer counts
    }
    if (step.play) check_play(in);
    if (!step.attempt) continue;
    tried = true;
    const Attempt& attempt = *step.attempt;
    in.wait_for_try();
    CHECK_FALSE(in.bench.tried()->reached);
    CHECK(in.bench.tried()->now == in.bench.tried()->before);
    REQUIRE(in.bench.apply(cmd::type_field(attempt.key, attempt.solution, 1)));
    in.wait_for_try();
    CHECK(in.bench.tried()->reached);
    CHECK(*in.bench.tried()->now != *in.bench.tried()->before);
    CHECK(in.run().as_given[0]);  // what the text speaks of is still the lesson's own
    CHECK(with_figures(step.say, laid_pair(in.run())) == with_figures(step.say, laid));
    CHECK_FALSE(in.bench.any_unsaved());
    if (!rightly) continue;
    REQUIRE(in.bench.apply(cmd::take_try_back()));
    in.wait_for_try();
    CHECK_FALSE(in.bench.tried()->reached);
    CHECK(in.bench.tried()->now == in.bench.tried()->before);
  }
  CHECK(tried);
  CHECK_FALSE(in.bench.apply(cmd::go_in_lesson(1)));
}

}  // namespace

TEST_CASE("the list: the lessons that come with the program, by number") {
  const InLesson in;
  const std::vector<LessonTitle>& lessons = in.bench.lessons().titles;
  REQUIRE(lessons.size() == 10);
  for (std::size_t k = 0; k < lessons.size(); ++k) {
    CHECK(lessons[k].number == static_cast<int>(k) + 1);
    CHECK_FALSE(lessons[k].title.empty());
    CHECK_FALSE(lessons[k].aim.empty());
  }
  TemporaryFolder folder;
  const Workbench without(options_in(folder));
  CHECK(without.lessons().titles.empty());
}

TEST_CASE("every lesson to its end, answered rightly") {
  for (const std::string& file : all_files()) {
    INFO(file);
    InLesson in(file);
    take(in, true);
  }
}

TEST_CASE("lessons with one question, with two, and without a look, to their end, answered wrongly") {
  for (const char* name : {"1-pitch.lesson.toml", "2-stops.lesson.toml", "10-payoff.lesson.toml"}) {
    INFO(name);
    InLesson in(file_of(name));
    take(in, false);
  }
}

TEST_CASE("a lesson leaves what was open as it was, and asks for nothing to be saved") {
  InLesson in;
  const std::string plan = in.folder.file("a.lay.toml", small_plan);
  REQUIRE(in.bench.apply(cmd::open(plan)));
  wait_for_build(in.bench);
  REQUIRE(in.bench.apply(cmd::type_field("traverse.pitch", "1.1 mm")));
  wait_for_build(in.bench);
  REQUIRE(in.bench.apply(cmd::pin_build()));
  REQUIRE(in.bench.apply(cmd::set_colouring(Colouring::height)));
  const WoundPtr pinned = in.bench.comparison()->pinned;
  const std::uint64_t desk = in.bench.active()->id;

  in.open(file_of("5-crossing.lesson.toml"));
  CHECK(in.bench.documents().size() == 3);
  REQUIRE(in.bench.apply(cmd::go_in_lesson(1)));
  REQUIRE(in.bench.apply(cmd::answer_lesson(1)));
  REQUIRE(in.bench.apply(cmd::go_in_lesson(1)));
  in.wait_for_step();
  CHECK(in.stage().view.colouring == Colouring::direction);
  REQUIRE(in.bench.apply(cmd::toggle_theme()));  // a preference takes all others along
  REQUIRE(in.bench.apply(cmd::type_field("traverse.pitch", "1.2 mm")));
  for (const Desk& open : in.bench.documents()) {
    if (open.id != desk) CHECK_FALSE(open.document->dirty());
  }
  for (const Command& command : std::initializer_list<Command>{
           cmd::save(), cmd::save_as(in.folder.path() / "x.lay.toml"), cmd::activate(0), cmd::stop_comparing(),
           cmd::pin_build(), cmd::compare_with(0), cmd::ask(cmd::Question::file_to_save)}) {
    CHECK_FALSE(in.bench.apply(command));
  }
  CHECK_FALSE(std::filesystem::exists(in.folder.path() / "x.lay.toml"));
  REQUIRE(in.bench.apply(cmd::close()));  // of the lesson, without a question
  CHECK_FALSE(in.bench.lesson());
  CHECK_FALSE(in.bench.question());
  REQUIRE(in.bench.documents().size() == 1);
  CHECK(in.bench.active()->id == desk);
  CHECK(in.bench.comparison()->pinned == pinned);
  CHECK(in.stage().view.colouring == Colouring::height);
  CHECK(in.stage().view.dimensions);
  CHECK(in.stage().view.theme == Theme::dark);
  CHECK(in.bench.settings().view.colouring == Colouring::height);
  CHECK(document(in.bench).dirty());
  CHECK(contents(plan) == small_plan);
  CHECK(in.bench.settings().recent == std::vector<std::string>{plan});
}

TEST_CASE("what is changed between the steps is put right by the next one") {
  InLesson in(file_of("6-parallel.lesson.toml"));
  REQUIRE(in.bench.apply(cmd::type_field("traverse.pitch", "1.2 mm")));
  REQUIRE(in.bench.apply(cmd::go_in_lesson(1)));
  in.wait_for_step();
  CHECK(document(in.bench).as_given());
  REQUIRE(in.bench.apply(cmd::go_in_lesson(-1)));
  CHECK_FALSE(in.bench.apply(cmd::go_in_lesson(-1)));
  REQUIRE(in.bench.apply(cmd::restart_lesson()));
  CHECK(in.run().step == 0);
}

TEST_CASE("the camera flies to a step, without motion it is there at once") {
  InLesson in(file_of("5-crossing.lesson.toml"), 0.4);
  in.bench.apply(cmd::orbit(50.0, 0.0));
  REQUIRE(in.bench.apply(cmd::go_in_lesson(1)));
  CHECK(in.stage().flight);
  in.wait_for_step();
  in.bench.apply(row_of_keys("J")->command);
  in.bench.apply(cmd::orbit(50.0, 0.0));
  const double before = in.stage().view.camera.azimuth_deg;
  REQUIRE(in.bench.apply(cmd::go_in_lesson(1)));
  CHECK_FALSE(in.stage().flight);
  CHECK(in.stage().view.camera.azimuth_deg != before);
}

TEST_CASE("whole spools are shown on demand, and the place from near again, where the scrubber stays") {
  InLesson in(file_of("2-stops.lesson.toml"));
  CHECK_FALSE(in.bench.apply(cmd::look_from_afar(true)));  // a question is to come: they are shown whole
  for (int step = 1; step < 4; ++step) {
    REQUIRE(in.bench.apply(cmd::go_in_lesson(1)));
    in.wait_for_step();
    if (in.run().now().question) REQUIRE(in.bench.apply(cmd::answer_lesson(0)));
    in.wait_for_step();
  }
  const View near = in.stage().view;
  REQUIRE(near.wedge);
  REQUIRE(in.bench.apply(cmd::scrub_turn(1000.0)));
  const double wanted = in.stage().playback.wanted_mm;
  REQUIRE(in.bench.apply(cmd::look_from_afar(true)));
  in.wait_for_step();
  CHECK_FALSE(in.stage().view.wedge);
  CHECK(in.stage().view.camera.distance_mm > 3.0 * near.camera.distance_mm);
  CHECK(in.stage().playback.wanted_mm == Approx(wanted).epsilon(0.05));  // it plays on
  REQUIRE(in.bench.apply(cmd::look_from_afar(false)));
  in.wait_for_step();
  CHECK(in.stage().view.camera == near.camera);
  CHECK(in.stage().view.wedge == near.wedge);
}

TEST_CASE("a lesson by its file, and one that is wrong") {
  InLesson in;
  in.bench.start({file_of("6-parallel.lesson.toml")});  // as a file that is opened or dropped
  REQUIRE(in.bench.lesson());
  CHECK(in.bench.lesson()->lesson->number == 6);
  const std::string bad = in.folder.file("bad.lesson.toml", "format = \"lesson 1\"\ntitle = \"No builds\"\n");
  CHECK_FALSE(in.bench.apply(cmd::open_lesson(bad)));
  CHECK(in.bench.lesson()->lesson->number == 6);  // what was open stays
  CHECK(in.bench.notices().back().issues.size() >= 3);
  CHECK_FALSE(in.bench.apply(cmd::open_lesson(in.folder.path() / "none.lesson.toml")));
  // Another plan ends it.
  REQUIRE(in.bench.apply(cmd::open(in.folder.file("a.lay.toml", small_plan))));
  CHECK_FALSE(in.bench.lesson());
  CHECK(in.bench.documents().size() == 1);
  for (const Command& command :
       std::initializer_list<Command>{cmd::go_in_lesson(1), cmd::answer_lesson(0), cmd::show_step_again(),
                                      cmd::take_try_back(), cmd::restart_lesson(), cmd::close_lesson()}) {
    CHECK_FALSE(in.bench.apply(command));
    CHECK(in.bench.notices().back().text.find("Learn") != std::string::npos);
  }
}
