#include "figures/figures.h"

#include <algorithm>
#include <cmath>
#include <sstream>

#include <fmt/format.h>

#include "base/readable.h"

namespace laywright {
namespace {

// "-1234567.8" -> "-1,234,567.8"
std::string with_thousands_apart(std::string digits) {
  const std::size_t first = digits.find_first_of("0123456789");
  const std::size_t point = std::min(digits.find('.'), digits.size());
  for (std::size_t at = point; at > first + 3;) {
    at -= 3;
    digits.insert(at, 1, ',');
  }
  return digits;
}

}  // namespace

std::string figure(double value, int decimals) {
  if (!std::isfinite(value)) return "-";
  std::string digits = fmt::format("{:.{}f}", value, decimals);
  const bool zero = digits.find_first_of("123456789") == std::string::npos;
  if (zero && digits.front() == '-') digits.erase(0, 1);
  return with_thousands_apart(std::move(digits));
}

std::string setting(double value) { return fmt::format("{:.6g}", value == 0.0 ? 0.0 : value); }

std::string length_text(double mm) {
  const double size = std::abs(mm);
  if (size >= 1e6) return fmt::format("{:.5g} km", mm / 1e6);
  if (size >= 1e4) return fmt::format("{:.5g} m", mm / 1e3);
  return fmt::format("{:.5g} mm", mm == 0.0 ? 0.0 : mm);
}

std::string duration_text(double seconds) {
  if (!std::isfinite(seconds)) return "-";
  const auto whole = static_cast<long long>(std::llround(std::max(0.0, seconds)));
  if (whole < 60) return fmt::format("{} s", whole);
  if (whole < 3600) return fmt::format("{} min {:02} s", whole / 60, whole % 60);
  return fmt::format("{} h {:02} min", whole / 3600, whole % 3600 / 60);
}

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

}  // namespace laywright
