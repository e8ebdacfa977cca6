#include <filesystem>
#include <fstream>
#include <string>

#include <catch2/catch.hpp>

#include "base/issue.h"
#include "store/catalogues.h"
#include "temporary_folder.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

namespace fs = std::filesystem;

std::string spool(const std::string& name, const std::string& barrel) {
  return "[[spool]]\nname = \"" + name + "\"\nsource = \"measured\"\nbarrel_diameter = \"" + barrel + "\"\n";
}

class Shop {
 public:
  void write(const std::string& file, const std::string& entries) const {
    const fs::path path = folder_.path() / file;
    fs::create_directories(path.parent_path());
    std::ofstream(path) << "format = \"lay-catalogue 1\"\n" << entries;
  }
  [[nodiscard]] fs::path at(const std::string& name) const { return folder_.path() / name; }

 private:
  testing::TemporaryFolder folder_;
};

std::string told(const Issues& issues) {
  std::string all;
  for (const Issue& issue : issues) all += to_text(issue) + '\n';
  return all;
}

double barrel_of(const Result<NamedEntry>& entry) {
  INFO(told(entry.issues()));
  REQUIRE(entry.ok());
  return entry.value().values.at("spool.barrel_diameter").value;
}

}  // namespace

TEST_CASE("an entry of an earlier folder counts for more") {
  const Shop shop;
  shop.write("shared/spools.toml", spool("A", "1 mm"));
  shop.write("own/spools.toml", spool("A", "2 mm") + spool("B", "3 mm"));
  Catalogues catalogues({{shop.at("own")}});
  CHECK(barrel_of(catalogues.find(EntryKind::spool, "A")) == 2.0);
  catalogues.put_first({shop.at("shared"), true});
  CHECK(barrel_of(catalogues.find(EntryKind::spool, "A")) == 1.0);
  CHECK(barrel_of(catalogues.find(EntryKind::spool, "B")) == 3.0);
  CHECK(catalogues.find(EntryKind::spool, "A").value().file == shop.at("shared/spools.toml").string());
  const Shelf shelf = catalogues.all();
  CHECK(shelf.of(EntryKind::spool).size() == 2);
  CHECK(shelf.of(EntryKind::fiber).empty());
}

TEST_CASE("what was changed in a file counts at the next question") {
  const Shop shop;
  shop.write("own/spools.toml", spool("A", "2 mm"));
  const Catalogues catalogues({{shop.at("own")}});
  CHECK(barrel_of(catalogues.find(EntryKind::spool, "A")) == 2.0);
  shop.write("own/spools.toml", spool("A", "5 mm"));
  CHECK(barrel_of(catalogues.find(EntryKind::spool, "A")) == 5.0);
}

TEST_CASE("a name that no catalogue has is told with the nearest") {
  const Shop shop;
  shop.write("own/spools.toml", spool("IEC 60264 100", "2 mm") + spool("Reel", "2 mm"));
  const Catalogues catalogues({{shop.at("own")}});
  CHECK_THAT(told(catalogues.find(EntryKind::spool, "IEC 60264 10").issues()),
             Contains("did you mean \"IEC 60264 100\"?"));
  CHECK_THAT(told(catalogues.find(EntryKind::spool, "something else").issues()), Contains("laywright new --list"));
  // Of another kind there is none.
  CHECK_FALSE(catalogues.find(EntryKind::fiber, "Reel").ok());
}

TEST_CASE("what cannot be read is told only where it may be the reason") {
  const Shop shop;
  shop.write("own/a.toml", spool("A", "2 mm"));
  shop.write("own/b.toml", spool("B", "2 bananas"));
  const Catalogues catalogues({{shop.at("own")}});
  CHECK(catalogues.find(EntryKind::spool, "A").issues().empty());
  CHECK_THAT(told(catalogues.find(EntryKind::spool, "B").issues()),
             Contains("b.toml:5") && Contains("unknown unit"));
  CHECK_THAT(told(catalogues.all().issues), Contains("unknown unit"));
}

TEST_CASE("a folder that a person named must be there, their own need not") {
  const Shop shop;
  CHECK(Catalogues({{shop.at("absent")}}).all().issues.empty());
  CHECK_THAT(told(Catalogues({{shop.at("absent"), true}}).all().issues), Contains("there is no such folder"));
  CHECK_THAT(told(Catalogues({{shop.at("absent"), true}}).find(EntryKind::spool, "A").issues()),
             Contains("there is no such folder"));
}

TEST_CASE("two files of a folder with one name are told, and the first counts") {
  const Shop shop;
  shop.write("own/a.toml", spool("A", "2 mm"));
  shop.write("own/b.toml", spool("A", "3 mm"));
  shop.write("own/.hidden.toml", spool("C", "3 mm"));
  shop.write("own/notes.txt", "nothing");
  const Catalogues catalogues({{shop.at("own")}});
  CHECK(barrel_of(catalogues.find(EntryKind::spool, "A")) == 2.0);
  CHECK_THAT(told(catalogues.all().issues), Contains("b.toml:2") && Contains("is the name of the entry \"A\""));
  CHECK(catalogues.all().issues.size() == 1);
  CHECK_FALSE(catalogues.find(EntryKind::spool, "C").ok());
}
