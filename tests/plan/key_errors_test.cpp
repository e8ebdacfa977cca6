// What is said about each key when its value cannot be read, is out of range, is missing, or is misspelt.
#include <set>

#include "plan/fields.h"
#include "sample_plan.h"

using namespace laywright;

namespace {

struct Line {
  std::string text;
  int number = 0;
  std::string path;
  const FieldInfo* field = nullptr;
};

const FieldInfo* field_of(const std::string& table, const std::string& key) {
  for (const auto& field : plan_fields()) {
    if (field.table == table && field.key == key) return &field;
  }
  for (const auto& field : step_fields()) {
    if (field.table == table && field.key == key) return &field;
  }
  return nullptr;
}

// All lines of the sample that hold a field; of the steps the first.
std::vector<Line> field_lines() {
  std::vector<Line> lines;
  std::string table;
  int number = 0;
  for (std::size_t at = 0; at < sample::full.size();) {
    const std::size_t end = sample::full.find('\n', at);
    const std::string text(sample::full.substr(at, end - at));
    at = end + 1;
    ++number;
    if (text.rfind("[[", 0) == 0) {
      table = table == "wind.step" ? "" : "wind.step";
    } else if (text.rfind("[", 0) == 0) {
      table = text.substr(1, text.find(']') - 1);
    }
    const std::string key = text.substr(0, text.find(' '));
    if (const FieldInfo* field = field_of(table, key)) {
      lines.push_back({text, number, (table == "wind.step" ? "wind.step[0]" : table) + "." + key, field});
    }
  }
  return lines;
}

// The sample with one line replaced.
std::string with_line(int number, const std::string& replacement) {
  std::string text(sample::full);
  std::size_t at = 0;
  for (int i = 1; i < number; ++i) at = text.find('\n', at) + 1;
  return text.replace(at, text.find('\n', at) - at, replacement);
}

// The issue about this key at this line; there must be one.
Issue issue_at(const std::string& text, const Line& line) {
  const Result<Plan> read = plan_from_text(text, "a.lay.toml");
  INFO(sample::all_text(read.issues()));
  INFO(line.text);
  CHECK_FALSE(read.ok());
  for (const Issue& issue : read.issues()) {
    if (issue.key == line.path && issue.severity == Severity::error) {
      CHECK(issue.line == line.number);
      CHECK(issue.file == "a.lay.toml");
      CHECK_FALSE(issue.what.empty());
      return issue;
    }
  }
  FAIL("no issue about " << line.path);
  return {};
}

std::string key_of(const Line& line) { return std::string(line.field->key); }

}  // namespace

TEST_CASE("the sample gives every key but the other two ends of a wind, and is sound") {
  std::set<std::string> given;
  for (const Line& line : field_lines()) given.insert(line.field->path());
  for (const auto& field : plan_fields()) {
    if (field.path() != "wind.turns" && field.path() != "wind.diameter") CHECK(given.count(field.path()) == 1);
  }
  for (const auto& field : step_fields()) CHECK(given.count(field.path()) == 1);
  CHECK(sample::issues_in(sample::full).empty());
}

