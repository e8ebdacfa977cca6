// What may be kept.
#include <algorithm>
#include <set>
#include <utility>

#include <fmt/format.h>

#include "base/png_header.h"
#include "base/quantity_text.h"
#include "base/readable.h"
#include "records/spool_record.h"

namespace laywright {
namespace {

Issue refused(std::string key, std::string_view value, std::string what, std::string allowed = "") {
  Issue issue;
  issue.key = std::move(key);
  issue.value = readable(value);
  issue.what = std::move(what);
  issue.allowed = std::move(allowed);
  return issue;
}

// Databases hold text, not bytes: a server refuses what is not UTF-8, and a zero byte would end the text.
void check_text(const char* key, const std::string& text, std::size_t longest, bool lines, Issues& issues) {
  const auto wrong = [&](unsigned char c) {
    return c == 0x7f || (c < 0x20 && !(lines && (c == '\n' || c == '\t')));
  };
  if (valid_utf8(text) != text) issues.push_back(refused(key, text, "is not text in UTF-8"));
  if (std::any_of(text.begin(), text.end(), wrong)) {
    issues.push_back(refused(key, text, lines ? "holds a character that is no text" : "must be one line of text"));
  }
  if (const std::size_t length = character_count(text); length > longest) {
    issues.push_back(refused(key, text, fmt::format("is too long, {} characters", length),
                             fmt::format("up to {} characters", longest)));
  }
}

bool is_hexadecimal(const std::string& text, std::size_t digits) {
  return text.size() == digits && text.find_first_not_of("0123456789abcdef") == std::string::npos;
}

// "2026-11-29T13:50:12Z"
bool is_moment(const std::string& text) {
  if (text.size() != 20 || !is_date(std::string_view(text).substr(0, 10)) || text[10] != 'T' || text[19] != 'Z')
    return false;
  for (const std::size_t i : {11U, 12U, 14U, 15U, 17U, 18U}) {
    if (text[i] < '0' || text[i] > '9') return false;
  }
  return text[13] == ':' && text[16] == ':' && text.substr(11, 2) <= "23" && text.substr(14, 2) <= "59";
}

std::string kind_of(std::string_view bytes) {
  if (is_png(bytes)) return "png";
  if (bytes.starts_with("\xff\xd8\xff")) return "jpeg";
  if (bytes.size() > 12 && bytes.starts_with("RIFF") && bytes.substr(8, 4) == "WEBP") return "webp";
  return "";
}

}  // namespace

Result<RecordPicture> picture_of(std::string bytes, std::string caption, const std::string& file) {
  RecordPicture picture;
  picture.kind = kind_of(bytes);
  Issues issues;
  if (picture.kind.empty())
    issues.push_back(refused("", "", "is no picture of a kind that is kept; save it as PNG, JPEG or WebP"));
  if (bytes.size() > largest_picture_bytes) {
    issues.push_back(refused(
        "", "",
        fmt::format("is too large, {} MB; make it smaller", figure(static_cast<double>(bytes.size()) / 1e6, 1)),
        fmt::format("up to {} MB", largest_picture_bytes / 1'000'000)));
  }
  check_text("caption", caption, longest_record_caption, false, issues);
  for (Issue& issue : issues) issue.file = file;
  if (!issues.empty()) return issues;
  picture.caption = std::move(caption);
  picture.size = bytes.size();
  picture.hash = hash_text(bytes);
  picture.bytes = std::move(bytes);
  return picture;
}

Issues check_entry(const RecordEntry& entry) {
  Issues issues;
  if (!is_moment(entry.written))
    issues.push_back(refused("written", entry.written, "is no date and time", "like 2026-11-29T13:50:12Z"));
  check_text("by", entry.by, longest_record_name, false, issues);
  check_text("program", entry.program, longest_record_name, false, issues);
  check_text("reason", entry.reason, longest_record_note, true, issues);
  check_text("note", entry.note, longest_record_note, true, issues);
  if (entry.decision == Decision::none && !entry.reason.empty())
    issues.push_back(refused("reason", entry.reason, "is one without a decision"));
  if (entry.decision == Decision::rejected && entry.reason.empty())
    issues.push_back(refused("reason", "", "is missing; say why the spool was rejected"));
  for (const RecordPicture& picture : entry.pictures) {
    check_text("caption", picture.caption, longest_record_caption, false, issues);
    if (!is_hexadecimal(picture.hash, 16)) issues.push_back(refused("hash", picture.hash, "is none of a picture"));
    const std::set<std::string> kinds{"png", "jpeg", "webp"};
    if (!kinds.contains(picture.kind))
      issues.push_back(refused("kind", picture.kind, "is no kind of picture", "png, jpeg, webp"));
  }
  for (const FittedSetting& setting : entry.fitted)
    check_text("key", setting.key, longest_record_name, false, issues);
  return issues;
}

Issues check_record(const SpoolRecord& record) {
  Issues issues;
  if (!is_hexadecimal(record.identity, 32))
    issues.push_back(refused("identity", record.identity, "is none of a record"));
  if (record.spool.empty()) issues.push_back(refused("spool", "", "is missing; give the spool's number"));
  check_text("spool", record.spool, longest_record_name, false, issues);
  check_text("machine", record.machine, longest_record_name, false, issues);
  check_text("order", record.order, longest_record_name, false, issues);
  check_text("program", record.program, longest_record_name, false, issues);
  check_text("title", record.title, longest_record_note, true, issues);
  check_text("plan_file", record.plan_file, longest_record_note, true, issues);
  if (!is_date(record.date))
    issues.push_back(refused("date", record.date, "is no day of the calendar", "like 2026-11-29"));
  if (record.planned.empty())
    issues.push_back(refused("planned", "", "is missing: a record says what its plan gave"));
  if (record.entries.empty()) issues.push_back(refused("entry", "", "is missing: a record has one at least"));
  return issues;
}

}  // namespace laywright
