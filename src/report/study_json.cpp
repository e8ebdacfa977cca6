#include <cmath>
#include <limits>
#include <stdexcept>
#include <utility>

#include <fmt/format.h>

#include "advise/setting_text.h"
#include "plan/plan_file.h"
#include "plan/plan_writer.h"
#include "report/outcome_json.h"
#include "report/study_report.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

constexpr const char* format_name = "lay-study 1";

Json number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

Json spec_json(const StudySpec& spec) {
  Json axes = Json::array(), tolerances = Json::array();
  for (const StudyAxis& axis : spec.axes) {
    axes.push_back({{"key", axis.path}, {"from", axis.from}, {"to", axis.to}, {"count", axis.count}});
  }
  for (const Tolerance& each : spec.tolerances) {
    tolerances.push_back({{"key", each.path},
                          {"law", each.law == Tolerance::Law::uniform ? "uniform" : "normal"},
                          {"centre", each.centre},
                          {"size", each.size}});
  }
  return {{"axes", std::move(axes)},
          {"tolerances", std::move(tolerances)},
          {"samples", spec.samples},
          {"seed", spec.lay.seed},
          {"fidelity", spec.lay.fidelity}};
}

StudySpec spec_from(const Json& json) {
  StudySpec spec;
  for (const Json& axis : json.at("axes")) {
    spec.axes.push_back({axis.at("key").get<std::string>(), axis.at("from").get<double>(),
                         axis.at("to").get<double>(), axis.at("count").get<int>()});
  }
  for (const Json& each : json.at("tolerances")) {
    spec.tolerances.push_back(
        {each.at("key").get<std::string>(),
         each.at("law").get<std::string>() == "uniform" ? Tolerance::Law::uniform : Tolerance::Law::normal,
         each.at("centre").get<double>(), each.at("size").get<double>()});
  }
  spec.samples = json.at("samples").get<int>();
  spec.lay.seed = json.at("seed").get<std::uint64_t>();
  spec.lay.fidelity = json.at("fidelity").get<double>();
  return spec;
}

// By the keys that the file names: a figure that it does not have yet is not a number.
std::vector<StudyRow> rows_from(const Json& json, const Json& keys, const StudySpec& spec) {
  const std::size_t most = spec.rows(), values = spec.paths().size();
  std::vector<const OutcomeFigure*> columns;
  for (const Json& key : keys) columns.push_back(find_outcome_figure(key.get<std::string>()));
  std::vector<StudyRow> rows;
  for (const Json& each : json) {
    StudyRow row{each.at("build").get<std::size_t>(), each.at("values").get<std::vector<double>>(), {}};
    const Json& figures = each.at("figures");
    if (!figures.empty()) row.figures.resize(outcome_figures().size(), std::numeric_limits<double>::quiet_NaN());
    const bool whole = figures.empty() || figures.size() == columns.size();
    for (std::size_t i = 0; whole && i < figures.size(); ++i) {
      if (columns[i] && !figures[i].is_null())
        row.figures[Study::figure(columns[i]->key)] = figures[i].get<double>();
    }
    if (row.index >= most || row.values.size() != values || !whole) throw std::out_of_range("a row does not belong");
    rows.push_back(std::move(row));
  }
  return rows;
}

Issue unreadable(const std::string& file, const std::string& why) {
  Issue issue = option_issue("", "", fmt::format("is no study that this program wrote ({})", why));
  issue.file = file;
  return issue;
}

}  // namespace

std::string study_json(const Study& study) {
  Json rows = Json::array(), figures = Json::array();
  for (const OutcomeFigure& figure : outcome_figures()) figures.push_back(figure.key);
  for (const StudyRow& row : study.rows) {
    Json values = Json::array();
    for (const double value : row.figures) values.push_back(number(value));
    rows.push_back({{"build", row.index}, {"values", row.values}, {"figures", std::move(values)}});
  }
  const Json document = {
      {"format", format_name},
      {"plan", {{"title", study.plan.title}, {"file", study.plan.file}, {"text", write_plan(study.plan)}}},
      {"study", spec_json(study.spec)},
      {"keys", study.spec.paths()},
      {"figures", std::move(figures)},
      {"rows", std::move(rows)}};
  return document.dump(1, ' ', false, Json::error_handler_t::replace) + '\n';
}

Result<Study> study_from_json(std::string_view text, const std::string& file) {
  const Json json = Json::parse(text, nullptr, false);
  if (json.is_discarded() || !json.is_object()) return unreadable(file, "not JSON");
  try {
    if (json.at("format").get<std::string>() != format_name) return unreadable(file, "another format");
    const std::string name = json.at("plan").at("file").get<std::string>();
    const Result<PlanDraft> plan = read_plan(json.at("plan").at("text").get<std::string>(), name);
    if (!plan.ok()) return plan.issues();
    Study study{plan.value(), spec_from(json.at("study")), {}};
    if (Issues issues = check_study(study.plan, study.spec); !issues.empty()) return issues;
    study.rows = rows_from(json.at("rows"), json.at("figures"), study.spec);
    return study;
  } catch (const Json::exception& wrong) {
    return unreadable(file, wrong.what());
  } catch (const std::out_of_range& wrong) {
    return unreadable(file, wrong.what());
  }
}

}  // namespace laywright
