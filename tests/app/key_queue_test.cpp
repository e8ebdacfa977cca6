// Strokes that come faster than frames.
#include <catch2/catch.hpp>

#include <fmt/format.h>

#include "app/key_queue.h"

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

using namespace laywright;

namespace {

// As GLFW reports them: a key down, its letter, the key up.
struct Typist {
  KeyQueue queue;
  int mods = 0;

  void down(int key) { queue.add(KeyStroke{key, 0, GLFW_PRESS, mods}); }
  void up(int key) { queue.add(KeyStroke{key, 0, GLFW_RELEASE, mods}); }
  void tap(int key) {
    down(key);
    up(key);
  }
  void letter(int key) {
    down(key);
    queue.add(Letter{static_cast<unsigned>(key)});
    up(key);
  }

  // A turn in words: "+65" down, "-65" up, "*65" repeated, "'65" a letter.
  std::string turn() {
    std::string words;
    for (const KeyEvent& event : queue.take_turn()) {
      if (!words.empty()) words += ' ';
      if (const auto* l = std::get_if<Letter>(&event)) {
        words += fmt::format("'{}", l->code);
        continue;
      }
      const KeyStroke& s = std::get<KeyStroke>(event);
      words += fmt::format("{}{}", s.action == GLFW_PRESS ? "+" : s.action == GLFW_RELEASE ? "-" : "*", s.key);
    }
    return words;
  }
};

constexpr int up_arrow = GLFW_KEY_UP, down_arrow = GLFW_KEY_DOWN, ctrl = GLFW_KEY_LEFT_CONTROL;  // 265, 264, 341

}  // namespace

TEST_CASE("a key that is let go at once is seen down for a turn") {
  Typist t;
  t.tap(up_arrow);
  CHECK(t.turn() == "+265");
  CHECK(t.turn() == "-265");
  CHECK(t.queue.empty());
}

TEST_CASE("two keys that are no letters come one after the other") {
  Typist t;
  t.tap(up_arrow);
  t.tap(down_arrow);
  CHECK(t.turn() == "+265");
  CHECK(t.turn() == "-265 +264");
  CHECK(t.turn() == "-264");
}

TEST_CASE("letters after a chord wait until the chord is done") {
  Typist t;
  t.down(ctrl);
  t.mods = GLFW_MOD_CONTROL;
  t.tap(GLFW_KEY_A);
  t.up(ctrl);
  t.mods = 0;
  t.letter(GLFW_KEY_9);
  CHECK(t.turn() == "+341 +65");
  CHECK(t.turn() == "-65 -341 +57 '57 -57");
}

TEST_CASE("words come whole, and Enter after them") {
  Typist t;
  t.letter(GLFW_KEY_1);
  t.letter(GLFW_KEY_2);
  t.tap(GLFW_KEY_ENTER);
  CHECK(t.turn() == "+49 '49 -49 +50 '50 -50");
  CHECK(t.turn() == "+257");
  CHECK(t.turn() == "-257");
}

TEST_CASE("a held key does not run on: what repeated within a turn counts once") {
  Typist t;
  t.down(up_arrow);
  for (int i = 0; i < 20; ++i) t.queue.add(KeyStroke{up_arrow, 0, GLFW_REPEAT, 0});
  t.up(up_arrow);
  CHECK(t.turn() == "+265");
  CHECK(t.turn() == "-265");
  CHECK(t.queue.empty());
}
