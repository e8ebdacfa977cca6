// A window before all others, in the middle of it.
#pragma once

namespace laywright {

// Sizes in letters; no height: as high as what stands in it. To be ended with ImGui::EndPopup() when true.
[[nodiscard]] bool begin_modal(const char* title, float width, float height);

[[nodiscard]] bool escape_pressed();

}  // namespace laywright
