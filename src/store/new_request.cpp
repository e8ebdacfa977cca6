#include "store/new_request.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "base/number.h"
#include "base/readable.h"
#include "base/typed_quantity.h"
#include "plan/document.h"
#include "plan/entry_issues.h"
#include "plan/plan_values.h"
#include "plan/take_over.h"
#include "plan/value_reader.h"

namespace laywright {
namespace {

// Barrel, flange and inside width.
constexpr const char* sizes_help = "give its sizes, like \"63 x 100 x 80 mm\"";

Issue issue_of(std::string_view what, const std::string& value, std::string text, std::string allowed = "") {
  Issue issue;
  issue.key = what;
  if (!value.empty()) issue.value = fmt::format("\"{}\"", readable(value));
  issue.what = std::move(text);
  issue.allowed = std::move(allowed);
  return issue;
}

// "63", "100" and "80 mm" of "63 x 100 x 80 mm".
std::vector<std::string> parts_of(std::string_view text) {
  constexpr std::string_view times = "\xc3\x97";
  std::vector<std::string> parts(1);
  while (!text.empty()) {
    const std::size_t sign = text.substr(0, times.size()) == times ? times.size() : text[0] == 'x' || text[0] == 'X';
    if (sign > 0) parts.emplace_back();
    if (sign == 0) parts.back() += text[0];
    text.remove_prefix(std::max<std::size_t>(sign, 1));
  }
  return parts;
}

class Maker {
 public:
  Maker(const NewRequest& request, const EntrySource& entries) : request_(request), entries_(entries) {}

  Result<NewDraft> make() {
    set_spool();
    set_fiber();
    if (!request_.machine.empty()) set_machine();
    set_length();
    set("friction", "fiber.friction", request_.friction);
    set("free_length", "traverse.free_length", request_.free_length);
    set("tension", "wind.tension", request_.tension);
    set("line_speed", "wind.line_speed", request_.line_speed);
    for (const auto& [path, text] : request_.set) set(path, path, text);
    assume("fiber.friction", usual_friction);
    assume("traverse.free_length", usual_free_length_mm);
    if (!issues_.empty()) return std::move(issues_);
    made_.draft = std::move(reading_.draft);
    made_.draft.title = request_.title.empty() ? title() : request_.title;
    return std::move(made_);
  }

 private:
  void set_spool() {
    if (request_.spool.empty())
      return fail(issue_of("spool", "", fmt::format("is missing; name one of a catalogue, or {}", sizes_help)));
    if (take(EntryKind::spool, request_.spool)) return;
    const std::vector<std::string> parts = parts_of(request_.spool);
    constexpr std::array paths{"spool.barrel_diameter", "spool.flange_diameter", "spool.inside_width"};
    if (parts.size() != paths.size()) return fail_as_name(EntryKind::spool, request_.spool, sizes_help);
    // A unit stands once, behind the last, or behind each.
    const std::string last = as_written(parts.back(), Dimension::length);
    const std::string unit = last.find(' ') == std::string::npos ? "" : last.substr(last.find(' '));
    for (std::size_t i = 0; i < paths.size(); ++i) {
      std::string size = as_written(parts[i], Dimension::length);
      if (size.find(' ') == std::string::npos) size += unit;
      set("spool", paths[i], size);
    }
  }

  void set_fiber() {
    constexpr const char* help = "give its diameter, like \"0.245 mm\"";
    if (request_.fiber.empty())
      return fail(issue_of("fiber", "", fmt::format("is missing; name one of a catalogue, or {}", help)));
    if (take(EntryKind::fiber, request_.fiber)) return;
    const bool is_size = request_.fiber.find_first_of("0123456789") == 0 || request_.fiber[0] == '.';
    if (!is_size) return fail_as_name(EntryKind::fiber, request_.fiber, help);
    set("fiber", "fiber.diameter", request_.fiber);
  }

