#include "session/laying.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "jobs/seconds_left.h"
#include "lay/lay.h"

namespace laywright {
namespace {

// Of the time for a pass, the part that laying takes; the rest is measuring.
constexpr double laying_part = 0.75;

// A pass is short, and goes on evenly.
constexpr EstimateFrom estimate_from{0.03, 0.2};

constexpr const char* what_is_laid = "this wind";

}  // namespace

struct Laying::Job {
  Job(const Plan& the_plan, std::uint64_t the_seed, std::uint64_t the_revision, std::vector<Pass> the_passes)
      : plan(the_plan), seed(the_seed), revision(the_revision), passes(std::move(the_passes)) {}

  void cancel() {
    laying.cancel();
    measuring.cancel();
  }

  const Plan plan;
  const std::uint64_t seed, revision;
  const std::vector<Pass> passes;
  Progress laying, measuring;  // of the pass that runs
  Progress taking_up;          // goes on when laying is stopped: what is shown has its machine's side
  // The rest belongs to the mutex of Laying.
  std::size_t pass = 0;
  Clock::time_point began = Clock::now();  // this pass
  bool done = false, stopped = false;
  std::string trouble;
};

Laying::Laying(std::function<void()> wake, std::shared_ptr<ErrandQueue> chores, std::optional<DrawOff> drawn_off)
    : wake_(std::move(wake)), chores_(std::move(chores)), drawn_off_(drawn_off) {}

Laying::~Laying() {
  const std::lock_guard lock(mutex_);
  for (const auto& job : {job_, looking_}) {
    if (!job) continue;
    job->cancel();
    job->taking_up.cancel();
  }
}

void Laying::give_up_older() {
  if (job_ && job_ != looking_) {
    job_->cancel();
    if (job_->pass > 0) job_->taking_up.cancel();  // that of a first look is made within a moment
  }
  if (!looking_ || gave_up_look_) return;
  looking_->cancel();
  gave_up_look_ = true;
}

void Laying::finish_look(const std::shared_ptr<Job>& job) {
  {
    const std::lock_guard lock(mutex_);
    looking_.reset();
    if (job->revision != revision_ || job->passes.size() == 1 || job->laying.cancelled()) return;
  }
  rest_.run(task_of(job, [this, job] { run_rest(job); }));
}

std::uint64_t Laying::lay(const Plan& plan, std::uint64_t seed) {
  std::shared_ptr<Job> job;
  {
    const std::lock_guard lock(mutex_);
    give_up_older();
    job = std::make_shared<Job>(plan, seed, ++revision_, passes_for(plan, cost_));
    job_ = job;
  }
  first_.run(task_of(job, [this, job] {
    {
      const std::lock_guard lock(mutex_);
      looking_ = job;
    }
    const WoundPtr look = run_pass(job, 0);
    finish_look(job);
    if (look) add_takeup(*job, *look);
  }));
  return job->revision;
}

Task Laying::task_of(const std::shared_ptr<Job>& job, std::function<void()> work) {
  return {what_is_laid, std::move(work), [this, job](const Issue& trouble) { fail(*job, trouble); }};
}

void Laying::stop() {
  const std::lock_guard lock(mutex_);
  if (!job_ || job_->done) return;
  job_->cancel();
  if (looking_) looking_->cancel();
  job_->done = job_->stopped = true;
}

WoundPtr Laying::take() {
  const std::lock_guard lock(mutex_);
  return std::exchange(fresh_, nullptr);
}

double Laying::share_of(const Job& job) {
  return laying_part * job.laying.share() + (1.0 - laying_part) * job.measuring.share();
}

bool Laying::take_takeup_news() {
  const std::lock_guard lock(mutex_);
  return std::exchange(takeup_news_, false);
}

LayingStatus Laying::status() const {
  const std::lock_guard lock(mutex_);
  LayingStatus status;
  if (!job_) return status;
  status.busy = !job_->done;
  status.stopped = job_->stopped;
  status.trouble = job_->trouble;
  status.pass = job_->passes[job_->pass];
  if (!status.busy) return status;
  status.share = std::clamp(share_of(*job_), 0.0, 1.0);
  status.seconds_left = seconds_left(job_->began, status.share, estimate_from);
  return status;
}

void Laying::run_rest(const std::shared_ptr<Job>& job) {
  for (std::size_t pass = 1; pass < job->passes.size() && !job->laying.cancelled(); ++pass) {
    if (const WoundPtr wound = run_pass(job, pass)) add_takeup(*job, *wound);
  }
}

WoundPtr Laying::run_pass(const std::shared_ptr<Job>& job, std::size_t pass) {
  {
    const std::lock_guard lock(mutex_);
    job->pass = pass;
    job->began = Clock::now();
    job->laying.report(0.0);
    job->measuring.report(0.0);
  }
  WoundPtr published;
  const std::optional<Trouble> trouble = attempt(what_is_laid, [&] {
    std::unique_ptr<const Wound> wound = wind(*job, job->passes[pass]);
    if (wound) published = publish(*job, std::move(wound));
  });
  if (trouble) fail(*job, trouble->issue);
  return published;
}

std::unique_ptr<const Wound> Laying::wind(Job& job, const Pass& pass) const {
  const Plan plan = plan_for(job.plan, pass);
  LaySettings settings;
  settings.seed = job.seed;
  settings.fidelity = pass.fidelity;
  settings.gives_way = pass.full();
  Result<Build> laid = laywright::lay(plan, settings, job.laying);
  if (!laid) return nullptr;  // stopped; lay() knows no other reason
  const auto build = std::make_shared<const Build>(std::move(laid).value());
  const auto measurements = std::make_shared<const Measurements>(measure(plan, *build, job.measuring));
  if (job.measuring.cancelled()) return nullptr;
  SceneSource source(plan, build, measurements);
  if (drawn_off_ && pass.whole()) (void)source.payoff_forces(*drawn_off_, job.measuring);  // kept there
  if (job.measuring.cancelled()) return nullptr;
  return std::make_unique<const Wound>(Wound{std::move(source), pass, job.revision});
}

WoundPtr Laying::publish(const Job& job, std::unique_ptr<const Wound> wound) {
  // A great build takes tens of milliseconds to free: whoever lets it go last does not wait for that.
  const WoundPtr shared(wound.release(),
                        [chores = chores_](const Wound* old) { chores->post("", [old] { delete old; }); });
  {
    const std::lock_guard lock(mutex_);
    const double seconds = std::chrono::duration<double>(Clock::now() - job.began).count();
    const bool first_look = job.pass == 0;
    if (first_look) {
      cost_.learn(seconds, static_cast<double>(shared->build().nodes.size()));
      gave_up_look_ = false;
    }
    const bool newest = job.revision == revision_;
    // An older first look is better than none, unless the person wants no more.
    if (job_->stopped || (!newest && !first_look)) return nullptr;
    fresh_ = shared;
    if (newest && job.pass + 1 == job.passes.size()) job_->done = true;
  }
  wake_();
  return shared;
}

void Laying::add_takeup(Job& job, const Wound& wound) {
  const std::optional<Trouble> trouble = attempt("the machine's side of this wind", [&] {
    TakeupRun run = take_up(wound.plan(), wound.build(), wound.measurements(), job.taking_up);
    if (job.taking_up.cancelled()) return;
    VerdictPtr verdict;
    if (wound.pass.full()) {
      verdict =
          std::make_shared<const WindVerdict>(verdict_of(wound.plan(), wound.build(), wound.measurements(), &run));
    }
    wound.late->set(std::make_shared<const TakeupRun>(std::move(run)), std::move(verdict));
  });
  if (trouble) return fail(job, trouble->issue);
  if (!wound.late->get()) return;  // stopped
  {
    const std::lock_guard lock(mutex_);
    takeup_news_ = true;
  }
  wake_();
}

void Laying::fail(const Job& job, const Issue& trouble) {
  {
    const std::lock_guard lock(mutex_);
    if (job.revision != revision_) return;
    job_->trouble = trouble_words({trouble});
    job_->done = true;
    job_->cancel();
  }
  wake_();
}

}  // namespace laywright
