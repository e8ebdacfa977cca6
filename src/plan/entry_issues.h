// What is wrong with the entries of a TOML file, told one way for plans, catalogues, orders, lessons and settings: which file,
// line, key and value, what is wrong and what would do.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/issue.h"
#include "plan/document.h"
#include "plan/fields.h"

namespace laywright {

// Line 0: of the whole file. An error; who only warns says so in it.
[[nodiscard]] Issue issue_at(const std::string& file, int line, std::string_view key, std::string value,
                             std::string what, std::string allowed = "");
// Of an entry, with its value as it stands there.
[[nodiscard]] Issue issue_at(const std::string& file, const Entry& at, std::string_view key, std::string what,
                             std::string allowed = "");

inline constexpr const char* out_of_range_words = "is out of range";

// What kind of file it is, by its first key.
struct FileFormat {
  std::string_view line;  // "lay-plan 1"
  std::string_view noun;  // "plan": "begin the plan with ..."
  std::string_view what;  // "a lay plan"
};

// The notebook of who reads a file. Both outlive it.
class EntryIssues {
 public:
  EntryIssues(const std::string& file, Issues& issues) : file_(file), issues_(issues) {}

  void add(const Entry& at, std::string_view key, std::string what, std::string allowed = "");
  void add(int line, std::string_view key, std::string value, std::string what, std::string allowed = "");

  // The rest tell of what is not so.
  bool has_format(const Entry& document, const FileFormat& format);
  bool is_table(const Entry& entry, std::string_view path);
  bool is_list_of_tables(const Entry& entry, std::string_view path);
  // In the field's range.
  std::optional<double> number(const FieldInfo& field, const Entry& entry, std::string_view key);

  [[nodiscard]] std::size_t count() const { return issues_.size(); }

 private:
  const std::string& file_;
  Issues& issues_;
};

}  // namespace laywright
