#include "ui/advice_parts.h"

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "session/advice.h"
#include "session/advice_commands.h"
#include "session/command_rows.h"
#include "ui/style.h"

namespace laywright {
namespace {

void tip(const std::string& text) {
  if (text.empty() || !ImGui::IsItemHovered(ImGuiHoveredFlags_AllowWhenDisabled)) return;
  ImGui::BeginTooltip();
  ImGui::PushTextWrapPos(em(24.0F));
  ImGui::TextUnformatted(text.c_str());
  ImGui::PopTextWrapPos();
  ImGui::EndTooltip();
}

}  // namespace

Theme theme_of(const Workbench& bench) {
  return bench.active() != nullptr ? bench.active()->stage.view.theme : bench.settings().view.theme;
}

bool in_inches(const Workbench& bench) {
  const View& view = bench.active() != nullptr ? bench.active()->stage.view : bench.settings().view;
  return view.units == Units::inch;
}

void coloured(const ImVec4& color, const std::string& text) {
  ImGui::PushStyleColor(ImGuiCol_Text, color);
  wrapped_text(text);
  ImGui::PopStyleColor();
}

void heading(const std::string& text, const PanelState& state) {
  ImGui::PushFont(state.strong);
  wrapped_text(text);
  ImGui::PopFont();
}

bool command_button(const Workbench& bench, const char* label, const Command& command, const std::string& help,
                    Commands& out) {
  const std::string reason = bench.why_not(command);
  ImGui::BeginDisabled(!reason.empty());
  const bool pressed = ImGui::Button(label);
  ImGui::EndDisabled();
  tip(!reason.empty() ? reason : help.empty() ? "" : with_keys(help, command));
  if (pressed) out.push_back(command);
  return pressed;
}

void inquiry_line(const Workbench& bench, AdviceKind kind, const std::string& words, const std::string& place,
                  PanelState& state, Commands& out) {
  inquiry_line(bench.active()->advice->status(kind), theme_of(bench), words, place, cmd::stop_advice(kind), state,
               out);
}

void inquiry_line(const InquiryStatus& status, Theme theme, const std::string& words, const std::string& place,
                  const Command& stop_it, PanelState& state, Commands& out) {
  if (status.busy) {
    std::string text = fmt::format("{} {}", words, percent_text(status.share, 0));
    if (status.seconds_left && *status.seconds_left >= 1.0) {
      text += fmt::format(", {}", duration_text(*status.seconds_left));
    }
    const float stop = ImGui::CalcTextSize("Stop").x + 2.0F * ImGui::GetStyle().FramePadding.x;
    const float room = ImGui::GetContentRegionAvail().x - stop - ImGui::GetStyle().ItemSpacing.x;
    ImGui::ProgressBar(static_cast<float>(status.share), {std::min(room, em(22.0F)), 0.0F}, text.c_str());
    state.places.note_item(fmt::format("{} progress", place));
    ImGui::SameLine();
    if (ImGui::Button("Stop")) out.push_back(stop_it);
    state.places.note_item(fmt::format("{} stop", place));
    tip("Give it up (Escape); what was found before stays.");
  } else if (!status.trouble.empty()) {
    coloured(error_color(theme), status.trouble);
  } else if (status.stopped) {
    coloured(quiet_color(), "Stopped.");
  }
}

void saving_line(const FileSaving& saving, Theme theme, const char* saved) {
  if (!saving.outcome) {
    ImGui::TextDisabled("Writing %s", saving.path.c_str());
    ImGui::ProgressBar(static_cast<float>(saving.share), {-1.0F, 0.0F});
  } else if (saving.stopped) {
    ImGui::TextWrapped("Stopped; nothing was written.");
  } else if (saving.outcome->empty()) {
    ImGui::TextWrapped("%s %s (%.1f MB)", saved, saving.path.c_str(), static_cast<double>(saving.bytes) / 1e6);
  } else {
    const Issue& issue = saving.outcome->front();
    coloured(error_color(theme), fmt::format("{}: {}", issue.file.empty() ? saving.path : issue.file, issue.what));
  }
}

void stale_line(const Workbench& bench, AdviceKind kind, const std::string& place, PanelState& state) {
  const std::optional<Standing> standing = bench.standing(kind);
  if (!standing || !standing->stale) return;
  ImGui::BeginGroup();
  coloured(warning_color(theme_of(bench)),
           "The plan has changed since: this is not about it. Undo that, or ask again.");
  ImGui::EndGroup();
  state.places.note_item(fmt::format("{} stale", place));
}

bool option_buttons(const Workbench& bench, AdviceKind kind, std::size_t option, const std::string& place,
                    PanelState& state, Commands& out) {
  const std::optional<Standing> standing = bench.standing(kind);
  if (standing && standing->set == option) {
    ImGui::AlignTextToFramePadding();
    ImGui::TextDisabled("The plan is set so; Ctrl+Z takes it back.");
    state.places.note_item(fmt::format("{} is set {}", place, option));
    return false;
  }
  ImGui::PushID(static_cast<int>(option));
  bool pressed = command_button(bench, "Set it so", cmd::set_advised(kind, option, false),
                                "The plan gets these settings; one undo takes them back.", out);
  state.places.note_item(fmt::format("{} set {}", place, option));
  ImGui::SameLine();
  pressed |= command_button(bench, "Compare", cmd::set_advised(kind, option, true),
                            "The plan gets these settings, and its build stands beside the one as it is.", out);
  state.places.note_item(fmt::format("{} compare {}", place, option));
  ImGui::PopID();
  return pressed;
}

}  // namespace laywright
