// The order over spools that is open in the window: its file is checked at once, its winds are laid in the background, and
// what comes of it is written when a person asks for that.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>

#include "plan/named_entry.h"
#include "session/file_saving.h"
#include "session/inquiry.h"
#include "session/order_work.h"

namespace laywright {

// One thread uses it.
class OpenOrder {
 public:
  // `wake` as of Inquiry. `picture` is called on threads that lay; it may be empty.
  OpenOrder(std::function<void()> wake, WindPicture picture)
      : wake_(std::move(wake)), picture_(std::move(picture)), laying_("the order", wake_) {}

  // Reads the file and its plans, and begins to lay where nothing is wrong; what was laid of another one, or before, is
  // forgotten.
  void open(const std::string& file, const EntrySource& entries);
  void stop_laying() { laying_.stop(); }
  // Takes what has come since: true if something has.
  bool poll();

  // Empty: none is open.
  [[nodiscard]] const std::string& file() const { return file_; }
  // As its file says it; none: it cannot be used.
  [[nodiscard]] const std::optional<Order>& order() const { return order_; }
  // Of the file and of the plans that it names, as they were read; with errors nothing is laid.
  [[nodiscard]] const Issues& issues() const { return issues_; }
  [[nodiscard]] InquiryStatus status() const { return laying_.status(); }
  // The newest: first the quick look, then the full one; null until there is one.
  [[nodiscard]] const std::shared_ptr<const LaidOrder>& laid() const { return laying_.answer(); }
  // It is laid in full, and everything was placed.
  [[nodiscard]] bool can_be_written() const;

  // Everything into a folder, in the background. Preconditions: can_be_written(), and nothing is being written.
  void write(const std::string& folder);
  void stop_writing() { writer_.stop(); }
  [[nodiscard]] std::optional<FileSaving> saving() const { return writer_.saving(); }
  [[nodiscard]] bool is_writing() const { return writer_.busy(); }
  // Of the spool at that place in the batch: the plan's file, once everything was written as it is laid now.
  [[nodiscard]] std::optional<std::string> written_plan(std::size_t spool) const;

 private:
  void lay(bool full);

  const std::function<void()> wake_;
  const WindPicture picture_;
  std::string file_;
  Issues issues_;
  std::optional<Order> order_;
  std::vector<SpoolKind> kinds_;
  Inquiry<LaidOrder> laying_;
  FileWriter writer_{"the files of the order"};
  struct Written {
    std::shared_ptr<const LaidOrder> laid;
    std::string folder;
  };
  Written being_written_, written_;
};

}  // namespace laywright
