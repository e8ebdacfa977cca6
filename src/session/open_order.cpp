#include "session/open_order.h"

#include <filesystem>
#include <utility>

namespace laywright {

void OpenOrder::open(const std::string& file, const EntrySource& entries) {
  laying_.stop();
  laying_.forget();
  writer_.forget();
  order_.reset();
  kinds_.clear();
  file_ = file;
  const Result<Order> read = load_order(file);
  issues_ = read.issues();
  if (!read.ok()) return;
  Result<std::vector<SpoolKind>> kinds = kinds_of(read.value(), entries);
  issues_.insert(issues_.end(), kinds.issues().begin(), kinds.issues().end());
  if (!kinds.ok()) return;
  order_ = read.value();
  kinds_ = std::move(kinds).value();
  lay(false);
}

void OpenOrder::lay(bool full) {
  laying_.ask([order = *order_, kinds = kinds_, full, picture = picture_](Progress& progress) {
    return lay_order(order, kinds, order_laying(full, picture), progress);
  });
}

bool OpenOrder::poll() {
  bool changed = false;
  if (laying_.poll()) {
    changed = true;
    const bool quick = laying_.status().trouble.empty() && laid() && !laid()->full;
    if (quick && !laying_.status().busy) lay(true);
  }
  if (writer_.poll()) {
    changed = true;
    if (writer_.wrote()) written_ = being_written_;
    being_written_ = {};
  }
  return changed;
}

bool OpenOrder::can_be_written() const { return laid() && laid()->full && laid()->not_placed.empty(); }

void OpenOrder::write(const std::string& folder) {
  being_written_ = {laid(), folder};
  writer_.start_set(
      folder, [laid = laid(), folder](Progress& progress) { return write_order(*laid, folder, progress); }, wake_);
}

std::optional<std::string> OpenOrder::written_plan(std::size_t spool) const {
  if (!written_.laid || written_.laid != laid()) return std::nullopt;
  return (std::filesystem::path(written_.folder) / batch_plan(laid()->batch, spool)).string();
}

}  // namespace laywright
