// The same cases on a file, and on a PostgreSQL server that the test starts for itself.
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <string>

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include "records/record_book.h"
#include "records/record_cases.h"
#include "records/record_session.h"
#include "records/sample_record.h"
#include "temporary_folder.h"

using namespace laywright;
using namespace laywright::testing;
using Catch::Matchers::Contains;
namespace fs = std::filesystem;

namespace {

// The folder with the server's programs; empty where there is none.
std::string server_programs() {
  std::string newest;
  std::error_code error;
  for (const auto& each : fs::directory_iterator("/usr/lib/postgresql", error)) {
    if (fs::exists(each.path() / "bin/postgres")) newest = std::max(newest, (each.path() / "bin").string());
  }
  return newest;
}

// A server of its own, reached through a socket in a folder of its own: nobody else can reach it, and no port is taken. It
// refuses to run as root, so that nobody runs it.
class Server {
 public:
  explicit Server(const std::string& programs) : programs_(programs) {
    fs::permissions(folder_.path(), fs::perms::all);
    run(fmt::format("{}/initdb -D data -U shop -A trust -E UTF8 --locale=C --no-sync >initdb.log 2>&1", programs_));
    child_ = ::fork();
    REQUIRE(child_ >= 0);
    if (child_ == 0) {
      const std::string line =
          as_nobody(fmt::format("exec {}/postgres -D data -k {} -c listen_addresses= -c fsync=off -c "
                                "logging_collector=off >server.log 2>&1",
                                programs_, folder_.path().string()));
      ::execl("/bin/sh", "sh", "-c", line.c_str(), nullptr);
      ::_exit(127);
    }
    // As long as it takes; one that has ended is waited for no longer.
    while (std::system(fmt::format("{}/pg_isready -q -h {}", programs_, folder_.path().string()).c_str()) != 0) {
      REQUIRE(::waitpid(child_, nullptr, WNOHANG) == 0);
      ::usleep(50'000);
    }
  }
  ~Server() {
    ::kill(child_, SIGINT);  // it ends its connections, and then itself
    ::waitpid(child_, nullptr, 0);
  }
  Server(const Server&) = delete;
  Server& operator=(const Server&) = delete;

  [[nodiscard]] RecordsPlace place(const std::string& database, const std::string& user = "shop") const {
    const Result<RecordsPlace> place =
        records_place(fmt::format("postgresql:///{}?host={}&user={}", database, folder_.path().string(), user));
    REQUIRE(place.ok());
    return place.value();
  }
  // An empty one.
  [[nodiscard]] RecordsPlace make(const std::string& database) const {
    *open_session(place("postgres")) << "CREATE DATABASE " + database;
    return place(database);
  }
  [[nodiscard]] const fs::path& folder() const { return folder_.path(); }

 private:
  [[nodiscard]] std::string as_nobody(const std::string& command) const {
    const std::string there = fmt::format("cd {} && {}", folder_.path().string(), command);
    if (::geteuid() != 0) return there;
    return fmt::format("exec setpriv --reuid=65534 --regid=65534 --clear-groups -- sh -c '{}'", there);
  }
  void run(const std::string& command) const { REQUIRE(std::system(as_nobody(command).c_str()) == 0); }

  std::string programs_;
  TemporaryFolder folder_;
  pid_t child_ = -1;
};

RecordsPlace file_place(const fs::path& file) { return records_place(file.string()).value(); }

}  // namespace

TEST_CASE("records in a file") {
  for (const RecordCase& each : record_cases()) {
    DYNAMIC_SECTION(each.name) {
      const TemporaryFolder folder;
      each.run(file_place(folder.path() / "re cords' é.db"));
    }
  }
}

TEST_CASE("records on a PostgreSQL server") {
  const std::string programs = server_programs();
  if (programs.empty()) {
    WARN("NOT RUN: no PostgreSQL server is installed (package postgresql); records on a server are not tested");
    return;
  }
  const Server server(programs);
  int count = 0;
  for (const RecordCase& each : record_cases()) {
    CAPTURE(each.name);
    each.run(server.make(fmt::format("case{}", ++count)));
  }

  // Whom the server does not let in, and what it does not have.
  for (const RecordsPlace& wrong : {server.place("nowhere"), server.place("postgres", "stranger")}) {
    const Result<RecordBook> book = RecordBook::open(wrong, Opening::to_write);
    REQUIRE_FALSE(book.ok());
    CHECK_THAT(to_text(book.issues().front()), Contains("does not let you in") && Contains(wrong.words));
  }
  // Who may not make tables.
  const RecordsPlace mine = server.make("mine");
  *open_session(mine) << "CREATE ROLE reader LOGIN";
  const Result<RecordBook> denied = RecordBook::open(server.place("mine", "reader"), Opening::to_write);
  REQUIRE_FALSE(denied.ok());
  CHECK_THAT(to_text(denied.issues().front()), Contains("right to create"));
  // A database that cannot hold all characters.
  *open_session(server.place("postgres")) << "CREATE DATABASE latin ENCODING 'LATIN1' TEMPLATE template0";
  Result<RecordBook> latin = RecordBook::open(server.place("latin"), Opening::to_write);
  REQUIRE(latin.ok());
  RecordBook latin_book = std::move(latin).value();
  const Result<long long> number = latin_book.add(sample_record());
  REQUIRE_FALSE(number.ok());
  CHECK_THAT(to_text(number.issues().front()), Contains("UTF8"));
  // A connection that breaks off is told, and what was recorded before is there.
  Result<RecordBook> opened = RecordBook::open(mine, Opening::to_write);
  REQUIRE(opened.ok());
  RecordBook book = std::move(opened).value();
  REQUIRE(book.add(sample_record()).ok());
  long long ended = 0;
  *open_session(server.place("postgres"))
      << "SELECT count(pg_terminate_backend(pid)) FROM pg_stat_activity WHERE datname = 'mine'",
      soci::into(ended);
  CHECK(ended >= 1);
  const Result<long long> broken = book.add(sample_record());
  REQUIRE_FALSE(broken.ok());
  CHECK_THAT(to_text(broken.issues().front()), Contains("broken off"));
  Result<RecordBook> again = RecordBook::open(mine, Opening::to_read);
  REQUIRE(again.ok());
  RecordBook back = std::move(again).value();
  CHECK(back.list({}).value().size() == 1);
}
