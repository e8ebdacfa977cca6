#include "app/key_queue.h"

#include <set>

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

namespace laywright {
namespace {

bool is_modifier(int key) { return key >= GLFW_KEY_LEFT_SHIFT && key <= GLFW_KEY_RIGHT_SUPER; }

// It brings a letter, which follows it, and does nothing else.
bool is_plain(const KeyStroke& stroke) {
  const bool printable = stroke.key >= GLFW_KEY_SPACE && stroke.key <= GLFW_KEY_WORLD_2;
  return printable && (stroke.mods & (GLFW_MOD_CONTROL | GLFW_MOD_ALT)) == 0;
}

// What has been given out in this turn.
struct Turn {
  std::set<int> changed;  // plain ones aside: letters are told by what follows them
  bool letters = false;
  bool acts = false;  // a key that is no letter went down

  [[nodiscard]] bool takes(const Letter&) const { return !acts; }
  [[nodiscard]] bool takes(const KeyStroke& stroke) const {
    if (changed.count(stroke.key) > 0) return false;
    const bool down = stroke.action != GLFW_RELEASE;
    if (is_modifier(stroke.key)) return down ? !acts : !acts && !letters;
    return !down || is_plain(stroke) || (!letters && !acts);
  }
  void note(const Letter&) { letters = true; }
  void note(const KeyStroke& stroke) {
    if (is_plain(stroke)) return;
    changed.insert(stroke.key);
    acts |= stroke.action != GLFW_RELEASE && !is_modifier(stroke.key);
  }
};

}  // namespace

std::vector<KeyEvent> KeyQueue::take_turn() {
  std::vector<KeyEvent> taken;
  Turn turn;
  while (!waiting_.empty()) {
    const KeyEvent event = waiting_.front();
    const auto* stroke = std::get_if<KeyStroke>(&event);
    // A key that is held repeats faster than a slow window draws: it must not run on after it was let go.
    const bool again = stroke != nullptr && stroke->action == GLFW_REPEAT && turn.changed.count(stroke->key) > 0;
    if (!again && !std::visit([&](const auto& e) { return turn.takes(e); }, event)) break;
    waiting_.pop_front();
    if (again) continue;
    std::visit([&](const auto& e) { turn.note(e); }, event);
    taken.push_back(event);
  }
  return taken;
}

}  // namespace laywright
