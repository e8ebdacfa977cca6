// A plan that is begun anew: of what a person says of it become, in the background, settings that give a good wind.
#pragma once

#include <functional>
#include <memory>
#include <string>

#include "base/issue.h"
#include "session/inquiry.h"
#include "store/new_request.h"
#include "verdict/verdict.h"

namespace laywright {

struct ProposedPlan {
  NewRequest request;  // of which it was made
  PlanDraft draft;
  WindVerdict verdict;
  std::string text;  // of the plan's file
};

// One thread uses it.
class PlanBeginning {
 public:
  // `wake` as of Inquiry.
  explicit PlanBeginning(std::function<void()> wake)
      : search_("the search for a plan to begin with", std::move(wake)) {}

  // Returns at once. Where something is wrong with the request, issues() says what, and nothing is searched for.
  void ask(const NewRequest& request, const std::shared_ptr<const EntrySource>& entries);
  void stop() { search_.stop(); }
  // What was found is taken, or not wanted; nothing is searched for any more.
  void forget();
  [[nodiscard]] bool poll() { return search_.poll(); }

  // Of the request asked last: by what was said, "spool", or by key of the plan.
  [[nodiscard]] const Issues& issues() const { return issues_; }
  [[nodiscard]] InquiryStatus status() const { return search_.status(); }
  // Null until something is found.
  [[nodiscard]] const std::shared_ptr<const ProposedPlan>& proposed() const { return search_.answer(); }

 private:
  Issues issues_;
  Inquiry<ProposedPlan> search_;
};

}  // namespace laywright
