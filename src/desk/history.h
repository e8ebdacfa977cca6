// Undo and redo over whole values: simple, and right whatever an edit did.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

namespace laywright {

template <class Value>
class History {
 public:
  // More steps back than this are forgotten.
  static constexpr std::size_t most_steps = 1000;

  explicit History(Value value) : present_(std::move(value)) {}

  [[nodiscard]] const Value& present() const { return present_; }

  // An edit of this name ("pitch"). Edits of one `gesture` (not 0: a slider that is being dragged, a field that is
  // being typed into) and of one name become one step.
  void edit(Value value, std::string name, std::uint64_t gesture = 0) {
    const bool goes_on = gesture != 0 && gesture == gesture_ && !past_.empty() && past_.back().name == name;
    if (!goes_on) past_.push_back({std::move(present_), std::move(name)});
    if (past_.size() > most_steps) past_.erase(past_.begin());
    present_ = std::move(value);
    future_.clear();
    gesture_ = gesture;
  }

  [[nodiscard]] bool can_undo() const { return !past_.empty(); }
  [[nodiscard]] bool can_redo() const { return !future_.empty(); }
  // What would be undone or redone. Preconditions: can_undo(), can_redo().
  [[nodiscard]] const std::string& undo_name() const { return past_.back().name; }
  [[nodiscard]] const std::string& redo_name() const { return future_.back().name; }

  void undo() { step(past_, future_); }
  void redo() { step(future_, past_); }

  // Changes the present without a step: for what an edit does not touch.
  template <class Change>
  void amend(Change change) {
    change(present_);
  }

 private:
  struct Step {
    Value value;
    std::string name;
  };

  void step(std::vector<Step>& from, std::vector<Step>& to) {
    Step step = std::move(from.back());
    from.pop_back();
    to.push_back({std::move(present_), step.name});
    present_ = std::move(step.value);
    gesture_ = 0;
  }

  Value present_;
  std::vector<Step> past_, future_;
  std::uint64_t gesture_ = 0;
};

}  // namespace laywright
