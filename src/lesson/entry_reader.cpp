#include "lesson/entry_reader.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/text_distance.h"
#include "plan/entry_issues.h"

namespace laywright {

std::string EntryReader::path(std::string_view key) const {
  return path_.empty() ? std::string(key) : fmt::format("{}.{}", path_, key);
}

const Entry* EntryReader::find(std::string_view key) {
  asked_.insert(std::string(key));
  return table_.child(key);
}

void EntryReader::add(const Entry& at, std::string what, std::string allowed) {
  issues_.push_back(issue_at(file_, at, path(at.key), std::move(what), std::move(allowed)));
}

void EntryReader::missing(std::string_view key, std::string what) {
  issues_.push_back(issue_at(file_, table_.line, path(key), "", std::move(what)));
}

std::optional<std::string> EntryReader::text_if(std::string_view key) {
  const Entry* entry = find(key);
  if (entry == nullptr) return std::nullopt;
  if (entry->kind == Entry::Kind::text) return entry->text;
  add(*entry, "must be a text in quotes");
  return std::nullopt;
}

std::string EntryReader::text(std::string_view key) {
  const bool there = table_.child(key) != nullptr;
  if (!there) missing(key, "is missing: a text in quotes");
  return text_if(key).value_or("");
}

std::optional<double> EntryReader::number_if(std::string_view key, double low, double high) {
  const Entry* entry = find(key);
  if (entry == nullptr) return std::nullopt;
  const bool number = entry->kind == Entry::Kind::number || entry->kind == Entry::Kind::whole;
  if (number && entry->number >= low && entry->number <= high) return entry->number;
  add(*entry, "is no number in its range", fmt::format("{} to {}", low, high));
  return std::nullopt;
}

std::optional<int> EntryReader::whole_if(std::string_view key, int low, int high) {
  const Entry* entry = find(key);
  if (entry == nullptr) return std::nullopt;
  if (entry->kind == Entry::Kind::whole && entry->number >= low && entry->number <= high) {
    return static_cast<int>(entry->number);
  }
  add(*entry, "is no whole number in its range", fmt::format("{} to {}", low, high));
  return std::nullopt;
}

bool EntryReader::truth(std::string_view key) {
  const Entry* entry = find(key);
  if (entry == nullptr) return false;
  if (entry->kind != Entry::Kind::truth) add(*entry, "must be true or false");
  return entry->text == "true";
}

std::vector<std::string> EntryReader::texts(std::string_view key) {
  std::vector<std::string> found;
  const Entry* list = list_if(key);
  if (list == nullptr) return found;
  for (const Entry& item : list->children) {
    if (item.kind == Entry::Kind::text) {
      found.push_back(item.text);
    } else {
      add(*list, "must be a list of texts in quotes");
    }
  }
  return found;
}

std::optional<std::size_t> EntryReader::word_if(std::string_view key, const std::vector<std::string>& words) {
  const Entry* entry = find(key);
  if (entry == nullptr) return std::nullopt;
  const auto found = std::find(words.begin(), words.end(), entry->text);
  if (entry->kind == Entry::Kind::text && found != words.end())
    return static_cast<std::size_t>(found - words.begin());
  add(*entry, "is none of the words that it may be", fmt::format("{}", fmt::join(words, ", ")));
  return std::nullopt;
}

const Entry* EntryReader::table_if(std::string_view key) {
  const Entry* entry = find(key);
  if (entry == nullptr || entry->kind == Entry::Kind::table) return entry;
  add(*entry, "must be a table in braces");
  return nullptr;
}

const Entry* EntryReader::list_if(std::string_view key) {
  const Entry* entry = find(key);
  if (entry == nullptr || entry->kind == Entry::Kind::list) return entry;
  add(*entry, "must be a list in brackets");
  return nullptr;
}

void EntryReader::refuse_others() {
  const std::vector<std::string> known(asked_.begin(), asked_.end());
  for (const Entry& entry : table_.children) {
    if (asked_.count(entry.key) > 0) continue;
    const std::string near = nearest_word(entry.key, known);
    add(entry, near.empty() ? "is not known here" : fmt::format("is not known here; did you mean {}?", near));
  }
}

}  // namespace laywright
