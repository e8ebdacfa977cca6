#include "ui/modal.h"

#include <algorithm>

#include "ui/style.h"

namespace laywright {

bool begin_modal(const char* title, float width, float height) {
  const ImVec2 window = ImGui::GetIO().DisplaySize;
  if (!ImGui::IsPopupOpen(title)) ImGui::OpenPopup(title);
  ImGui::SetNextWindowPos({0.5F * window.x, 0.5F * window.y}, ImGuiCond_Always, {0.5F, 0.5F});
  ImGui::SetNextWindowSize(
      {std::min(em(width), 0.94F * window.x), height > 0.0F ? std::min(em(height), 0.9F * window.y) : 0.0F});
  return ImGui::BeginPopupModal(
      title, nullptr, ImGuiWindowFlags_NoResize | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings);
}

bool escape_pressed() { return ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Escape)); }

}  // namespace laywright
