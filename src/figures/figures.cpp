#include "figures/figures.h"

#include <algorithm>
#include <sstream>

#include <fmt/format.h>

#include "base/readable.h"

namespace laywright {

const char* name_of(StopReason reason) {
  switch (reason) {
    case StopReason::length: return "length";
    case StopReason::turns: return "turns";
    case StopReason::diameter: return "diameter";
    case StopReason::rim: return "rim";
  }
  return "";
}

const char* name_of(Support support) {
  switch (support) {
    case Support::none: return "none";
    case Support::barrel: return "barrel";
    case Support::turn: return "turn";
    case Support::valley: return "valley";
    case Support::flange: return "flange";
  }
  return "";
}

const char* direction_name(int direction) { return direction > 0 ? "right" : "left"; }

std::string words_for(FindingKind kind) {
  std::string words = name_of(kind);
  std::replace(words.begin(), words.end(), '_', ' ');
  if (kind == FindingKind::pile_up) words = "pile-up";
  if (kind == FindingKind::ride_up) words = "ride-up";
  return words;
}

std::string title_of(const PlanDraft& plan) {
  if (!plan.title.empty()) return visible(plan.title);
  return plan.file.empty() ? "Untitled wind" : visible(plan.file);
}

std::string title_of(const Plan& plan) { return title_of(plan.draft()); }

std::string settings_line(const Plan& plan) {
  const Spool& spool = plan.spool();
  return fmt::format("Barrel {}, flange {}, inside width {}; fiber {}; pitch {}",
                     length_text(spool.barrel_diameter_mm), length_text(spool.flange_diameter_mm),
                     length_text(spool.inside_width_mm), length_text(plan.fiber().diameter_mm),
                     length_text(plan.traverse().pitch_mm));
}

std::string labelled(const char* label, const std::string& value) {
  return fmt::format("  {:<15} {}\n", label, value);
}

std::string wrapped(const std::string& text, std::size_t width, std::size_t indent) {
  const std::string lead(indent, ' ');
  std::string lines, line = lead;
  std::istringstream words(text);
  for (std::string word; words >> word;) {
    if (line.size() > indent && line.size() + 1 + word.size() > width) {
      lines += line + '\n';
      line = lead;
    }
    if (line.size() > indent) line += ' ';
    line += word;
  }
  if (line.size() > indent) lines += line + '\n';
  return lines;
}

std::string paragraph(const std::string& text, std::size_t indent) {
  constexpr std::size_t columns = 96;
  return wrapped(text, columns, indent);
}

}  // namespace laywright
