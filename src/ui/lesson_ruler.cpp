// The ruler of a lesson: the fiber's width against the pitch.
#include "lesson/pitch_ruler.h"

#include "ui/lesson_parts.h"
#include "ui/style.h"

namespace laywright {
namespace {

// So many that a few percent come to something that is seen.
constexpr int fibers = 14;

void draw_ruler(const PitchRuler& ruler) {
  const float width = ImGui::GetContentRegionAvail().x;
  const ImVec2 at = ImGui::GetCursorScreenPos();
  // Room for turns further apart than wide; where they are much further, for fewer.
  const double span = std::max(ruler.fiber_mm, ruler.pitch_mm) * (fibers - 1) + ruler.fiber_mm;
  const float per_mm = width / static_cast<float>(span);
  const float radius = 0.5F * per_mm * static_cast<float>(ruler.fiber_mm);
  const float tick = em(0.8F), middle = at.y + radius;
  ImDrawList& canvas = *ImGui::GetWindowDrawList();
  const ImU32 quiet = ImGui::GetColorU32(ImGuiCol_TextDisabled), accent = ImGui::GetColorU32(ImGuiCol_CheckMark);
  for (int k = 0; k < fibers; ++k) {
    const float fiber = at.x + radius + static_cast<float>(k * ruler.fiber_mm) * per_mm;
    const float guide = at.x + radius + static_cast<float>(k * ruler.pitch_mm) * per_mm;
    canvas.AddCircle({fiber, middle}, radius - 0.5F, quiet, 0, 1.5F);
    const float top = middle + radius + em(0.15F);
    canvas.AddTriangleFilled({guide, top}, {guide - 0.35F * tick, top + tick}, {guide + 0.35F * tick, top + tick},
                             accent);
  }
  ImGui::Dummy({width, 2.0F * radius + em(0.2F) + tick});
}

}  // namespace

void rulers(const Workbench& bench, const PanelState& state) {
  const LessonRun& run = *bench.lesson();
  const bool inch = bench.active()->stage.view.units == Units::inch;
  for (const std::size_t k : {0U, 1U}) {
    if (!run.as_given[k]) continue;
    const PitchRuler ruler = ruler_of(run.as_given[k]->plan());
    strong_text(k == 0 ? "First" : "Second", state);
    draw_ruler(ruler);
    reading_text(ruler_words(ruler, inch), state);
    ImGui::Dummy({1.0F, em(0.3F)});
  }
  ImGui::PushStyleColor(ImGuiCol_Text, quiet_color());
  ImGui::TextUnformatted(
      wrapped("Circles: fibers side by side. Below them: where the guide stands, turn after turn.",
              ImGui::GetContentRegionAvail().x)
          .c_str());
  ImGui::PopStyleColor();
}

}  // namespace laywright
