// The text of a plan, edited value by value so that everything else stays as the person wrote it.
#pragma once

#include <string>
#include <string_view>

#include "plan/document.h"

namespace laywright {

// Paths are those of tables: "", "spool", "traverse.reversal", "wind.step[2]". Every edit leaves TOML that
// read_document accepts. Precondition of all: the text was accepted by it before.
class PlanText {
 public:
  explicit PlanText(std::string_view text);

  [[nodiscard]] const std::string& text() const { return text_; }
  // Valid until the next edit.
  [[nodiscard]] const Entry& document() const { return document_; }

  // Null if it is not there. Valid until the next edit.
  [[nodiscard]] const Entry* find(const std::string& table, std::string_view key) const;

  // Replaces the value, or adds the key to its table and, if need be, the table to the text.
  void set(const std::string& table, std::string_view key, const std::string& literal);

  // Takes the key's line out, or the key out of its inline table; nothing if it is not there.
  void remove(const std::string& table, std::string_view key);

  // The same, with a comment of one line in its place, but for a key of an inline table.
  void put_comment_for(const std::string& table, std::string_view key, const std::string& comment);

  // Takes a table with a header out, with all that stands below it up to its last key.
  void remove_table(const std::string& table);

  // Puts a new table [header] or [[header]] with these lines ("key = literal") behind the last key of a table; at
  // the end of the text if that is not there or has no header.
  void add_table(const std::string& behind, const std::string& header, const std::vector<std::string>& lines);

 private:
  void edit(std::size_t begin, std::size_t end, const std::string& replacement);
  void add_key(const Entry& table, std::string_view key, const std::string& literal);
  [[nodiscard]] std::size_t line_begin(std::size_t at) const;
  [[nodiscard]] std::size_t line_end(std::size_t at) const;   // before the line break
  [[nodiscard]] std::size_t next_line(std::size_t at) const;  // after it

  std::string text_;
  std::string line_break_;
  Entry document_;
};

// Null if there is none.
[[nodiscard]] const Entry* find_table(const Entry& document, std::string_view path);

// A text as TOML writes it: in quotes, over several lines if it has them, with escapes where needed.
[[nodiscard]] std::string toml_text(std::string_view text);

}  // namespace laywright
