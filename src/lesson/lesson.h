// A lesson: two builds side by side, and a few steps that ask, play, point and let the trainee try. Plain files,
// `*.lesson.toml`; whatever a lesson says of its builds it says as claims, too, which a test lays and holds against
// the model.
//
//   format = "lesson 1"
//   number = 1                         place in the list, from 1
//   title = "What pitch does"
//   aim = "one sentence"
//
//   [first]                            [second] alike
//   name = "Pitch 1.04 d"
//   plan = "../even.lay.toml"          beside the lesson
//   set = { "traverse.pitch" = "0.3 mm" }      optional: what is changed in it
//
//   [look]                             optional: what all steps look at from near, in a cut; else whole spools are shown
//   side = "left"                      the edge at that flange; or with
//   in = "second", finding = "ride_up"         the first of them
//
//   [[step]]                           any number; each with any of these:
//   say = "text"                       {second.gap_length} in it becomes the figure as laid (figures.h)
//   ask = "question"                   with
//   answers = ["one", "two"]
//   right = 2                          counted from 1
//   because = "text"                   shown when answered
//   play = { to_layer = 3, seconds = 8 }       both builds fill, from the start to the end of that layer; or
//   play = { in = "second", until = "ride_up", seconds = 8 }   to the first of them, and there it is pointed at
//   point = { in = "second", finding = "gap", side = "left" }      or layer = 2; side is optional
//   colours = "rise"                   one of the window's colourings
//   cut = true                         a quarter cut out of both
//   whole = true                       whole spools, although the lesson looks from near
//   ruler = true                       so many turns at their pitch beside so many fibers, of both builds
//   figures = ["gap_length", "fill"]   of figures.h, shown as a table, both builds
//   try = { in = "second", key = "traverse.pitch", figure = "gap_length" }   with
//   goal = { of = "second", figure = "gap_length", is = "below", value = "1 m" }
//   solution = "0.256 mm"              a value that reaches the goal
//   claims = [ { of = "second", figure = "fill", is = "above", than = "first" } ]
//
// A claim holds a figure of one build against a value (in the figure's unit: a quantity where it has one) or against
// another figure (`than` the first or second build, `times` a factor, of another `figure_there` if given): `is` above,
// below or about, the last `within` a margin.
#pragma once

#include <array>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "measure/measurements.h"

namespace laywright {

enum class Which { first, second };

struct LessonBuild {
  std::string name;
  std::string plan_text;  // the plan's file with what the lesson sets in it
};

enum class Relation { above, below, about };

struct Claim {
  Which of = Which::second;
  std::string figure;
  Relation is = Relation::above;
  std::optional<Which> than;  // else: value
  std::string figure_there;   // of `than`
  double times = 1.0;
  double value = 0.0;   // in the unit used inside
  double within = 0.0;  // of about
  int line = 0;         // in the lesson's file
};

struct Question {
  std::string text;
  std::vector<std::string> answers;
  std::size_t right = 0;  // index
  std::string because;
};

// A kind of finding in one of the builds.
struct Sought {
  Which in = Which::second;
  FindingKind kind = FindingKind::ride_up;
  std::optional<Side> side;
};

struct Play {
  int to_layer = 1;             // or
  std::optional<Sought> until;  // to the first of them
  double seconds = 6.0;
};

// The place in question: the first of a kind of finding, or an edge. One of them is there.
struct LookAt {
  std::optional<Sought> finding;
  std::optional<Side> side;
};

struct PointTo {
  Which in = Which::second;
  std::optional<FindingKind> finding;  // the gravest of it
  std::optional<Side> side;
  std::optional<int> layer;  // peeled down to
};

struct Attempt {
  Which in = Which::second;
  std::string key;     // "traverse.pitch"
  std::string figure;  // to be watched
  Claim goal;
  std::string solution;
};

struct LessonStep {
  std::string say;
  std::optional<Question> question;
  std::optional<Play> play;
  std::optional<PointTo> point;
  std::optional<std::string> colours;
  bool cut = false;
  bool whole = false;
  bool ruler = false;
  std::vector<std::string> figures;
  std::optional<Attempt> attempt;
  std::vector<Claim> claims;
};

struct Lesson {
  std::string file;
  int number = 0;
  std::string title, aim;
  std::array<LessonBuild, 2> builds;
  std::optional<LookAt> look;
  std::vector<LessonStep> steps;

  [[nodiscard]] const LessonBuild& build(Which which) const { return builds[static_cast<std::size_t>(which)]; }
  // Whether it speaks of how the fiber comes off over an end, which has to be computed on top of what is laid.
  [[nodiscard]] bool draws_off() const;
};

// Errors: the file or one of its plans cannot be read, a key is missing, not known or has no sense; every one at once,
// with file, line and what would do.
[[nodiscard]] Result<Lesson> load_lesson(const std::filesystem::path& path);

// All lessons of a folder by their numbers. Those that cannot be read are left out; their issues are warnings, and so is
// one where the folder itself cannot be read. One that is not there has no lessons.
[[nodiscard]] Result<std::vector<Lesson>> load_lessons(const std::filesystem::path& folder);

}  // namespace laywright
