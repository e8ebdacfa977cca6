#include "store/catalogues.h"

#include <algorithm>
#include <system_error>
#include <utility>

#include <fmt/format.h>

#include "base/folder_paths.h"
#include "base/read_file.h"
#include "base/readable.h"
#include "base/spelling.h"
#include "base/text_distance.h"
#include "plan/document.h"
#include "plan/entry_issues.h"

namespace laywright {
namespace {

const CatalogueEntry* find_in(const std::vector<CatalogueEntry>& entries, EntryKind kind, const std::string& name) {
  const auto found = std::find_if(entries.begin(), entries.end(), [&](const CatalogueEntry& entry) {
    return entry.named.kind == kind && entry.named.name == name;
  });
  return found == entries.end() ? nullptr : &*found;
}

void add_file(const std::filesystem::path& file, Catalogue& folder) {
  const Result<std::string> text = read_file(file, "a catalogue", largest_plan_bytes);
  if (!text) {
    folder.issues.insert(folder.issues.end(), text.issues().begin(), text.issues().end());
    return;
  }
  Catalogue read = read_catalogue(text.value(), file.string());
  folder.issues.insert(folder.issues.end(), read.issues.begin(), read.issues.end());
  for (CatalogueEntry& entry : read.entries) {
    const NamedEntry& named = entry.named;
    if (const CatalogueEntry* twin = find_in(folder.entries, named.kind, named.name)) {
      folder.issues.push_back(
          issue_at(file.string(), named.line, fmt::format("{}.name", name_of(named.kind)),
                   fmt::format("\"{}\"", readable(named.name)),
                   fmt::format("is the name of {} too; give one of them another name", place_of(twin->named))));
      continue;
    }
    folder.entries.push_back(std::move(entry));
  }
}

Catalogue read_folder(const CatalogueFolder& folder) {
  Catalogue read;
  std::error_code error;
  for (const std::filesystem::path& file : paths_in(folder.path, error)) {
    if (ending_of(file) == ".toml" && file.filename().string().front() != '.') add_file(file, read);
  }
  const bool absent = error == std::errc::no_such_file_or_directory;
  if (error && (!absent || folder.asked_for)) {
    read.issues.push_back(issue_at(folder.path.string(), 0, "", "",
                                   absent ? std::string("there is no such folder of catalogues")
                                          : fmt::format("cannot be read ({})", error.message())));
  }
  return read;
}

}  // namespace

std::vector<const CatalogueEntry*> Shelf::of(EntryKind kind) const& {
  std::vector<const CatalogueEntry*> found;
  for (const CatalogueEntry& entry : entries) {
    if (entry.named.kind == kind) found.push_back(&entry);
  }
  return found;
}

Shelf Catalogues::all() const {
  Shelf shelf;
  for (const CatalogueFolder& folder : folders_) {
    Catalogue read = read_folder(folder);
    shelf.issues.insert(shelf.issues.end(), read.issues.begin(), read.issues.end());
    for (CatalogueEntry& entry : read.entries) {
      if (find_in(shelf.entries, entry.named.kind, entry.named.name) == nullptr)
        shelf.entries.push_back(std::move(entry));
    }
  }
  return shelf;
}

Result<NamedEntry> Catalogues::find(EntryKind kind, const std::string& name) const {
  const Shelf shelf = all();
  if (const CatalogueEntry* entry = find_in(shelf.entries, kind, name)) return entry->named;
  std::vector<std::string> known;
  for (const CatalogueEntry* entry : shelf.of(kind)) known.push_back(entry->named.name);
  Issue issue;
  issue.what = fmt::format("is in no catalogue of {}s", name_of(kind));
  if (const std::string nearest = nearest_word(name, known); !nearest.empty()) {
    issue.what += fmt::format("; did you mean \"{}\"?", nearest);
  } else {
    issue.what += "; laywright new --list tells which there are";
  }
  Issues issues{std::move(issue)};
  issues.insert(issues.end(), shelf.issues.begin(), shelf.issues.end());
  return issues;
}

}  // namespace laywright
