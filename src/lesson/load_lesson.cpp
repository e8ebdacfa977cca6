#include <algorithm>
#include <system_error>

#include <fmt/format.h>

#include "base/folder_paths.h"
#include "base/read_file.h"
#include "base/readable.h"
#include "lesson/claims.h"
#include "lesson/entry_reader.h"
#include "lesson/lesson.h"
#include "plan/fields.h"
#include "plan/plan_file.h"
#include "plan/plan_text.h"

namespace laywright {
namespace {

constexpr const char* lesson_format = "lesson 1";
const std::vector<std::string> sides = {"first", "second"};

class LessonReader {
 public:
  LessonReader(const std::filesystem::path& path, Issues& issues)
      : folder_(path.parent_path()), file_(path.string()), issues_(issues) {}

  Lesson read(const Entry& document) {
    Lesson lesson;
    lesson.file = file_;
    EntryReader top(document, "", file_, issues_);
    if (top.text("format") != lesson_format) {
      top.missing("format", fmt::format("must be \"{}\"", lesson_format));
      return lesson;
    }
    lesson.number = top.whole_if("number", 1, 999).value_or(0);
    lesson.title = top.text("title");
    if (character_count(lesson.title) > longest_title) {
      top.add(*document.child("title"), "is too long", fmt::format("up to {} characters", longest_title));
    }
    lesson.aim = top.text("aim");
    for (std::size_t k = 0; k < sides.size(); ++k) {
      if (const Entry* build = top.table_if(sides[k])) {
        lesson.builds[k] = read_build(*build, sides[k]);
      } else {
        top.missing(sides[k], "is missing: the table of a build, with name and plan");
      }
    }
    if (const Entry* look = top.table_if("look")) lesson.look = read_look(*look);
    if (const Entry* steps = top.list_if("step")) {
      for (const Entry& step : steps->children) lesson.steps.push_back(read_step(step, lesson.steps.size()));
    }
    if (lesson.steps.empty()) top.missing("step", "is missing: a lesson has one [[step]] or more");
    top.refuse_others();
    return lesson;
  }

 private:
  LessonBuild read_build(const Entry& table, const std::string& path) {
    EntryReader reader(table, path, file_, issues_);
    LessonBuild build;
    build.name = reader.text("name");
    const std::string plan = reader.text("plan");
    const Entry* set = reader.table_if("set");
    reader.refuse_others();
    if (plan.empty()) return build;
    const std::filesystem::path plan_file = folder_ / plan;
    Result<std::string> text = read_plan_text(plan_file);
    if (!text) return take_issues(text.issues()), build;
    build.plan_text = set == nullptr ? std::move(text).value() : changed(text.value(), *set, path);
    const Result<Plan> checked = plan_from_text(build.plan_text, plan_file.string());
    if (!checked) take_issues(checked.issues());
    return build;
  }

  std::string changed(const std::string& original, const Entry& set, const std::string& path) {
    if (!read_document(original, file_)) return original;  // plan_from_text tells why
    EntryReader reader(set, path + ".set", file_, issues_);
    PlanText text(original);
    for (const Entry& entry : set.children) {
      const std::size_t dot = entry.key.rfind('.');
      const bool literal = entry.kind == Entry::Kind::text;
      const bool number = entry.kind == Entry::Kind::number || entry.kind == Entry::Kind::whole;
      if (!literal && !number) {
        reader.add(entry, "must be a value as a plan has it: a number, or a text in quotes");
        continue;
      }
      const std::string table = dot == std::string::npos ? "" : entry.key.substr(0, dot);
      const std::string key = dot == std::string::npos ? entry.key : entry.key.substr(dot + 1);
      text.set(table, key, literal ? toml_text(entry.text) : entry.text);
    }
    return text.text();
  }

  void take_issues(const Issues& issues) { issues_.insert(issues_.end(), issues.begin(), issues.end()); }

  void know_figures(EntryReader& reader, const char* key, const std::string& text) {
    const std::string unknown = unknown_figure(text);
    if (!unknown.empty()) {
      reader.add(*reader.table().child(key), fmt::format("names a figure that is not known: {{{}}}", unknown),
                 "{first.FIGURE} or {second.FIGURE}");
    }
  }

  std::string figure(EntryReader& reader, std::string_view key) {
    std::string name = reader.text(key);
    if (!name.empty() && !figure_kind(name)) reader.add(*reader.table().child(key), "is no figure that is known");
    return name;
  }

  Which which(EntryReader& reader, std::string_view key) {
    if (reader.table().child(key) == nullptr) reader.missing(key, "is missing: first or second");
    return static_cast<Which>(reader.word_if(key, sides).value_or(0));
  }