  void set_machine() {
    if (!take(EntryKind::machine, request_.machine)) return fail_as_name(EntryKind::machine, request_.machine, "");
    for (const auto& [path, value] : entry_of(reading_.draft, EntryKind::machine)->values)
      made_.given.push_back(path);
  }

  void set_length() {
    if (request_.length.empty()) return fail(issue_of("length", "", "is missing; how much fiber, like \"3 km\""));
    set("length", "wind.length", request_.length);
  }

  [[nodiscard]] bool take(EntryKind kind, const std::string& name) {
    const std::set<std::string> unread = reading_.unread;
    if (!has_error(take_over(reading_, kind, name, 0, &entries_))) return true;
    reading_.unread = unread;
    return false;
  }

  void fail_as_name(EntryKind kind, const std::string& name, const char* or_else) {
    Issues found = entries_.find(kind, name).issues();
    for (Issue& issue : found) {
      if (!issue.file.empty()) {
        fail(std::move(issue));
        continue;
      }
      if (*or_else != '\0') issue.what += fmt::format("{} {}", issue.what.ends_with('?') ? " Or" : "; or", or_else);
      fail(issue_of(name_of(kind), name, std::move(issue.what), std::move(issue.allowed)));
    }
  }

  // `what` names it in issues.
  void set(std::string_view what, const std::string& path, const std::string& text) {
    if (text.empty()) return;
    const FieldInfo* field = field_at(reading_.draft, path);
    if (field == nullptr) return fail(issue_of(what, text, "is no key of a plan; keys are like traverse.pitch"));
    const bool quantity = field->kind == FieldKind::quantity;
    const ReadValue read = read_typed(*field, text);
    if (!read.number) return fail(issue_of(what, text, read.problem, read.allowed));
    const std::string written = quantity ? as_written(text, field->dimension) : text;
    if (!in_range(*field, *read.number))
      return fail(issue_of(what, text, out_of_range_words, allowed_text(*field, unit_written(*field, written))));
    set_value(reading_.draft, path, *read.number);
    reading_.draft.origins[path] = {0, written};
    made_.given.push_back(path);
  }

  void assume(const std::string& path, double value) {
    if (reading_.draft.origins.count(path) > 0) return;
    set_value(reading_.draft, path, value);
    made_.assumed.insert(path);
    made_.given.push_back(path);
  }

  [[nodiscard]] std::string title() const {
    return readable(
        fmt::format("{} on {}, {}", request_.fiber, request_.spool, as_written(request_.length, Dimension::length)),
        longest_title - 3);
  }

  void fail(Issue issue) { issues_.push_back(std::move(issue)); }

  static ReadValue read_typed(const FieldInfo& field, const std::string& text) {
    const bool quantity = field.kind == FieldKind::quantity;
    Entry entry;
    entry.kind = Entry::Kind::text;
    entry.text = as_written(text, quantity ? std::optional(field.dimension) : std::nullopt);
    const std::optional<double> number = quantity ? std::nullopt : read_number<double>(entry.text);
    if (number) {
      entry.kind = Entry::Kind::number;
      entry.number = *number;
    }
    return read_value(field, entry);
  }

  const NewRequest& request_;
  const EntrySource& entries_;
  DraftReading reading_;
  NewDraft made_;
  Issues issues_;
};

}  // namespace

Result<NewDraft> draft_of(const NewRequest& request, const EntrySource& entries) {
  return Maker(request, entries).make();
}

std::optional<Issue> wrong_with(const std::string& what, const std::string& answer, const EntrySource& entries) {
  // The rest is sound.
  NewRequest request;
  request.spool = "10 x 20 x 10 mm";
  request.fiber = "1 mm";
  request.length = "1 m";
  if (what == "spool") request.spool = answer;
  if (what == "fiber") request.fiber = answer;
  if (what == "machine") request.machine = answer;
  if (what == "length") request.length = answer;
  if (what == "friction") request.friction = answer;
  if (what == "free_length") request.free_length = answer;
  const Result<NewDraft> made = draft_of(request, entries);
  if (made.ok()) return std::nullopt;
  return made.issues().front();
}

}  // namespace laywright
