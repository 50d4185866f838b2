// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/hub/planner.h"

#include <algorithm>
#include <stdexcept>

namespace floorwheel::hub {
namespace {

SlotRow row_of(const ClassSpec& c, const Plan& p) {
  const int seconds = class_seconds(c, p.rotation.slots);
  return {.slots = p.rotation.slots,
          .class_s = seconds,
          .fits = !c.length_s || seconds <= *c.length_s,
          .style = p.rotation.style,
          .cost = p.cost,
          .bound = p.bound,
          .proven = p.proven};
}

/// A fixed number of slots, and what one more buys.
PlanResult fixed(const ClassSpec& c, int slots, const PlanOptions& options) {
  OrRefusal<Plan> chosen = plan(c, slots, options);
  if (const auto* refusal = std::get_if<Refusal>(&chosen)) return *refusal;
  SlotTable table;
  table.chosen = std::get<Plan>(std::move(chosen));
  table.rows.push_back(row_of(c, table.chosen));
  if (options.stop && options.stop()) return table;
  if (const OrRefusal<Plan> more = plan(c, slots + 1, options); const auto* p = std::get_if<Plan>(&more))
    table.rows.push_back(row_of(c, *p));
  return table;
}

/// A defect of the planner costs this one answer, not the hub.
PlanResult answer(const PlanRequest& r, const PlanOptions& options) {
  try {
    return make_plan(r, options);
  } catch (const std::logic_error& e) {
    return Refusal{0, {}, {}, {}, e.what()};
  }
}

}  // namespace

PlanResult make_plan(const PlanRequest& r, const PlanOptions& options) {
  if (!r.old) return r.slots ? fixed(r.spec, *r.slots, options) : plan_slots(r.spec, options);
  OrRefusal<Plan> repaired = repair(r.spec, r.slots.value_or(r.old->slots), *r.old, r.at_slot, options);
  if (const auto* refusal = std::get_if<Refusal>(&repaired)) return *refusal;
  SlotTable table;
  table.chosen = std::get<Plan>(std::move(repaired));
  return table;
}

Planner::Planner(Done done, Under underway)
    : done_(std::move(done)), underway_(std::move(underway)), thread_([this] { run(); }) {}

Planner::~Planner() {
  {
    const std::lock_guard lock(mutex_);
    stopping_ = true;
  }
  work_.notify_all();
  thread_.join();
}

void Planner::ask(std::uint64_t ticket, PlanRequest request) {
  {
    const std::lock_guard lock(mutex_);
    jobs_.push_back({.ticket = ticket, .request = std::move(request)});
  }
  work_.notify_one();
}

void Planner::cancel(std::uint64_t ticket) {
  const std::lock_guard lock(mutex_);
  std::erase_if(jobs_, [ticket](const Job& j) { return j.ticket == ticket; });
  if (current_ == ticket) cancelled_ = true;
}

bool Planner::unwanted(std::uint64_t ticket) {
  const std::lock_guard lock(mutex_);
  return stopping_ || (current_ == ticket && cancelled_);
}

void Planner::run() {
  while (true) {
    Job job;
    {
      std::unique_lock lock(mutex_);
      work_.wait(lock, [this] { return stopping_ || !jobs_.empty(); });
      if (stopping_) return;
      job = std::move(jobs_.front());
      jobs_.pop_front();
      current_ = job.ticket;
      cancelled_ = false;
    }
    PlanOptions options;
    options.stop = [this, &job] { return unwanted(job.ticket); };
    options.progress = [this, &job](const Progress& p) { underway_(job.ticket, p); };
    PlanResult result = answer(job.request, options);
    const bool wanted = !unwanted(job.ticket);
    {
      const std::lock_guard lock(mutex_);
      current_.reset();
    }
    if (wanted) done_(job.ticket, job.request, std::move(result));
  }
}

}  // namespace floorwheel::hub
