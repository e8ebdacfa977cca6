// The reader of plans and the writer: what is read, written and read again is the same plan, and a change that is
// saved into a text leaves that change and nothing else.
#include <algorithm>
#include <cstdint>
#include <iterator>
#include <string>
#include <string_view>
#include <utility>

#include "base/hash.h"
#include "fuzz/clean_issue.h"
#include "fuzz/require.h"
#include "plan/fields.h"
#include "plan/plan_file.h"
#include "plan/plan_writer.h"

using namespace laywright;
using fuzz::require;

namespace {

// The last bytes of a text choose the change, so that a fuzzer can steer it by a comment at the end.
class Choice {
 public:
  explicit Choice(std::string_view text) {
    const std::string_view tail = text.substr(text.size() - std::min<std::size_t>(text.size(), 8));
    Hash hash;
    hash.add(tail.data(), tail.size());
    state_ = hash.value();
  }
  std::size_t below(std::size_t count) {
    state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
    return static_cast<std::size_t>((state_ >> 33U) % count);
  }

 private:
  std::uint64_t state_ = 0;
};

template <class Owner>
double other_value(const Field<Owner>& field, Choice& choice) {
  const double values[] = {field.range.low, field.range.high, 0.5, 1.0 / 3.0, 1e-300, 25.4, -0.125};
  if (field.kind == FieldKind::choice) return static_cast<double>(choice.below(field.choices.size()));
  if (field.kind == FieldKind::whole) return static_cast<double>(1 + choice.below(1000));
  if (field.kind == FieldKind::friction && choice.below(3) == 0) return Fiber::held;
  return values[choice.below(std::size(values))];
}

void change_steps(std::vector<WindStep>& steps, Choice& choice) {
  const std::size_t at = choice.below(steps.size() + 1);
  const auto place = steps.begin() + static_cast<std::ptrdiff_t>(at);
  if (choice.below(2) == 0 && place != steps.end()) {
    steps.erase(place);
    return;
  }
  WindStep step;
  const auto& field = step_fields()[choice.below(step_fields().size())];
  field.set(step, other_value(field, choice));
  steps.insert(place, step);
}

PlanDraft changed(PlanDraft draft, Choice& choice) {
  for (std::size_t n = choice.below(4); n > 0; --n) {
    const auto& field = plan_fields()[choice.below(plan_fields().size())];
    field.set(draft, other_value(field, choice));
  }
  if (choice.below(4) == 0) draft.title += choice.below(2) == 0 ? "\"\\\n\r\x01" : "\xff'''";
  if (choice.below(4) == 0) draft.notes.clear();
  if (choice.below(4) == 0) draft.order.*order_fields()[choice.below(order_fields().size())].text += "\"\\\n\xff";
  if (choice.below(8) == 0) draft.takeup.reset();
  if (choice.below(8) == 0) draft.spool.mass_kg.reset();
  if (choice.below(4) == 0) change_steps(draft.wind.steps, choice);
  return draft;
}

// A file says valid UTF-8 only: other bytes are replaced as it is saved.
PlanDraft as_saved(const PlanDraft& draft) {
  const std::string text = write_plan(draft);
  Result<PlanDraft> read = read_plan(text, draft.file);
  require(read.ok(), "any draft can be saved and read back:\n" + text);
  return std::move(read).value();
}

void require_says(const std::string& text, const PlanDraft& draft, const char* what) {
  const Result<PlanDraft> again = read_plan(text, draft.file);
  require(again.ok() && same_plan(again.value(), draft), std::string(what) + ":\n" + text);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const Result<Plan> plan = plan_from_text(text, "a.lay.toml");
  require(plan.ok() != has_error(plan.issues()), "a plan is refused where it has an error, and only there");
  require(plan.issues().size() <= 101, "no more issues than are read");
  fuzz::require_clean(plan.issues());

  const Result<PlanDraft> read = read_plan(text, "a.lay.toml");
  fuzz::require_clean(read.issues());
  require(read.ok() || !plan.ok(), "a sound plan can be read");
  if (!read.ok()) return 0;
  const PlanDraft& draft = read.value();
  require_says(write_plan(draft), draft, "a fresh file reads back");
  require(write_plan(text, draft, draft) == text, "saving without a change leaves the file as it is");

  Choice choice(text);
  const PlanDraft after = changed(draft, choice);
  const std::string saved = write_plan(text, draft, after);
  require_says(saved, as_saved(after), "a change that is saved reads back");
  require(write_plan(saved, read_plan(saved, "a.lay.toml").value(), as_saved(after)) == saved,
          "saving twice is saving once");
  return 0;
}
