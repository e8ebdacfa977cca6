#include "session/records_desk.h"

#include <utility>

#include "session/records_home.h"
#include "session/records_work.h"

namespace laywright {
namespace {

using Seconds = std::chrono::duration<double>;

constexpr double look_again_every_s = 3.0;

bool same_words(const Issues& a, const Issues& b) { return trouble_words(a) == trouble_words(b); }

}  // namespace

RecordsDesk::RecordsDesk(std::function<void()> wake)
    : wake_(std::move(wake)), fit_("the fit of a recorded spool", wake_) {}

RecordsDesk::~RecordsDesk() { write_.wait(); }

void RecordsDesk::begin(const std::string& chosen) {
  if (look_.place.empty()) look_.place = records_place_text(chosen);
  kept_.reset();
  reload();
}

void RecordsDesk::look(RecordsLook look) {
  look_ = std::move(look);
  read(true);
}

void RecordsDesk::read(bool asked_for) {
  asked_for_ = asked_for;
  const bool same = !asked_for && seen_ && seen_->of == look_ && seen_->trouble.empty() && !seen_->none_yet;
  const std::optional<long long> known = same ? std::optional(seen_->entries) : std::nullopt;
  read_.ask([look = look_, known](Progress&) { return read_records(look, known); }, wake_);
}

void RecordsDesk::keep(Opening opening, Write work) {
  kept_.reset();
  write_.ask(
      [place = look_.place, opening, work = std::move(work)](Progress&) -> JobResult<Written> {
        Result<RecordBook> opened = open_book(place, opening);
        if (!opened.ok()) return opened.issues();
        RecordBook book = std::move(opened).value();
        return work(book);
      },
      wake_);
}

void RecordsDesk::fit(long long number, const std::string& by) {
  fit_.forget();
  carried_.clear();
  fitted_number_ = number;
  fit_.ask(
      [place = look_.place, number, by](Progress& progress) { return fit_recorded(place, number, by, progress); });
}

bool RecordsDesk::take_seen() {
  std::optional<JobResult<RecordsSeen>> ended = read_.take();
  if (!ended || ended->stopped()) return false;
  RecordsSeen news;
  if (ended->done()) {
    news = std::move(ended->value());
  } else {
    news.of = look_;
    news.trouble = ended->trouble();
  }
  const bool of_the_same = seen_ && seen_->of == news.of;
  if (!news.trouble.empty() && of_the_same) {
    // What was seen before stays in sight.
    if (!asked_for_ && same_words(news.trouble, seen_->trouble)) return false;
    Issues trouble = std::move(news.trouble);
    news = *seen_;
    news.trouble = std::move(trouble);
  } else if (of_the_same && !asked_for_ && news.none_yet && seen_->none_yet) {
    return false;
  }
  seen_ = std::make_shared<const RecordsSeen>(std::move(news));
  return true;
}

bool RecordsDesk::take_written() {
  std::optional<JobResult<Written>> ended = write_.take();
  if (!ended) return false;
  kept_ = RecordsKept{};
  if (ended->done()) {
    kept_->words = ended->value().words;
    look_.number = ended->value().number;
    read(true);
  } else {
    kept_->trouble = ended->trouble();
  }
  return true;
}

bool RecordsDesk::poll(bool looked_at, Clock::time_point now) {
  bool news = take_written();
  const bool was_reading = reading();
  news |= take_seen();
  news |= was_reading != reading();
  if (fit_.poll()) {
    news = true;
    if (fit_.answer()) read(true);  // the fit is kept with its record
  }
  if (!looked_at) {
    read_at_.reset();
    return news;
  }
  if (read_.busy() || !read_at_) {
    read_at_ = now;
  } else if (Seconds(now - *read_at_).count() >= look_again_every_s) {
    read_at_ = now;
    read(false);
  }
  return news;
}

}  // namespace laywright
