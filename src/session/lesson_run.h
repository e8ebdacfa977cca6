// A lesson that is being taken: at which step, what was answered, which builds it speaks of, and what its steps show.
#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "desk/stage.h"
#include "lesson/claims.h"
#include "lesson/lesson.h"

namespace laywright {

struct LessonTitle {
  std::string file;
  int number = 0;
  std::string title, aim;
};

struct LessonShelf {
  std::vector<LessonTitle> titles;  // by number
  Issues unread;                    // of files that are no lesson
};

struct LessonRun {
  std::shared_ptr<const Lesson> lesson;  // never null
  std::array<std::uint64_t, 2> desks{};  // ids of the documents of its first and second plan
  // Of the plans as the lesson has them, laid in full: what its text speaks of. Null until then.
  std::array<WoundPtr, 2> as_given;
  std::size_t step = 0;
  std::vector<std::optional<std::size_t>> answers;  // one for each step
  bool waits = true;                                // what the step shows waits for its builds
  std::optional<Vec3> place;                        // that the step points at, in the picture in hand

  [[nodiscard]] const LessonStep& now() const { return lesson->steps[step]; }
  [[nodiscard]] bool last() const { return step + 1 == lesson->steps.size(); }
  [[nodiscard]] std::optional<std::size_t> answer() const { return answers[step]; }
};

// Until the first question is answered there is only the beginning of each wind to be seen: who is asked what will
// happen must not see that it has.
[[nodiscard]] bool outcome_hidden(const LessonRun& run);

// The build that a step points at or lets change; the other one stands beside it.
[[nodiscard]] Which in_hand(const LessonStep& step);

[[nodiscard]] LaidPair laid_pair(const std::array<WoundPtr, 2>& wounds);

// What a step shows of the build in hand, from the stage before it, and the place that it points at. The camera sets
// out; with `jump` it is there at once. Of a colouring that is not known: by layers.
struct Shot {
  Stage stage;
  std::optional<Vec3> place;
};
[[nodiscard]] Shot shot_of_step(const LessonRun& run, Stage before, bool jump);

// What came of trying: the watched figure as the lesson had it, and now.
struct Tried {
  std::optional<double> before, now;
  bool settled = false;  // `now` is of the full build of the plan as it stands
  bool reached = false;  // the goal; only when settled
};

}  // namespace laywright
