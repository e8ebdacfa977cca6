// A lesson that is being taken: at which step, what was answered, which builds it speaks of, and what its steps show.
#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "desk/field_rows.h"
#include "desk/stage.h"
#include "lesson/claims.h"
#include "lesson/lesson.h"
#include "session/document.h"

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
  bool from_afar = false;                           // whole spools are wanted, where the lesson looks from near

  [[nodiscard]] const LessonStep& now() const { return lesson->steps[step]; }
  [[nodiscard]] bool last() const { return step + 1 == lesson->steps.size(); }
  [[nodiscard]] std::optional<std::size_t> answer() const { return answers[step]; }
};

// Until the last question is answered there is only the beginning of each wind to be seen: who is asked what will
// happen must not see that it has.
[[nodiscard]] bool outcome_hidden(const LessonRun& run);

// The build that a step points at or lets change; the other one stands beside it.
[[nodiscard]] Which in_hand(const LessonStep& step);

// `draws_off`: with the pull that draws the fiber off, which was computed with the builds.
[[nodiscard]] LaidPair laid_pair(const std::array<WoundPtr, 2>& wounds, bool draws_off);
// What its text speaks of.
[[nodiscard]] inline LaidPair laid_pair(const LessonRun& run) {
  return laid_pair(run.as_given, run.lesson->draws_off());
}

// What a picture shows: "First: turns back at once"; of a build that was changed by trying, what it is changed to, in the row's
// own words: "Second: pitch 0.255 mm".
[[nodiscard]] std::string caption_of(const LessonRun& run, Which which, const Document& document,
                                     const std::vector<FieldRow>& rows);

// Whether the step looks at the lesson's place from near, or could.
[[nodiscard]] bool looks_from_near(const LessonRun& run);

// What a step shows of the build in hand, from the stage before it, and the place that it points at. The camera sets
// out; with `jump` it is there at once. Of a colouring that is not known: by layers.
struct Shot {
  Stage stage;
  std::optional<Vec3> place;
};
[[nodiscard]] Shot shot_of_step(const LessonRun& run, Stage before, bool jump);
// The same, from afar or near, with the scrubber where it was.
[[nodiscard]] Shot shot_again(const LessonRun& run, Stage before, bool jump);

// What came of trying: the watched figure as the lesson had it, and now.
struct Tried {
  std::optional<double> before, now;
  bool settled = false;  // `now` is of the full build of the plan as it stands
  bool reached = false;  // the goal; only when settled
};

}  // namespace laywright