  // A value of a figure: a quantity where it has a unit, otherwise a number.
  std::optional<double> value(EntryReader& reader, std::string_view key, const std::string& figure_name) {
    const std::optional<FigureKind> kind = figure_kind(figure_name);
    if (reader.table().child(key) == nullptr || !kind) {
      (void)reader.number_if(key, -1e12, 1e12);  // asked for
      return std::nullopt;
    }
    if (!kind->dimension) return reader.number_if(key, -1e12, 1e12);
    const std::optional<std::string> text = reader.text_if(key);
    if (!text) return std::nullopt;
    const ParsedQuantity parsed = parse_quantity(*text, *kind->dimension);
    if (parsed.quantity) return parsed.quantity->value;
    reader.add(*reader.table().child(key), parsed.problem);
    return std::nullopt;
  }

  Claim read_claim(const Entry& table, const std::string& path) {
    EntryReader reader(table, path, file_, issues_);
    Claim claim;
    claim.line = table.line;
    claim.of = which(reader, "of");
    claim.figure = figure(reader, "figure");
    const auto is = reader.word_if("is", {"above", "below", "about"});
    if (!is && table.child("is") == nullptr) reader.missing("is", "is missing: above, below or about");
    claim.is = static_cast<Relation>(is.value_or(0));
    const std::optional<double> given = value(reader, "value", claim.figure);
    if (table.child("than") != nullptr) claim.than = which(reader, "than");
    if (claim.than.has_value() == (table.child("value") != nullptr)) {
      reader.missing("value", "must be there, or than, but not both");
    }
    claim.value = given.value_or(0.0);
    claim.figure_there = table.child("figure_there") != nullptr ? figure(reader, "figure_there") : claim.figure;
    claim.times = reader.number_if("times", 0.0, 1e6).value_or(1.0);
    claim.within = value(reader, "within", claim.figure).value_or(0.0);
    if (claim.is == Relation::about && table.child("within") == nullptr) {
      reader.missing("within", "is missing: how far off still counts as about");
    }
    reader.refuse_others();
    return claim;
  }

  std::optional<Question> read_question(EntryReader& step) {
    const std::optional<std::string> text = step.text_if("ask");
    Question question;
    question.answers = step.texts("answers");
    const std::optional<int> right = step.whole_if("right", 1, 9);
    question.because = step.text_if("because").value_or("");
    if (!text) return std::nullopt;
    question.text = *text;
    const std::size_t count = question.answers.size();
    if (count < 2) step.missing("answers", "is missing: two answers or more");
    if (!right || static_cast<std::size_t>(*right) > count) {
      step.missing("right", "is missing, or there are fewer answers");
      return question;
    }
    question.right = static_cast<std::size_t>(*right) - 1;
    if (question.because.empty()) step.missing("because", "is missing: why the answer is right");
    know_figures(step, "because", question.because);
    return question;
  }

  std::optional<FindingKind> finding_kind(EntryReader& reader, std::string_view key) {
    std::vector<std::string> kinds;
    for (int k = 0; k <= static_cast<int>(FindingKind::rim_overrun); ++k) {
      kinds.emplace_back(name_of(static_cast<FindingKind>(k)));
    }
    const auto kind = reader.word_if(key, kinds);
    return kind ? std::optional(static_cast<FindingKind>(*kind)) : std::nullopt;
  }

  std::optional<Side> side_of(EntryReader& reader) {
    const auto side = reader.word_if("side", {"left", "right"});
    if (!side) return std::nullopt;
    return *side == 0 ? Side::left : Side::right;
  }

  // The first of a kind; none where the key is not there.
  std::optional<Sought> sought(EntryReader& reader, std::string_view key) {
    if (reader.table().child(key) == nullptr) return std::nullopt;
    Sought sought;
    sought.in = which(reader, "in");
    sought.kind = finding_kind(reader, key).value_or(sought.kind);
    return sought;
  }

  LookAt read_look(const Entry& table) {
    EntryReader reader(table, "look", file_, issues_);
    LookAt look;
    look.finding = sought(reader, "finding");
    look.side = side_of(reader);
    if (look.finding) look.finding->side = look.side;
    if (!look.finding && !look.side) reader.missing("side", "is missing: a side, or a finding to look at");
    reader.refuse_others();
    return look;
  }

  Play read_play(const Entry& table, const std::string& path) {
    EntryReader reader(table, path, file_, issues_);
    Play play;
    play.until = sought(reader, "until");
    if (play.until) play.until->side = side_of(reader);
    if (!play.until) play.to_layer = reader.whole_if("to_layer", 1, 100000).value_or(play.to_layer);
    play.seconds = reader.number_if("seconds", 1.0, 60.0).value_or(play.seconds);
    reader.refuse_others();
    return play;
  }

  PointTo read_point(const Entry& table, const std::string& path) {
    EntryReader reader(table, path, file_, issues_);
    PointTo point;
    point.in = which(reader, "in");
    point.finding = finding_kind(reader, "finding");
    point.side = side_of(reader);
    point.layer = reader.whole_if("layer", 1, 100000);
    if (!point.finding && !point.layer) reader.missing("finding", "is missing: a finding or a layer to point at");
    reader.refuse_others();
    return point;
  }

