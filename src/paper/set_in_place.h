// How a set of files gets from the hidden folder where it was made to its places.
//
// That folder holds `new`, the files; `old`, for those that stand in their places; and `set`, which names the files in
// their order as soon as all of them are complete. Files cannot take the places of others all at once. So the first one
// is the seal of the set: it is the first to go and the last to come, and between that only files of one set are there.
// Whoever finds a complete set that nobody works with puts the rest in place.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/descriptor.h"
#include "base/issue.h"

namespace laywright {

// A hidden folder for a set, and its lock.
struct Staging {
  std::filesystem::path path;
  Descriptor lock;

  [[nodiscard]] std::filesystem::path file(const std::string& name) const { return path / "new" / name; }
};

// Makes one in the folder. Without a path, with errno, where that is not possible.
[[nodiscard]] Staging make_staging(const std::filesystem::path& folder);

// Removes it with all that is in it, so that nobody takes a part for a complete set.
void remove_staging(const std::filesystem::path& staging);

// Finishes what killed programs left in the folder: complete sets are put in place, all else is removed.
void clear_leftovers(const std::filesystem::path& folder);

struct Placed {
  std::string name;    // of the file at which it failed; empty: all are in place
  std::string why;     // then
  bool undone = true;  // then: all is as before. Otherwise the staging must stay, for the next one to finish it
};

// Marks the set as complete and puts it in place; no other program does so in this folder meanwhile.
[[nodiscard]] Placed put_in_place(const std::filesystem::path& folder, const std::filesystem::path& staging,
                                  const std::vector<std::string>& names);

}  // namespace laywright
