#include "ui/cause_panel.h"

#include <fmt/format.h>

#include "measure/phrases.h"
#include "session/advice.h"
#include "session/advice_commands.h"
#include "session/scrub_commands.h"
#include "ui/advice_parts.h"
#include "ui/focus.h"
#include "ui/style.h"
#include "ui/texts.h"

namespace laywright {
namespace {

const Finding* chosen_finding(const Workbench& bench) {
  const WoundPtr wound = bench.wound_in_hand();
  const auto chosen = bench.stage_in_hand()->view.chosen_finding;
  if (!wound || !chosen || *chosen >= wound->measurements().findings.size()) return nullptr;
  return &wound->measurements().findings[*chosen];
}

bool any_to_tell(const Workbench& bench) {
  const Advice& advice = *bench.active()->advice;
  const InquiryStatus status = advice.status(AdviceKind::cause);
  return advice.cause() || status.busy || status.stopped || !status.trouble.empty();
}

// "Flange gap, layers 2 to 9, right flange".
std::string name_of_finding(const Finding& finding) {
  std::string name = fmt::format("{}, {}", spoken(name_of(finding.kind)), layers_of(finding));
  if (finding.side) name += fmt::format(", {} flange", name_of(*finding.side));
  return name;
}

void answer(const Workbench& bench, const CauseAnswer& answer, PanelState& state, Commands& out) {
  const Explanation& found = answer.explanation;
  heading("Why it is there", state);
  ImGui::PushStyleColor(ImGuiCol_Text, quiet_color());
  wrapped_text(name_of_finding(found.finding));
  ImGui::PopStyleColor();
  stale_line(bench, AdviceKind::cause, "cause", state);
  ImGui::BeginGroup();
  wrapped_text(found.text);
  ImGui::EndGroup();
  state.places.note_item("cause text");
  for (std::size_t i = 0; i < found.remedies.size(); ++i) {
    if (i == 1) {
      ImGui::Spacing();
      heading("What else would do", state);
    }
    if (i > 0) wrapped_text(found.remedies[i].text);
    if (found.remedies[i].is_offered()) option_buttons(bench, AdviceKind::cause, i, "cause", state, out);
  }
  ImGui::Spacing();
  ImGui::PushStyleColor(ImGuiCol_Text, quiet_color());
  wrapped_text(fmt::format("{} winds were laid to find that out.", found.trials));
  ImGui::PopStyleColor();
}

}  // namespace

float cause_height(const Workbench& bench, float room) {
  if (any_to_tell(bench)) return std::max(em(10.0F), 0.62F * room);
  return chosen_finding(bench) != nullptr ? std::min(em(10.0F), 0.5F * room) : 0.0F;
}

bool is_answered(const Workbench& bench) {
  const Desk* desk = bench.active();
  if (desk == nullptr) return false;
  const Advice& advice = *desk->advice;
  if (advice.status(AdviceKind::cause).busy) return true;
  const std::optional<Standing> standing = bench.standing(AdviceKind::cause);
  if (!standing || standing->stale) return false;
  return standing->set || desk->stage.view.chosen_finding == advice.cause()->finding;
}

void show_new_search(const Workbench& bench, PanelState& state) {
  const bool busy = bench.active() != nullptr && bench.active()->advice->status(AdviceKind::cause).busy;
  if (busy && !state.cause_asked) state.wanted_tab = "Findings";
  state.cause_asked = busy;
}

void cause_panel(const Workbench& bench, PanelState& state, Commands& out) {
  const Finding* chosen = chosen_finding(bench);
  if (chosen == nullptr && !any_to_tell(bench)) return;
  ImGui::BeginChild("why", {0.0F, 0.0F});
  state.focus.open_tabs.emplace_back(cause_focus);
  if (state.wanted_tab == cause_focus) state.wanted_tab.clear();
  take_keys_here(cause_focus, false, state);
  const bool answered = is_answered(bench);
  if (chosen != nullptr) {
    wrapped_text(chosen->text);
    if (!answered) {
      command_button(bench, "Why is it there?", cmd::explain_finding(),
                     "Try one setting after the other, to find what it comes from and what would remove it.", out);
      state.places.note_item("cause ask");
      ImGui::SameLine();
    }
    if (ImGui::Button("Let go")) out.push_back(cmd::choose_finding());
    state.places.note_item("finding let go");
  }
  const Advice& advice = *bench.active()->advice;
  if (any_to_tell(bench)) {
    if (chosen != nullptr) ImGui::Separator();
    inquiry_line(bench, AdviceKind::cause, "Trying settings", "cause", state, out);
    if (advice.cause()) answer(bench, *advice.cause(), state, out);
    if (!advice.status(AdviceKind::cause).busy) {
      if (ImGui::Button("Forget it")) out.push_back(cmd::forget_advice(AdviceKind::cause));
      state.places.note_item("cause forget");
    }
  }
  ImGui::EndChild();
}

}  // namespace laywright
