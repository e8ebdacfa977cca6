#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <stdexcept>
#include <utility>

#include <fmt/format.h>

#include "advise/setting_text.h"
#include "answers/outcome_json.h"
#include "answers/study_report.h"
#include "figures/json_number.h"
#include "plan/plan_file.h"
#include "plan/plan_writer.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

constexpr const char* format_name = "lay-study 1";

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
  return {{"axes", std::move(axes)}, {"tolerances", std::move(tolerances)},
          {"samples", spec.samples}, {"drawn_off", name_of(spec.way)},
          {"seed", spec.lay.seed},   {"fidelity", spec.lay.fidelity}};
}

// A whole number that such a type can hold; anything else does not belong.
template <class Whole>
Whole whole(const Json& json) {
  const auto number = json.is_number_unsigned() ? json.get<std::uint64_t>() : std::uint64_t{0};
  if (!json.is_number_unsigned() || number > static_cast<std::uint64_t>(std::numeric_limits<Whole>::max())) {
    throw std::out_of_range("no whole number");
  }
  return static_cast<Whole>(number);
}

DrawOff way_from(const std::string& name) {
  for (const DrawOff way : {DrawOff::side, DrawOff::over_left, DrawOff::over_right})
    if (name == name_of(way)) return way;
  throw std::out_of_range("no way to draw it off");
}

StudySpec spec_from(const Json& json) {
  StudySpec spec;
  for (const Json& axis : json.at("axes")) {
    spec.axes.push_back({axis.at("key").get<std::string>(), axis.at("from").get<double>(),
                         axis.at("to").get<double>(), whole<int>(axis.at("count"))});
  }
  for (const Json& each : json.at("tolerances")) {
    spec.tolerances.push_back(
        {each.at("key").get<std::string>(),
         each.at("law").get<std::string>() == "uniform" ? Tolerance::Law::uniform : Tolerance::Law::normal,
         each.at("centre").get<double>(), each.at("size").get<double>()});
  }
  spec.samples = whole<int>(json.at("samples"));
  if (const auto way = json.find("drawn_off"); way != json.end()) spec.way = way_from(way->get<std::string>());
  spec.lay.seed = whole<std::uint64_t>(json.at("seed"));
  spec.lay.fidelity = json.at("fidelity").get<double>();
  return spec;
}

Json verdict_json(const std::optional<RowVerdict>& verdict) {
  if (!verdict) return nullptr;
  return {{"grade", name_of(verdict->grade)}, {"decides", verdict->decides}, {"reason", verdict->reason}};
}

std::optional<RowVerdict> verdict_from(const Json& json) {
  if (json.is_null()) return std::nullopt;
  const auto name = json.at("grade").get<std::string>();
  for (const Grade grade : {Grade::good, Grade::marginal, Grade::do_not_wind})
    if (name == name_of(grade))
      return RowVerdict{grade, json.at("decides").get<std::string>(), json.at("reason").get<std::string>()};
  throw std::out_of_range("no grade");
}

// By the keys that the file names: a figure that it does not have yet is not a number. `part` follows what is read.
std::vector<StudyRow> rows_from(const Json& json, const Json& keys, const StudySpec& spec, std::string& part) {
  const std::size_t most = spec.rows(), values = spec.paths().size();
  std::vector<const OutcomeFigure*> columns;
  for (const Json& key : keys) columns.push_back(find_outcome_figure(key.get<std::string>()));
  std::vector<StudyRow> rows;
  for (const Json& each : json) {
    part = fmt::format("rows[{}]", rows.size() + 1);
    StudyRow row{whole<std::size_t>(each.at("build")), each.at("values").get<std::vector<double>>(), {}, {}};
    const Json& figures = each.at("figures");
    if (!figures.empty()) row.figures.resize(outcome_figures().size(), std::numeric_limits<double>::quiet_NaN());
    const bool whole = figures.empty() || figures.size() == columns.size();
    for (std::size_t i = 0; whole && i < figures.size(); ++i) {
      if (columns[i] && !figures[i].is_null())
        row.figures[Study::figure(columns[i]->key)] = figures[i].get<double>();
    }
    if (row.index >= most || row.values.size() != values || !whole) throw std::out_of_range("a row does not belong");
    if (const auto verdict = each.find("verdict"); verdict != each.end()) row.verdict = verdict_from(*verdict);
    rows.push_back(std::move(row));
  }
  return rows;
}

Issue unreadable(const std::string& file, const std::string& part, std::string what) {
  Issue issue = option_issue(part, "", std::move(what));
  issue.file = file;
  return issue;
}

// The text is no JSON from that byte on, counted from 1.
Issue broken(std::string_view text, std::size_t byte, const std::string& file) {
  if (text.empty()) return unreadable(file, "", "is empty; it must be a study");
  const std::string_view before = text.substr(0, byte == 0 ? 0 : byte - 1);
  const bool ends = text.find_first_not_of(" \t\r\n", before.size()) == std::string_view::npos;
  Issue issue = unreadable(
      file, "",
      ends ? fmt::format("ends in the middle, at byte {}: it was not written to its end. Write that study again",
                         text.size())
           : fmt::format("is no JSON at byte {}: something stands there that was not written by this program. Write "
                         "that study again",
                         byte));
  issue.line = 1 + static_cast<int>(std::count(before.begin(), before.end(), '\n'));
  return issue;
}

// Those of the plan that a study holds, told of the study's file.
Issues issues_of_plan(Issues issues, const std::string& file) {
  for (Issue& issue : issues) {
    const std::string where = issue.line > 0 ? fmt::format(", in its line {}", issue.line) : "";
    issue.what = fmt::format("{} (of the plan that this study holds{})", issue.what, where);
    issue.file = file;
    issue.line = 0;
  }
  return issues;
}

}  // namespace

std::string study_json(const Study& study) {
  Json rows = Json::array(), figures = Json::array();
  for (const OutcomeFigure& figure : outcome_figures()) figures.push_back(figure.key);
  for (const StudyRow& row : study.rows) {
    Json values = Json::array();
    for (const double value : row.figures) values.push_back(number(value));
    rows.push_back({{"build", row.index},
                    {"values", row.values},
                    {"figures", std::move(values)},
                    {"verdict", verdict_json(row.verdict)}});
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
  std::string part;  // that is being read
  try {
    const Json json = Json::parse(text);
    part = "format";
    if (json.at("format").get<std::string>() != format_name) {
      return unreadable(file, part, fmt::format("says that this is no study; \"{}\" is due", format_name));
    }
    part = "plan";
    const Result<PlanDraft> plan =
        read_plan(json.at("plan").at("text").get<std::string>(), json.at("plan").at("file").get<std::string>());
    if (!plan.ok()) return issues_of_plan(plan.issues(), file);
    part = "study";
    Study study{plan.value(), spec_from(json.at("study")), {}};
    if (Issues issues = check_study(study.plan, study.spec); !issues.empty()) {
      for (Issue& issue : issues) issue.file = file;
      return issues;
    }
    part = "rows";
    study.rows = rows_from(json.at("rows"), json.at("figures"), study.spec, part);
    return study;
  } catch (const Json::parse_error& wrong) {
    return broken(text, wrong.byte, file);
  } catch (const Json::exception&) {
    if (part.empty()) return unreadable(file, part, "holds a number that no study has. Write that study again");
    return unreadable(file, part, "is missing, or is not what a study has there. Write that study again");
  } catch (const std::out_of_range&) {
    return unreadable(file, part, "does not belong to this study. Write that study again");
  }
}

}  // namespace laywright
