#include "records/records_place.h"

#include <cstring>
#include <map>
#include <memory>

#include <fmt/format.h>
#include <libpq-fe.h>

#include "base/readable.h"

namespace laywright {
namespace {

constexpr const char* schemes[] = {"postgresql://", "postgres://"};
constexpr const char* patience_s = "10";  // for a server that does not answer

Issue refused(std::string what) {
  Issue issue;
  issue.key = "records";
  issue.what = std::move(what);
  return issue;
}

std::string in_quotes(const std::string& value) {
  std::string text = "'";
  for (const char c : value) {
    if (c == '\'' || c == '\\') text += '\\';
    text += c;
  }
  return text + "'";
}

Result<RecordsPlace> server_place(const std::string& text) {
  // libpq's own words about what is wrong may repeat a password.
  const std::unique_ptr<PQconninfoOption, decltype(&PQconninfoFree)> options(PQconninfoParse(text.c_str(), nullptr),
                                                                             &PQconninfoFree);
  if (!options) return refused("is no address of a server; write postgresql://NAME@HOST/DATABASE");
  std::map<std::string, std::string> values{
      {"connect_timeout", patience_s}, {"client_encoding", "UTF8"}, {"fallback_application_name", "laywright"}};
  for (const PQconninfoOption* option = options.get(); option->keyword != nullptr; ++option) {
    if (option->val != nullptr && *option->val != '\0') values[option->keyword] = option->val;
  }
  RecordsPlace place;
  place.has_password = values.contains("password") || values.contains("sslpassword");
  for (const auto& [key, value] : values) place.connection += fmt::format("{}={} ", key, in_quotes(value));
  const auto named = [&](const char* key, const char* variable) -> std::string {
    if (const auto found = values.find(key); found != values.end()) return found->second;
    const char* set = std::getenv(variable);
    return set == nullptr ? "" : set;
  };
  const std::string host = named("host", "PGHOST"), port = named("port", "PGPORT"),
                    database = named("dbname", "PGDATABASE");
  place.words = fmt::format("database {} on {}{}", database.empty() ? "of your name" : database,
                            host.empty() ? "this machine's server" : fmt::format("server {}", host),
                            port.empty() ? "" : fmt::format(", port {}", port));
  return place;
}

}  // namespace

Result<RecordsPlace> records_place(const std::string& text) {
  if (text.empty()) return refused("names no file; give a file, or the address of a server");
  for (const char* scheme : schemes) {
    if (text.starts_with(scheme)) return server_place(text);
  }
  // "mysql://..." would become a file of an odd name.
  if (text.find("://") != std::string::npos)
    return refused(fmt::format("\"{}\" is no place for records; give a file, or postgresql://NAME@HOST/DATABASE",
                               readable(text.substr(0, text.find("://") + 3))));
  if (text.find('"') != std::string::npos)
    return refused("cannot be in a file whose name holds a quotation mark; choose another name");
  RecordsPlace place;
  std::error_code error;
  // Absolute, so that names like ":memory:" are those of files.
  place.file = std::filesystem::absolute(text, error);
  if (error) return refused("cannot be found: the working folder is gone");
  place.words = text;
  return place;
}

}  // namespace laywright