TEST_CASE("a value of the wrong type is told with line, key path, value and what would do") {
  for (const Line& line : field_lines()) {
    for (const char* wrong :
         {"true", "[1, 2]", "{ a = 1 }", "1979-05-27", "\"\"", "\"fifty\"", "nan", "inf", "-inf"}) {
      const Issue issue = issue_at(with_line(line.number, key_of(line) + " = " + wrong), line);
      if (std::string_view(wrong).front() != '[' && std::string_view(wrong).front() != '{')
        CHECK(issue.value == wrong);
    }
    if (line.field->kind == FieldKind::quantity) {
      const std::string units = unit_choices(line.field->dimension);
      const Issue bare = issue_at(with_line(line.number, key_of(line) + " = 5"), line);
      CHECK(bare.what.find(units) != std::string::npos);
      CHECK(bare.value == "5");
      const Issue unknown = issue_at(with_line(line.number, key_of(line) + " = \"5 furlongs\""), line);
      CHECK(unknown.what == "has an unknown unit; use " + units);
      const std::string other = line.field->dimension == Dimension::mass ? "\"5 mm\"" : "\"5 kg\"";
      CHECK(issue_at(with_line(line.number, key_of(line) + " = " + other), line)
                .what.find(" is needed; use " + units) != std::string::npos);
      CHECK(issue_at(with_line(line.number, key_of(line) + " = \"nan " + std::string(line.field->usual_unit) + "\""),
                     line)
                .value == "\"nan " + std::string(line.field->usual_unit) + "\"");
      issue_at(with_line(line.number, key_of(line) + " = \"1e400 " + std::string(line.field->usual_unit) + "\""),
               line);
    } else if (line.field->kind == FieldKind::choice) {
      const Issue issue = issue_at(with_line(line.number, key_of(line) + " = \"sideways\""), line);
      CHECK(issue.allowed == allowed_text(*line.field));
      const std::string close = line.field->choices.back() + "x";
      CHECK(issue_at(with_line(line.number, key_of(line) + " = \"" + close + "\""), line)
                .what.find("did you mean \"" + line.field->choices.back() + "\"?") != std::string::npos);
    } else {
      const Issue issue = issue_at(with_line(line.number, key_of(line) + " = \"0.5\""), line);
      CHECK(issue.what.find("without quotes") != std::string::npos);
    }
  }
}

TEST_CASE("a value out of its range is told with the range, in the unit that it was written in") {
  for (const Line& line : field_lines()) {
    if (line.field->kind == FieldKind::choice) continue;
    for (const double beyond :
         {line.field->range.high * 1.001, line.field->range.low - 1.0, line.field->range.low}) {
      if (line.field->range.holds(beyond) || (line.field->key == "from_layer" && beyond > 1.0)) continue;
      std::string value = write_value(*line.field, beyond);
      if (line.field->kind == FieldKind::quantity) value = "\"" + value + "\"";
      const Issue issue = issue_at(with_line(line.number, key_of(line) + " = " + value), line);
      CHECK(issue.what == "is out of range");
      CHECK(issue.value == value);
      CHECK(issue.allowed == allowed_text(*line.field));
    }
  }
  CHECK(sample::only_issue(sample::with("\"0.26 mm\"", "\"-1 in\"")).allowed == "above 0 in, up to 393.701 in");
  CHECK(sample::only_issue(sample::with("from_layer = 10", "from_layer = 3000000000")).allowed ==
        "a whole number, 1 to 1000000");
  CHECK(sample::only_issue(sample::with("from_layer = 10", "from_layer = 10.5")).what == "must be a whole number");
  CHECK(sample::only_issue(sample::with("friction = 0.5", "friction = -0.1")).allowed == "0 to 10, or \"held\"");
}

TEST_CASE("a key that is required and missing is told at its table") {
  for (const Line& line : field_lines()) {
    const Issues issues = sample::issues_in(with_line(line.number, ""));
    INFO(line.text << "\n" << sample::all_text(issues));
    if (!line.field->required) {
      const bool told =
          std::any_of(issues.begin(), issues.end(), [](const Issue& i) { return i.severity == Severity::error; });
      CHECK(told == (line.path == "wind.length" || line.path == "traverse.step_angle"));
      continue;
    }
    REQUIRE(issues.size() == 1);
    CHECK(issues[0].key == line.path);
    CHECK(issues[0].what.find("is missing") == 0);
    CHECK(issues[0].line > 0);
    CHECK(issues[0].line < line.number);
  }
}

TEST_CASE("a misspelt key is told once, with the key that was meant") {
  for (const Line& line : field_lines()) {
    const std::string misspelt = "x" + line.text;
    const Issues issues = sample::issues_in(with_line(line.number, misspelt));
    INFO(line.text << "\n" << sample::all_text(issues));
    const auto found =
        std::find_if(issues.begin(), issues.end(), [&](const Issue& i) { return i.line == line.number; });
    REQUIRE(found != issues.end());
    CHECK(found->key == line.path.substr(0, line.path.rfind('.') + 1) + "x" + key_of(line));
    CHECK(found->what == "is not a key of a lay plan; did you mean " + key_of(line) + "?");
    CHECK(found->allowed.find(key_of(line)) != std::string::npos);
    for (const Issue& issue : issues) CHECK(issue.what.find("is missing; add it") == std::string::npos);
  }
}

