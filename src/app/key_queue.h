// Keys and letters as they came, given out turn by turn: Dear ImGui looks at the state of the keys once a frame, and
// where a frame takes long, several strokes come within one. Those that would hide or change each other then wait for
// the next frame.
#pragma once

#include <deque>
#include <variant>
#include <vector>

namespace laywright {

// In GLFW's numbers.
struct KeyStroke {
  int key = 0, scancode = 0, action = 0, mods = 0;
};
struct Letter {
  unsigned code = 0;  // Unicode
};
using KeyEvent = std::variant<KeyStroke, Letter>;

class KeyQueue {
 public:
  void add(const KeyEvent& event) { waiting_.push_back(event); }
  [[nodiscard]] bool empty() const { return waiting_.empty(); }
  // Those of the next frame, in their order: a key that is no letter changes once, and comes alone, after the
  // letters before it and before those behind it; Shift, Ctrl and Alt stay down until what they change is done.
  [[nodiscard]] std::vector<KeyEvent> take_turn();

 private:
  std::deque<KeyEvent> waiting_;
};

}  // namespace laywright
