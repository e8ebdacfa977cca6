#include "app/study_options.h"

#include <algorithm>
#include <utility>

#include "advise/setting_text.h"
#include "app/ranges.h"
#include "plan/plan_values.h"

namespace laywright {
namespace {

std::vector<std::string> cut(const std::string& text, char at) {
  std::vector<std::string> parts;
  for (std::size_t begin = 0; begin <= text.size();) {
    const std::size_t end = std::min(text.find(at, begin), text.size());
    parts.push_back(text.substr(begin, end - begin));
    begin = end + 1;
  }
  return parts;
}

// "KEY=REST"; REST is empty where there is no sign.
std::pair<std::string, std::vector<std::string>> key_and_parts(const std::string& text) {
  const std::size_t sign = text.find('=');
  if (sign == std::string::npos) return {text, {}};
  return {text.substr(0, sign), cut(text.substr(sign + 1), ':')};
}

Result<StudyAxis> read_axis(const PlanDraft& plan, const std::string& text) {
  const auto [key, parts] = key_and_parts(text);
  if (parts.size() < 2 || parts.size() > 3) {
    return option_issue("--vary", text, "is no range of a key", "KEY=FROM:TO or KEY=FROM:TO:COUNT");
  }
  const Result<double> from = read_setting(plan, key, parts[0]), to = read_setting(plan, key, parts[1]);
  if (!from.ok()) return from.issues();
  if (!to.ok()) return to.issues();
  constexpr int usual_count = 11;
  const std::optional<int> count = parts.size() == 3 ? read_number<int>(parts[2]) : usual_count;
  if (!count) return option_issue("--vary", text, "has no whole number as its count", "KEY=FROM:TO:COUNT");
  return StudyAxis{key, from.value(), to.value(), *count};
}

Result<Tolerance> read_tolerance(const PlanDraft& plan, const std::string& text) {
  const auto [key, parts] = key_and_parts(text);
  if (key == scatter_path && parts.empty()) return Tolerance{scatter_path, Tolerance::Law::uniform, 0.0, 0.0};
  const bool normal = parts.size() == 2 && parts[1] == "normal";
  if (parts.empty() || parts.size() > 2 || (parts.size() == 2 && !normal && parts[1] != "uniform")) {
    return option_issue("--tolerance", text, "is no tolerance of a key", "KEY=HALFWIDTH or KEY=SIGMA:normal");
  }
  const Result<double> size = read_setting(plan, key, parts[0]);
  if (!size.ok()) return size.issues();
  return Tolerance{key, normal ? Tolerance::Law::normal : Tolerance::Law::uniform, value_at(plan, key).value_or(0.0),
                   size.value()};
}

}  // namespace

Result<StudySpec> read_spec(const PlanDraft& plan, const StudyOptions& options) {
  StudySpec spec;
  spec.lay = options.lay;
  if (options.end == "left") spec.way = DrawOff::over_left;
  if (options.end == "right") spec.way = DrawOff::over_right;
  for (const std::string& text : options.axes) {
    const Result<StudyAxis> axis = read_axis(plan, text);
    if (!axis.ok()) return axis.issues();
    spec.axes.push_back(axis.value());
  }
  if (options.own_tolerances) {
    spec.tolerances = own_tolerances(plan);
    if (spec.tolerances.empty() && options.tolerances.empty()) {
      return option_issue("--own-tolerances", "",
                          "this plan has none: it gives no fiber.diameter_tolerance, and nothing in it scatters");
    }
  }
  for (const std::string& text : options.tolerances) {
    const Result<Tolerance> tolerance = read_tolerance(plan, text);
    if (!tolerance.ok()) return tolerance.issues();
    spec.tolerances.push_back(tolerance.value());
  }
  if (!spec.is_grid()) spec.samples = options.samples;
  if (Issues issues = check_study(plan, spec); !issues.empty()) return issues;
  return spec;
}

bool read_shard(const std::string& text, std::size_t& index, std::size_t& count) {
  const auto pair = read_pair<std::size_t>(text, '/');
  if (!pair || pair->first < 1 || pair->second < pair->first) return false;
  index = pair->first - 1;
  count = pair->second;
  return true;
}

}  // namespace laywright
