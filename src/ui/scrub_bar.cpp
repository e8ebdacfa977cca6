#include "ui/panels.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "desk/place_words.h"
#include "scene/palette.h"
#include "session/command_rows.h"
#include "session/scrub_commands.h"
#include "ui/style.h"

namespace laywright {
namespace {

// Above the bar: below it stands the counter, which one looks at meanwhile.
void tip_above(const char* tip) {
  const float half = 0.5F * ImGui::CalcTextSize(tip).x + ImGui::GetStyle().WindowPadding.x;
  const ImGuiIO& io = ImGui::GetIO();
  const float x = std::max(half, std::min(io.MousePos.x, io.DisplaySize.x - half));
  ImGui::SetNextWindowPos({x, ImGui::GetItemRectMin().y - em(0.4F)}, ImGuiCond_Always, {0.5F, 1.0F});
  ImGui::SetTooltip("%s", tip);
}

void button(const char* name, std::string_view words, const Command& command, float width, PanelState& state,
            Commands& out) {
  const std::string tip = with_keys(words, command);
  if (ImGui::Button(name, {width, 0.0F})) out.push_back(command);
  state.places.note_item(fmt::format("scrub {}", tip));
  if (ImGui::IsItemHovered()) tip_above(tip.c_str());
  ImGui::SameLine(0.0F, em(0.25F));
}

// Findings as ticks below the bar, at the lengths where they begin.
void finding_ticks(const Wound& wound, const ImVec2& low, const ImVec2& high) {
  ImDrawList& canvas = *ImGui::GetWindowDrawList();
  const double total = wound.build().length_mm;
  if (total <= 0.0) return;
  for (const Finding& finding : wound.measurements().findings) {
    const auto share = static_cast<float>(finding.length_mm[0] / total);
    const float x = low.x + share * (high.x - low.x);
    canvas.AddRectFilled({x - 1.0F, high.y - em(0.28F)}, {x + 1.0F, high.y},
                         ImGui::GetColorU32(color_of(finding_rgba(finding.kind))));
  }
}

void bar(const Wound& wound, const Moment& moment, PanelState& state, Commands& out) {
  const double total = wound.build().length_mm;
  ImGui::InvisibleButton("wind", {std::max(em(4.0F), ImGui::GetContentRegionAvail().x), ImGui::GetFrameHeight()});
  state.places.note_item("scrub bar");
  const ImVec2 low = ImGui::GetItemRectMin(), high = ImGui::GetItemRectMax();
  ImDrawList& canvas = *ImGui::GetWindowDrawList();
  const float round = ImGui::GetStyle().FrameRounding;
  canvas.AddRectFilled(low, high, ImGui::GetColorU32(ImGuiCol_FrameBg), round);
  const float share = total > 0.0 ? static_cast<float>(std::min(1.0, moment.length_mm / total)) : 1.0F;
  const float x = low.x + share * (high.x - low.x);
  canvas.AddRectFilled(low, {x, high.y}, ImGui::GetColorU32(ImGuiCol_HeaderHovered), round);
  finding_ticks(wound, low, high);
  canvas.AddRect(low, high, ImGui::GetColorU32(ImGuiCol_Border), round);
  canvas.AddRectFilled({x - em(0.16F), low.y - em(0.1F)}, {x + em(0.16F), high.y + em(0.1F)},
                       ImGui::GetColorU32(ImGuiCol_SliderGrab), em(0.1F));
  const double pointed =
      total * std::clamp((ImGui::GetIO().MousePos.x - low.x) / std::max(1.0F, high.x - low.x), 0.0F, 1.0F);
  if (ImGui::IsItemActive()) out.push_back(cmd::scrub_length(pointed));
  if (ImGui::IsItemHovered() && !ImGui::IsItemActive()) {
    tip_above("Click or drag: the wind up to here. Ticks are findings.");
  }
}

}  // namespace

void scrub_bar(const Workbench& bench, PanelState& state, Commands& out) {
  const WoundPtr wound = bench.wound_in_hand();
  if (!wound) return;
  const Stage& stage = *bench.stage_in_hand();
  const Moment moment = moment_of(stage.playback, *wound);
  const float small = em(2.0F);
  const auto press = [&](const char* name, std::string_view words, const Command& command, float width) {
    button(name, words, command, width, state, out);
  };
  press(stage.playback.playing ? "Pause" : "Play", "Play or pause", cmd::play_pause(), em(3.6F));
  press("|<", "To the start", cmd::to_start(), small);
  press("<", "One turn back", cmd::step_turns(-1.0), small);
  press(">", "One turn on", cmd::step_turns(1.0), small);
  press(">|", "To the end", cmd::to_end(), small);
  press("-", "Play half as fast", cmd::change_rate(0.5), em(1.6F));
  const std::string rate = rate_words(rate_of(stage.playback, *wound));
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted(rate.c_str());
  if (ImGui::IsItemHovered()) tip_above("Times the line speed");
  ImGui::SameLine(0.0F, em(0.25F));
  press("+", "Play twice as fast", cmd::change_rate(2.0), em(1.6F));
  bar(*wound, moment, state, out);
  const MomentWords words = moment_words(moment, *wound, stage.view.units);
  const std::string place = fmt::format("{}   {}   {}", words.of_length, words.of_turns, words.of_layers);
  const std::string time = "   " + words.time;
  // Where there is no room for the time, the place is worth more.
  const bool room = ImGui::CalcTextSize((place + time).c_str()).x < ImGui::GetContentRegionAvail().x;
  ImGui::TextDisabled("%s", (room ? place + time : place).c_str());
}

}  // namespace laywright