  Attempt read_attempt(EntryReader& step, const Entry& table, const std::string& path) {
    EntryReader reader(table, path, file_, issues_);
    Attempt attempt;
    attempt.in = which(reader, "in");
    attempt.key = reader.text("key");
    const auto& fields = plan_fields();
    const bool known = std::any_of(fields.begin(), fields.end(),
                                   [&](const Field<PlanDraft>& field) { return field.path() == attempt.key; });
    if (!known && !attempt.key.empty()) reader.add(*table.child("key"), "is no key of a plan");
    attempt.figure = figure(reader, "figure");
    reader.refuse_others();
    attempt.solution = step.text("solution");
    if (const Entry* goal = step.table_if("goal")) {
      attempt.goal = read_claim(*goal, step.path("goal"));
    } else {
      step.missing("goal", "is missing: what is to be reached by trying");
    }
    return attempt;
  }

  LessonStep read_step(const Entry& table, std::size_t index) {
    const std::string path = fmt::format("step[{}]", index + 1);
    EntryReader reader(table, path, file_, issues_);
    LessonStep step;
    step.say = reader.text_if("say").value_or("");
    know_figures(reader, "say", step.say);
    step.question = read_question(reader);
    if (const Entry* play = reader.table_if("play")) step.play = read_play(*play, path + ".play");
    if (const Entry* point = reader.table_if("point")) step.point = read_point(*point, path + ".point");
    step.colours = reader.text_if("colours");
    step.cut = reader.truth("cut");
    step.whole = reader.truth("whole");
    step.ruler = reader.truth("ruler");
    step.figures = reader.texts("figures");
    for (const std::string& name : step.figures) {
      if (!figure_kind(name)) reader.add(*table.child("figures"), fmt::format("has no figure {}", name));
    }
    if (const Entry* attempt = reader.table_if("try")) step.attempt = read_attempt(reader, *attempt, path + ".try");
    if (const Entry* claims = reader.list_if("claims")) {
      for (const Entry& claim : claims->children) {
        step.claims.push_back(read_claim(claim, fmt::format("{}.claims[{}]", path, step.claims.size() + 1)));
      }
    }
    reader.refuse_others();
    if (step.say.empty() && !step.question && !step.attempt) {
      reader.missing("say", "is missing: a step says, asks or lets try something");
    }
    return step;
  }

  std::filesystem::path folder_;
  std::string file_;
  Issues& issues_;
};

}  // namespace

bool Lesson::draws_off() const {
  const auto of_payoff = [](const std::string& figure) { return figure.rfind(drawn_off_start, 0) == 0; };
  return std::any_of(steps.begin(), steps.end(), [&](const LessonStep& step) {
    return std::any_of(step.figures.begin(), step.figures.end(), of_payoff) ||
           std::any_of(step.claims.begin(), step.claims.end(),
                       [&](const Claim& claim) { return of_payoff(claim.figure); }) ||
           (step.attempt && of_payoff(step.attempt->figure));
  });
}

Result<Lesson> load_lesson(const std::filesystem::path& path) {
  constexpr std::string_view a_lesson = "a lesson";
  const Result<std::string> text = read_file(path, a_lesson, largest_plan_bytes);
  if (!text) return text.issues();
  const Result<Entry> document = read_document(text.value(), path.string(), a_lesson);
  if (!document) return document.issues();
  Issues issues;
  Lesson lesson = LessonReader(path, issues).read(document.value());
  if (has_error(issues)) return issues;
  return {std::move(lesson), std::move(issues)};
}

Result<std::vector<Lesson>> load_lessons(const std::filesystem::path& folder) {
  std::vector<Lesson> lessons;
  Issues warnings;
  std::error_code error;
  for (const std::filesystem::path& path : paths_in(folder, error)) {
    if (path.string().find(".lesson.toml") == std::string::npos) continue;
    Result<Lesson> lesson = load_lesson(path);
    if (lesson) {
      lessons.push_back(std::move(lesson).value());
      continue;
    }
    for (Issue issue : lesson.issues()) {
      issue.severity = Severity::warning;
      warnings.push_back(std::move(issue));
    }
  }
  if (error && error != std::errc::no_such_file_or_directory) {
    Issue issue;
    issue.severity = Severity::warning;
    issue.file = folder.string();
    issue.what = fmt::format("cannot be read ({}); lessons in it may be missing", error.message());
    warnings.push_back(std::move(issue));
  }
  std::sort(lessons.begin(), lessons.end(), [](const Lesson& a, const Lesson& b) { return a.number < b.number; });
  return {std::move(lessons), std::move(warnings)};
}

}  // namespace laywright
