// Panels drawn without a window, into nothing.
#pragma once

#include <functional>

#include "ui/keys.h"
#include "ui/panel_state.h"
#include "ui/style.h"

namespace laywright::testing {

// Dear ImGui with the letters and the style of the window; one at a time.
class Headless {
 public:
  Headless(float width, float height) {
    ImGui::CreateContext();
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.DisplaySize = {width, height};
    state.strong = load_fonts(1.0F).strong;
    unsigned char* pixels = nullptr;
    int atlas_width = 0, atlas_height = 0;
    io.Fonts->GetTexDataAsRGBA32(&pixels, &atlas_width, &atlas_height);
    apply_style(Theme::light, 1.0F);
    state.places.wanted = true;
  }
  ~Headless() { ImGui::DestroyContext(); }
  Headless(const Headless&) = delete;
  Headless& operator=(const Headless&) = delete;

  // A few frames, as places and sizes settle; one window of this size and place, and what `draw` puts into it.
  void frames(const ImVec2& at, const ImVec2& size, const std::function<void()>& draw) {
    for (int frame = 0; frame < 4; ++frame) {
      prepare_keys(state);
      ImGui::NewFrame();
      ImGui::SetNextWindowPos(at);
      ImGui::SetNextWindowSize(size);
      // With the scroll bar that a long form has.
      ImGui::Begin("here", nullptr, ImGuiWindowFlags_AlwaysVerticalScrollbar | ImGuiWindowFlags_NoTitleBar);
      draw();
      ImGui::End();
      ImGui::Render();
    }
  }

  PanelState state;
  Commands out;
};

}  // namespace laywright::testing
