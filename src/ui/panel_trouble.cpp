#include "ui/panel_trouble.h"

#include "jobs/trouble.h"
#include "ui/style.h"

namespace laywright {

void panel_trouble(const Issues& trouble, Theme theme) {
  if (trouble.empty()) return;
  ImGui::PushStyleColor(ImGuiCol_Text, error_color(theme));
  wrapped_text(trouble_words(trouble));
  ImGui::PopStyleColor();
}

}  // namespace laywright
