// SPDX-License-Identifier: GPL-3.0-or-later
// The ledger thread: the only one that changes anything. It owns the store and the folded hall. Whatever
// waits in its queue is written in one SQLite transaction (group commit); receipts and rows leave only after
// COMMIT returned. Other threads hand it values and get values back.
#pragma once

#include <condition_variable>
#include <cstdint>
#include <deque>
#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <set>
#include <thread>
#include <variant>
#include <vector>

#include "kiosk/hub/clock.h"
#include "kiosk/hub/command.h"
#include "kiosk/hub/planner.h"
#include "kiosk/store/store.h"
#include "kiosk/wire/kinds.h"

namespace floorwheel::hub {

/// A connection, by number; 0 is the hub itself.
using ScreenId = std::uint64_t;

struct ScreenFact {
  wire::Role role = wire::Role::wall;
  std::int64_t reached = 0;
};

/// What was committed, as each role may see it.
struct Published {
  std::int64_t first = 0;  // numbers first..last
  std::int64_t last = 0;
  std::map<wire::Role, std::vector<wire::Row>> rows;
};

/// Where the ledger's results go; called on the ledger thread, must not block.
class Outgoing {
 public:
  virtual ~Outgoing() = default;
  virtual void send(ScreenId, wire::Message) = 0;
  virtual void publish(std::shared_ptr<const Published>) = 0;
};

/// Seams for the fault tests alone; a hub never sets them.
struct LedgerSeams {
  std::function<void(const std::string& command)> received;  // a command has reached the ledger
  std::function<void()> before_commit;                       // between the writes and COMMIT
  bool confirm_before_commit = false;                        // the wrong order, to see the test fail
};

class Ledger {
 public:
  Ledger(std::unique_ptr<store::Store>, const HubClock&, Outgoing&, LedgerSeams = {});
  ~Ledger();  // commits what waits, then ends
  Ledger(const Ledger&) = delete;
  Ledger& operator=(const Ledger&) = delete;

  /// Brings a running class back (held, where the machine restarted) and begins to work.
  void start();

  // From any thread:
  void tell(ScreenId, wire::Role, wire::Tell);
  void ask(ScreenId, wire::Role, wire::Ask, std::vector<ScreenFact> screens);
  void cancel(ScreenId, std::string question);
  void forget(ScreenId);  // it went: its questions are not wanted any more
  /// A screen said hello, or has taken what it got and wants more.
  void welcome(ScreenId, wire::Role, std::int64_t after);
  void more(ScreenId, wire::Role, std::int64_t after);

 private:
  struct TellJob {
    ScreenId screen = 0;
    wire::Role role = wire::Role::wall;
    wire::Tell tell;
    int tries = 0;
  };
  struct AskJob {
    ScreenId screen = 0;
    wire::Role role = wire::Role::wall;
    wire::Ask ask;
    std::vector<ScreenFact> screens;
    int tries = 0;
  };
  struct CancelJob {
    ScreenId screen = 0;
    std::string question;  // "": all of this screen
  };
  struct RowsJob {
    ScreenId screen = 0;
    wire::Role role = wire::Role::wall;
    std::int64_t after = 0;
    bool hello = false;
  };
  struct PlannedJob {
    std::uint64_t ticket = 0;
    PlanRequest request;
    PlanResult result;
  };
  struct UnderwayJob {
    std::uint64_t ticket = 0;
    Progress progress;
  };
  using Job = std::variant<TellJob, AskJob, CancelJob, RowsJob, PlannedJob, UnderwayJob>;
  using Waiting = std::variant<TellJob, AskJob>;  // for a plan

  void put(Job);
  void run();
  void work(std::deque<Job>);
  void commit(std::vector<TellJob>);
  /// One command within the transaction: its receipt, or why not. Nothing while a plan is made.
  std::optional<wire::Message> execute(TellJob&);
  std::int64_t write(const Change&, const wire::CommandKind&, std::optional<store::Uuid> command);
  void answer(AskJob);
  void planned(PlannedJob);
  void send_rows(const RowsJob&);
  void wait_for_plan(Waiting, PlanRequest);
  [[nodiscard]] Room room(store::Uuid command, wire::Role);
  void reload();
  bool recovered();
  void refuse_all(const std::deque<Job>&);
  void come_back();
  void pulse(bool in_transaction);
  [[nodiscard]] const wire::ClassView* clock_running() const;

  std::unique_ptr<store::Store> store_;
  const HubClock& clock_;
  Outgoing& outgoing_;
  const LedgerSeams seams_;
  const ExerciseTable& exercises_;
  wire::Hall hall_;
  PlanShelf plans_;
  std::map<std::uint64_t, Waiting> waiting_;  // by ticket
  std::uint64_t last_ticket_ = 0;
  std::shared_ptr<Published> fresh_;  // rows of the transaction under way
  std::int64_t started_boot_ms_ = 0;
  std::int64_t last_pulse_boot_ms_ = 0;
  bool failed_ = false;  // a write failed: the store is opened anew before anything else

  std::mutex mutex_;
  std::condition_variable wake_;
  std::deque<Job> queue_;
  bool stopping_ = false;
  std::unique_ptr<Planner> planner_;  // started and ended by the ledger's owner thread
  std::thread thread_;
};

}  // namespace floorwheel::hub
