#include "figures/new_plan.h"

#include <array>
#include <filesystem>
#include <string_view>
#include <utility>

#include <fmt/format.h>

#include "base/readable.h"
#include "figures/figures.h"
#include "plan/fields.h"
#include "plan/plan_text.h"
#include "plan/plan_values.h"
#include "verdict/verdict_words.h"

namespace laywright {
namespace {

constexpr std::size_t line_width = 110, comment_column = 32;

// What a key is, for who reads the plan for the first time.
std::string_view words_for_key(std::string_view path) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 14> words{
      {{"spool.inside_width", "between the flange faces, at the barrel"},
       {"fiber.diameter", "overall"},
       {"fiber.friction", "of the fiber on itself"},
       {"fiber.core_diameter", "the part that carries the load"},
       {"traverse.pitch", "guide travel per turn of the spool"},
       {"traverse.left_stop", "where the guide turns back, measured inward from the left flange face"},
       {"traverse.right_stop", "and from the right one"},
       {"traverse.start", "the flange at which the wind begins"},
       {"traverse.free_length", "of fiber between the guide and the spool"},
       {"traverse.reversal.kind", "instant, dwell or ramp"},
       {"traverse.reversal.turns", "of the spool, at each reversal"},
       {"wind.length", "of fiber"},
       {"wind.tension", "of the fiber, while it is wound"},
       {"wind.line_speed", "of the fiber"}}};
  for (const auto& [key, text] : words) {
    if (key == path) return text;
  }
  return {};
}

std::string as_comment(const std::string& text) {
  std::string lines = wrapped(text, line_width, 0), comment;
  for (std::size_t end = lines.find('\n'); end != std::string::npos; end = lines.find('\n')) {
    comment += fmt::format("# {}\n", lines.substr(0, end));
    lines.erase(0, end + 1);
  }
  return comment;
}

std::string with_comment(const std::string& line, const std::string& comment) {
  if (comment.empty()) return line + '\n';
  return fmt::format("{:<{}}# {}\n", line.size() < comment_column ? line : line + "  ", comment_column, comment);
}

class NewPlan {
 public:
  NewPlan(const PlanDraft& draft, const NewPlanNotes& notes) : draft_(draft), notes_(notes) {
    defaults_.takeup.emplace();
  }

  [[nodiscard]] std::string text() const {
    std::string text =
        as_comment(fmt::format("The settings of the traverse were laid and judged before they were proposed. {}",
                               verdict_line(notes_.verdict)));
    text += fmt::format("\nformat = \"{}\"\ntitle = {}\n", format_line, toml_text(draft_.title));
    if (!draft_.notes.empty()) text += fmt::format("notes = {}\n", toml_text(draft_.notes));
    for (const char* table : {"spool", "fiber", "machine", "traverse", "traverse.reversal", "wind"})
      text += table_text(table);
    for (std::size_t i = 0; i < draft_.wind.steps.size(); ++i) text += step_text(i);
    for (const char* table : {"takeup", "limits"}) text += table_text(table);
    return text;
  }

 private:
  // What the entry says in short: "barrel_diameter 63 mm, ..., of spools.toml".
  static std::string said_by(const NamedEntry& entry) {
    std::string text;
    for (const auto& field : plan_fields()) {
      const auto given = entry.values.find(field.path());
      if (given == entry.values.end()) continue;
      text += fmt::format("{}{} {}", text.empty() ? "" : ", ", field.key, given->second.written);
    }
    constexpr std::size_t most = 150;
    const std::string file = std::filesystem::path(entry.file).filename().string();
    return readable(fmt::format("of {}: {}", file, text), most);
  }

  [[nodiscard]] std::string table_text(const std::string& table) const {
    std::string lines;
    for (const NamedEntry& entry : draft_.entries) {
      if (name_of(entry.kind) != table) continue;
      lines += as_comment(said_by(entry));
      lines += fmt::format("name = {}\n", toml_text(entry.name));
    }
    for (const auto& field : plan_fields()) {
      const std::optional<double> value = field.get(draft_);
      if (field.table != table || !value || !told(field, *value)) continue;
      lines +=
          with_comment(fmt::format("{} = {}", field.key, literal(field, *value, field.path())), comment_of(field));
    }
    return lines.empty() ? "" : fmt::format("\n[{}]\n{}", table, lines);
  }

  // What an entry says already need not be said again; nor a default.
  [[nodiscard]] bool told(const Field<PlanDraft>& field, double value) const {
    if (const EntryValue* given = entry_value(draft_, field.path())) return given->value != value;
    if (field.kind == FieldKind::choice) {
      constexpr std::string_view always[] = {"traverse.motion", "traverse.start", "traverse.reversal.kind"};
      for (const std::string_view path : always) {
        if (field.path() == path) return true;
      }
    }
    return field.required || value != field.get(defaults_);
  }

  [[nodiscard]] std::string comment_of(const FieldInfo& field) const {
    std::string words(words_for_key(field.path()));
    if (notes_.assumed.count(field.path()) > 0)
      words += fmt::format("{}a guess: measure it", words.empty() ? "" : "; ");
    return words;
  }

  [[nodiscard]] std::string literal(const FieldInfo& field, double value, const std::string& path) const {
    const auto origin = draft_.origins.find(path);
    const std::string written = origin == draft_.origins.end() ? "" : origin->second.written;
    const std::string text = write_value(field, value, unit_written(field, written));
    return in_quotes(field, text) ? toml_text(text) : text;
  }

  [[nodiscard]] std::string step_text(std::size_t index) const {
    std::string lines = "\n[[wind.step]]\n";
    for (const auto& field : step_fields()) {
      if (const std::optional<double> value = field.get(draft_.wind.steps[index]))
        lines += fmt::format("{} = {}\n", field.key,
                             literal(field, *value, fmt::format("{}.{}", step_path(index), field.key)));
    }
    return lines;
  }

  const PlanDraft& draft_;
  const NewPlanNotes& notes_;
  PlanDraft defaults_;
};

}  // namespace

std::vector<std::pair<std::string, std::string>> proposed_settings(const PlanDraft& draft) {
  std::vector<std::pair<std::string, std::string>> settings;
  const bool instant = draft.traverse.reversal.kind == ReversalKind::instant;
  for (const std::string path : {"traverse.pitch", "traverse.left_stop", "traverse.right_stop",
                                 "traverse.reversal.kind", "traverse.reversal.turns"}) {
    if (instant && path == "traverse.reversal.turns") continue;
    settings.emplace_back(path, write_value(*field_at(draft, path), value_at(draft, path).value_or(0.0)));
  }
  return settings;
}

std::string new_plan_text(const PlanDraft& draft, const NewPlanNotes& notes) { return NewPlan(draft, notes).text(); }

}  // namespace laywright
