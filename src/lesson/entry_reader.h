// Reads the keys of one table of a lesson's file; what is wrong becomes an issue with its line.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "base/issue.h"
#include "plan/document.h"

namespace laywright {

class EntryReader {
 public:
  EntryReader(const Entry& table, std::string path, const std::string& file, Issues& issues)
      : table_(table), path_(std::move(path)), file_(file), issues_(issues) {}

  // Empty, with an issue, where the key is missing or no text.
  [[nodiscard]] std::string text(std::string_view key);
  [[nodiscard]] std::optional<std::string> text_if(std::string_view key);
  [[nodiscard]] std::optional<double> number_if(std::string_view key, double low, double high);
  [[nodiscard]] std::optional<int> whole_if(std::string_view key, int low, int high);
  [[nodiscard]] bool truth(std::string_view key);  // false where it is missing
  [[nodiscard]] std::vector<std::string> texts(std::string_view key);
  // One of the words: its index.
  [[nodiscard]] std::optional<std::size_t> word_if(std::string_view key, const std::vector<std::string>& words);
  // Null where it is missing, with an issue where it is something else.
  [[nodiscard]] const Entry* table_if(std::string_view key);
  [[nodiscard]] const Entry* list_if(std::string_view key);

  // Every key that none of the above asked for is an issue.
  void refuse_others();

  void add(const Entry& at, std::string what, std::string allowed = "");
  void missing(std::string_view key, std::string what);
  [[nodiscard]] const Entry& table() const { return table_; }
  [[nodiscard]] std::string path(std::string_view key) const;

 private:
  [[nodiscard]] const Entry* find(std::string_view key);

  const Entry& table_;
  std::string path_;
  const std::string& file_;
  Issues& issues_;
  std::set<std::string, std::less<>> asked_;
};

}  // namespace laywright
