// Something that can be done in a workbench, as a value: panels and keys return one, Workbench::apply does it. What it
// is made of nobody else needs to know; the functions that make commands stand in *_commands.h.
#pragma once

#include <concepts>
#include <functional>
#include <memory>
#include <string>
#include <type_traits>
#include <utility>

namespace laywright {

class Workbench;
struct BenchInside;  // bench_inside.h
struct View;

// What must be there before a command can be done.
enum class Needs {
  nothing,
  plan,         // one is open
  build,        // of the picture in hand
  active_build  // of the active plan
};

// What a command does. It gives true when it is done, false when it was told why not; one that gives nothing is done.
class Act {
 public:
  template <std::invocable<const BenchInside&> F>
  Act(F f) : act_(returning_bool(std::move(f))) {}

  bool operator()(const BenchInside& in) const { return act_(in); }

 private:
  template <class F>
  static std::function<bool(const BenchInside&)> returning_bool(F f) {
    if constexpr (std::is_void_v<std::invoke_result_t<F, const BenchInside&>>) {
      return [f = std::move(f)](const BenchInside& in) {
        f(in);
        return true;
      };
    } else {
      return f;
    }
  }

  std::function<bool(const BenchInside&)> act_;
};

class Command {
 public:
  struct Parts {
    std::string name;  // "peel 1"; those of one name that have a key or stand in a menu do the same
    Needs needs = Needs::plan;
    bool in_lesson = true;  // false: refused while a lesson is taken
    // Why it cannot be done now, in a sentence that says what would help; empty when it can. Asked once there is what
    // it needs. None: nothing else keeps it away.
    std::function<std::string(const Workbench&)> why_not = {};
    Act act;  // once there is no reason not to
    // Of what can be on or off: whether it is, in the view in hand.
    std::function<bool(const View&)> is_on = {};
    // What a menu says in place of the row's name, while it has more to say and there is what the command needs.
    std::function<std::string(const Workbench&)> label = {};
  };

  Command(Parts parts);  // a command can be written where it is returned: {{.name = "undo", .act = undo}}

  [[nodiscard]] const std::string& name() const { return parts_->name; }
  // As Workbench::why_not.
  [[nodiscard]] std::string why_not(const Workbench& bench) const;
  // False, too, for what cannot be on or off.
  [[nodiscard]] bool is_on(const View& view) const;
  // Empty: the row's name.
  [[nodiscard]] std::string label(const Workbench& bench) const;

  // For Workbench::apply, and commands that do another one. Precondition: why_not() gives no reason.
  bool act(const BenchInside& in) const { return parts_->act(in); }

 private:
  [[nodiscard]] std::string why_lacking(const Workbench& bench) const;

  std::shared_ptr<const Parts> parts_;  // never null
};

}  // namespace laywright