TEST_CASE("keys and tables that no plan has") {
  CHECK(sample::only_issue(sample::with("mass = \"0.9 kg\"", "pitch = \"0.26 mm\"")).what ==
        "does not belong here; move it to [traverse]");
  CHECK(sample::only_issue(sample::with("mass = \"0.9 kg\"", "hue = \"red\"")).what ==
        "is not a key of a lay plan; remove it, or use one that [spool] has");
  const Issue table = sample::only_issue(sample::with("[limits]", "[spare]\nx = 1\n[limits]"));
  CHECK(table.key == "spare");
  CHECK(table.line == sample::line_of(sample::full, "[limits]"));
  CHECK(sample::only_issue(sample::with("title = ", "tilte = ")).what ==
        "is not a key of a lay plan; did you mean title?");
  CHECK(sample::only_issue(sample::with("[limits]", "[limit]")).what ==
        "is not a table of a lay plan; did you mean limits?");
  CHECK(sample::only_issue(sample::with("title = \"Every key\"", "title = 5")).what == "must be text in quotes");
  CHECK(sample::only_issue("format = \"lay-plan 1\"\nspool = 5\n" +
                           std::string(sample::full.substr(sample::full.find("[fiber]"))))
            .key == "spool");
}

TEST_CASE("the format line comes first and says a format that is known") {
  const Issue missing = sample::only_issue(sample::with("format = \"lay-plan 1\"\n", ""));
  CHECK(missing.key == "format");
  CHECK(missing.what.find("is missing") == 0);
  const Issue newer = sample::only_issue(sample::with("lay-plan 1", "lay-plan 2"));
  CHECK(newer.line == 2);
  CHECK(newer.value == "\"lay-plan 2\"");
  CHECK(newer.allowed == "\"lay-plan 1\"");
  CHECK(newer.what.find("does not know") != std::string::npos);
  for (const char* other : {"\"rope-plan 1\"", "1", "\"\"", "true"}) {
    CHECK(sample::only_issue(sample::with("\"lay-plan 1\"", other)).key == "format");
  }
}

TEST_CASE("quotes that were left out are told for all lines at once") {
  std::string text(sample::full);
  for (const char* value : {"150 mm", "0.26 mm", "stepped"})
    text = sample::with("\"" + std::string(value) + "\"", value, text);
  const Issues issues = sample::issues_in(text);
  INFO(sample::all_text(issues));
  REQUIRE(issues.size() == 3);
  CHECK(issues[0].key == "spool.barrel_diameter");
  CHECK(issues[0].line == 7);
  CHECK(issues[0].value == "150 mm");
  CHECK(issues[0].what == "quotes are missing; write barrel_diameter = \"150 mm\"");
  CHECK(issues[1].key == "traverse.motion");
}

TEST_CASE("a line that is no TOML is told by its number and in plain words") {
  const auto told = [](std::string_view piece, std::string_view replacement) {
    return sample::only_issue(sample::with(piece, replacement));
  };
  const Issue quote = told("\"236 mm\"", "\"236 mm");
  CHECK(quote.line == 8);
  CHECK(quote.what.find("a closing quote is missing") == 0);
  CHECK(told("\"236 mm\"", "\"\xff\"").what.find("not UTF-8") != std::string::npos);
  CHECK(told("flange_diameter", "barrel_diameter").what.find("given a second time") != std::string::npos);
  CHECK(told("[fiber]", "[fiber").what.find("name must stand in brackets") != std::string::npos);
  CHECK(told("flange_diameter =", "flange diameter =").what.find("key = value") != std::string::npos);
  CHECK(told("friction = 0.5", "friction =").what.find("the value is missing") == 0);
  CHECK(told("friction = 0.5", "friction = 1e400").what.find("the number cannot be read") == 0);
  CHECK(told("friction = 0.5", "friction = 0.5 0.6").key == "fiber.friction");
  CHECK(told("friction = 0.5", "friction").what.find("key = value") != std::string::npos);
  CHECK(told("friction = 0.5", "friction = [0.5").what.find("missing") != std::string::npos);
  CHECK(told("[fiber]", "[spool]").what.find("given a second time") != std::string::npos);
}
