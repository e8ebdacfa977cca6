// The catalogues of a shop: all `*.toml` of some folders.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "store/catalogue.h"

namespace laywright {

struct CatalogueFolder {
  std::filesystem::path path;
  bool asked_for = false;  // a person named it: that it is not there is an issue
};

// What stands in folders: of a name that stands in several the entry of the first. Two files of one folder that have the same
// name are an issue, and the first of them, by the files' names, counts.
struct Shelf {
  std::vector<CatalogueEntry> entries;
  Issues issues;

  // Of that kind, as they stand on the shelf.
  [[nodiscard]] std::vector<const CatalogueEntry*> of(EntryKind kind) const&;
  std::vector<const CatalogueEntry*> of(EntryKind kind) && = delete;
};

// Reads the files at each question, so that what a person has changed counts at once.
class Catalogues : public EntrySource {
 public:
  // Later folders count for less.
  explicit Catalogues(std::vector<CatalogueFolder> folders) : folders_(std::move(folders)) {}

  // Before all others.
  void put_first(CatalogueFolder folder) { folders_.insert(folders_.begin(), std::move(folder)); }

  [[nodiscard]] Shelf all() const;

  // Errors: there is none of that name; says which is nearest, or where entries would be. If files could not be read, why, too: it
  // may stand there.
  [[nodiscard]] Result<NamedEntry> find(EntryKind kind, const std::string& name) const override;

 private:
  std::vector<CatalogueFolder> folders_;
};

}  // namespace laywright
