#include "app/catalogue_folders.h"

#include <string>
#include <vector>

#include "app/shipped.h"
#include "session/folders.h"

namespace laywright {

std::shared_ptr<const Catalogues> add_catalogues(CommandLine program) {
  std::vector<CatalogueFolder> folders;
  for (const std::filesystem::path& folder : {Folders::of_person().config, shipped_folder()}) {
    if (!folder.empty()) folders.push_back({folder / "catalogue"});
  }
  auto catalogues = std::make_shared<Catalogues>(std::move(folders));
  program
      .add_option_function(
          "--catalogue",
          [catalogues](const std::string& folder) {
            catalogues->put_first({folder, true});
          },
          "A folder of catalogues, *.toml, before one's own and those that come with the program")
      .type_name("DIR")
      .envname("LAYWRIGHT_CATALOGUE");
  return catalogues;
}

}  // namespace laywright
