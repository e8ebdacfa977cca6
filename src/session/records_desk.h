// The records as the window has them: read, written and fitted in the background, so that nobody waits for a disk or a server.
#pragma once

#include <chrono>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "advise/carry_over.h"
#include "jobs/latest_job.h"
#include "records/record_book.h"
#include "records/trends.h"
#include "session/inquiry.h"

namespace laywright {

// What is looked at.
struct RecordsLook {
  std::string place;  // as records_place() takes it; may hold a password and is never shown
  RecordFilter filter;
  long long number = 0;  // of the record whose page is open; 0: none

  friend bool operator==(const RecordsLook&, const RecordsLook&) = default;
};

struct RecordsSeen {
  RecordsLook of;
  std::string place_words;           // never a password
  Issues trouble;                    // why the place cannot be read now: what is shown is of before, or nothing
  bool none_yet = false;             // nothing was recorded there yet
  long long entries = 0;             // of all records of the place
  std::vector<SpoolRecord> records;  // that the filter leaves, newest first; pictures without their bytes
  Trends trends;                     // of these
  std::optional<SpoolRecord> page;   // the record of that number; none where there is none
  std::optional<Plan> plan;          // of the page, as recorded; none: its text is not sound
};

// What has become of something that was to be kept.
struct RecordsKept {
  std::string words;  // "Record 3 of spool 17 is kept in shop.db."; empty where there is a trouble
  Issues trouble;
};

// Stations of the winds that a fit lays, to those that the model needs: some hundred of them, while a person waits.
inline constexpr double fitted_fidelity = 0.5;

// What a recorded spool was wound with.
struct RecordFit {
  std::string place;
  long long number = 0;
  std::string spool;
  Plan plan;  // as recorded
  AsWound wound;
  Fit fit;
  Issues not_kept;  // why it does not stand with the record
};

// One thread uses it.
class RecordsDesk {
 public:
  using Clock = std::chrono::steady_clock;

  // `wake` as of Inquiry.
  explicit RecordsDesk(std::function<void()> wake);
  // Waits for what is being written: a person who leaves has asked for it.
  ~RecordsDesk();
  RecordsDesk(const RecordsDesk&) = delete;
  RecordsDesk& operator=(const RecordsDesk&) = delete;

  // These return at once.

  // Somebody looks at records: at the place of before, or else the one that was chosen, or the usual one.
  void begin(const std::string& chosen);
  // Reads what is looked at anew.
  void look(RecordsLook look);
  void reload() { look(look_); }
  // Writes, and reads anew. Precondition: not keeping(). `work` gives the number of the record, whose page is opened.
  struct Written {
    long long number = 0;
    std::string words;
  };
  using Write = std::function<Result<Written>(RecordBook&)>;
  void keep(Opening opening, Write work);
  // The latest said of that is of something else.
  void forget_kept() { kept_.reset(); }
  void fit(long long number, const std::string& by);
  void stop_fitting() { fit_.stop(); }

  // Takes what has come. While somebody looks, what other windows and programs add is found by itself, within some
  // seconds. True when there is news.
  bool poll(bool looked_at, Clock::time_point now);

  [[nodiscard]] const RecordsLook& looked_at() const { return look_; }
  // Null before the first reading.
  [[nodiscard]] const std::shared_ptr<const RecordsSeen>& seen() const { return seen_; }
  // What is looked at is not what is seen yet.
  [[nodiscard]] bool reading() const { return read_.busy() && (!seen_ || !(seen_->of == look_) || asked_for_); }
  [[nodiscard]] bool keeping() const { return write_.busy(); }
  [[nodiscard]] const std::optional<RecordsKept>& kept() const { return kept_; }
  // The latest, of whatever record; null: none.
  [[nodiscard]] const std::shared_ptr<const RecordFit>& found() const { return fit_.answer(); }
  [[nodiscard]] InquiryStatus fitting() const { return fit_.status(); }
  // What was carried of it, and into which plan (Desk::id).
  struct CarriedInto {
    std::uint64_t desk = 0;
    std::vector<CarriedSetting> settings;
  };
  [[nodiscard]] const std::vector<CarriedInto>& carried() const { return carried_; }
  void note_carried(CarriedInto into) { carried_.push_back(std::move(into)); }

  // Whose fit that is, or was asked for; 0: none.
  [[nodiscard]] long long fitted_number() const { return fitted_number_; }

 private:
  void read(bool asked_for);
  bool take_seen();
  bool take_written();

  const std::function<void()> wake_;
  RecordsLook look_;
  std::shared_ptr<const RecordsSeen> seen_;
  bool asked_for_ = false;  // by the person: the one on its way does not come by itself
  std::optional<Clock::time_point> read_at_;
  std::optional<RecordsKept> kept_;
  long long fitted_number_ = 0;
  std::vector<CarriedInto> carried_;
  LatestJob<RecordsSeen> read_{"reading records"};
  LatestJob<Written> write_{"keeping a record"};
  Inquiry<RecordFit> fit_;
};

}  // namespace laywright
