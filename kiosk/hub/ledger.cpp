// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/hub/ledger.h"

#include <spdlog/spdlog.h>

#include <array>
#include <filesystem>

#include "kiosk/files/exercise_table.h"
#include "kiosk/hub/hub.h"

namespace floorwheel::hub {
namespace json = boost::json;
using wire::Message;
using wire::Running;
using wire::Trouble;
namespace {

constexpr std::int64_t pulse_every_ms = 5000;
constexpr int most_tries = 5;  // a class that changes faster than it can be planned
constexpr int rows_at_once = 500;
constexpr std::size_t bytes_at_once = std::size_t{256} << 10;
constexpr std::array roles{wire::Role::wall, wire::Role::touch, wire::Role::instructor, wire::Role::desk,
                           wire::Role::tool};

Trouble trouble(const std::string& id, std::string code, std::string text, std::string hint) {
  return {.id = id, .code = std::move(code), .text = std::move(text), .hint = std::move(hint), .body = "{}"};
}

Trouble busy(const std::string& id) {
  return trouble(id, "busy", "The class changes faster than it can be planned.", "Try again in a moment.");
}

Trouble store_failed(const std::string& id, const std::string& what) {
  return trouble(id, "store", "The hub cannot write its database: " + what + ".",
                 "Nothing was changed. Check the disk of the hub's machine, then try again.");
}

template <class Kinds>
std::string kinds_in_words(const Kinds& kinds) {
  std::string all;
  for (const auto& k : kinds) all += (all.empty() ? "" : ", ") + std::string(k.kind);
  return all;
}

}  // namespace

Ledger::Ledger(std::unique_ptr<store::Store> store, const HubClock& clock, Outgoing& outgoing,
               LedgerSeams seams)
    : store_(std::move(store)),
      clock_(clock),
      outgoing_(outgoing),
      seams_(std::move(seams)),
      exercises_(files::shipped_exercises()),
      started_boot_ms_(clock.machine().boot_ms()) {}

Ledger::~Ledger() {
  {
    const std::lock_guard lock(mutex_);
    stopping_ = true;
  }
  wake_.notify_all();
  if (thread_.joinable()) thread_.join();
  planner_.reset();
}

void Ledger::start() {
  reload();
  come_back();
  planner_ = std::make_unique<Planner>(
      [this](std::uint64_t ticket, const PlanRequest& request, PlanResult result) {
        put(PlannedJob{.ticket = ticket, .request = request, .result = std::move(result)});
      },
      [this](std::uint64_t ticket, const Progress& p) { put(UnderwayJob{.ticket = ticket, .progress = p}); });
  thread_ = std::thread([this] { run(); });
}

void Ledger::tell(ScreenId screen, wire::Role role, wire::Tell t) {
  put(TellJob{.screen = screen, .role = role, .tell = std::move(t)});
}
void Ledger::ask(ScreenId screen, wire::Role role, wire::Ask a, std::vector<ScreenFact> screens) {
  put(AskJob{.screen = screen, .role = role, .ask = std::move(a), .screens = std::move(screens)});
}
void Ledger::cancel(ScreenId screen, std::string question) {
  put(CancelJob{.screen = screen, .question = std::move(question)});
}
void Ledger::forget(ScreenId screen) { put(CancelJob{.screen = screen, .question = {}}); }
void Ledger::welcome(ScreenId screen, wire::Role role, std::int64_t after) {
  put(RowsJob{.screen = screen, .role = role, .after = after, .hello = true});
}
void Ledger::more(ScreenId screen, wire::Role role, std::int64_t after) {
  put(RowsJob{.screen = screen, .role = role, .after = after, .hello = false});
}

void Ledger::put(Job job) {
  {
    const std::lock_guard lock(mutex_);
    queue_.push_back(std::move(job));
  }
  wake_.notify_one();
}

void Ledger::run() {
  while (true) {
    std::deque<Job> jobs;
    bool last = false;
    {
      std::unique_lock lock(mutex_);
      // The machine's clock may be an injected one: look at it once a second at least.
      wake_.wait_for(lock, std::chrono::seconds(1), [this] { return stopping_ || !queue_.empty(); });
      jobs.swap(queue_);
      last = stopping_;
    }
    work(std::move(jobs));
    if (last) break;
    if (!failed_ && clock_running() && clock_.machine().boot_ms() - last_pulse_boot_ms_ >= pulse_every_ms) {
      try {
        pulse(false);
      } catch (const store::SqlError& e) {
        spdlog::error("hub: the pulse was not written: {}", e.what());
      }
    }
  }
}

/// After a failed write the connection is not trusted: it is opened and read anew before anything goes on.
bool Ledger::recovered() {
  if (!failed_) return true;
  try {
    store_->reopen();
    reload();
    failed_ = false;
  } catch (const store::SqlError& e) {
    spdlog::error("hub: the database cannot be opened again: {}", e.what());
  }
  return !failed_;
}

void Ledger::refuse_all(const std::deque<Job>& jobs) {
  const std::string why = "it failed before and cannot be opened again";
  for (const Job& j : jobs) {
    if (const auto* t = std::get_if<TellJob>(&j)) outgoing_.send(t->screen, store_failed(t->tell.id, why));
    if (const auto* a = std::get_if<AskJob>(&j)) outgoing_.send(a->screen, store_failed(a->ask.id, why));
    if (const auto* r = std::get_if<RowsJob>(&j)) outgoing_.send(r->screen, store_failed("", why));
  }
}

void Ledger::work(std::deque<Job> jobs) {
  if (!recovered()) return refuse_all(jobs);
  std::vector<TellJob> tells;
  for (Job& j : jobs)
    if (auto* t = std::get_if<TellJob>(&j)) tells.push_back(std::move(*t));
  if (!tells.empty()) commit(std::move(tells));
  for (Job& j : jobs) {
    try {
      if (auto* a = std::get_if<AskJob>(&j)) answer(std::move(*a));
      if (auto* r = std::get_if<RowsJob>(&j)) send_rows(*r);
      if (auto* p = std::get_if<PlannedJob>(&j)) planned(std::move(*p));
      if (auto* c = std::get_if<CancelJob>(&j))
        std::erase_if(waiting_, [&](const auto& entry) {
          const auto* w = std::get_if<AskJob>(&entry.second);
          const bool gone = w && w->screen == c->screen && (c->question.empty() || w->ask.id == c->question);
          if (gone && planner_) planner_->cancel(entry.first);
          return gone;
        });
      if (auto* u = std::get_if<UnderwayJob>(&j))
        if (const auto w = waiting_.find(u->ticket); w != waiting_.end())
          if (const auto* a = std::get_if<AskJob>(&w->second))
            outgoing_.send(a->screen, wire::Underway{.id = a->ask.id,
                                                     .body = json::serialize(json::object{
                                                         {"best", wire::json_of(u->progress.best, true)},
                                                         {"bound", wire::json_of(u->progress.bound, true)},
                                                         {"steps", u->progress.steps},
                                                         {"steps_max", u->progress.steps_max}})});
    } catch (const store::SqlError& e) {
      spdlog::error("hub: reading the store: {}", e.what());
    }
  }
}

Room Ledger::room(store::Uuid command, wire::Role role) {
  const std::int64_t civil = clock_.civil_ms();
  return Room{.database = store_->database(),
              .hall = hall_,
              .exercises = exercises_,
              .plans = plans_,
              .command = command,
              .at_ms = clock_.class_ms(),
              .now = {.ms = civil, .utc_offset_s = clock_.machine().utc_offset_s(civil)},
              .health = {},
              .role = role,
              .folder = std::filesystem::path(store_->path()).parent_path().string()};
}

void Ledger::commit(std::vector<TellJob> tells) {
  std::vector<std::pair<ScreenId, Message>> replies;
  fresh_ = std::make_shared<Published>();
  fresh_->first = hall_.reached + 1;
  try {
    store::Transaction transaction(store_->database());
    for (TellJob& t : tells) {
      if (seams_.received) seams_.received(t.tell.id);
      const ScreenId screen = t.screen;
      if (auto reply = execute(t)) replies.emplace_back(screen, *std::move(reply));
    }
    if (!fresh_->rows.empty()) pulse(true);
    if (seams_.confirm_before_commit)
      for (const auto& [screen, message] : replies) outgoing_.send(screen, message);
    if (seams_.before_commit) seams_.before_commit();
    transaction.commit();
  } catch (const store::SqlError& e) {
    spdlog::error("hub: nothing of this batch was kept: {}", e.what());
    for (const TellJob& t : tells)
      if (!t.tell.id.empty()) outgoing_.send(t.screen, store_failed(t.tell.id, e.what()));  // else: it waits
    failed_ = true;
    return;
  }
  fresh_->last = hall_.reached;
  if (fresh_->last >= fresh_->first) outgoing_.publish(fresh_);
  if (!seams_.confirm_before_commit)
    for (auto& [screen, message] : replies) outgoing_.send(screen, std::move(message));
}

std::optional<Message> Ledger::execute(TellJob& job) {
  const wire::Tell& tell = job.tell;
  const auto id = store::uuid_from(tell.id);
  if (!id)
    return trouble(tell.id, "bad_body", "The command's id is not a UUID.",
                   "Make one of 36 characters for each command.");
  const wire::CommandKind* kind = wire::find_command(tell.kind);
  const CommandFunction function = command_function(tell.kind);
  if (!kind || !function)
    return trouble(tell.id, "unknown_kind", "The command '" + tell.kind + "' is not known.",
                   "Known are: " + kinds_in_words(wire::command_kinds()) + ".");
  const json::object body = wire::object_from(tell.body);
  const std::int64_t digest = store::digest_of(tell.kind, json::serialize(body));
  store::Database& db = store_->database();
  if (const auto kept = store::find_receipt(db, *id)) {
    if (kept->digest != digest)
      return trouble(tell.id, "refused", "Another command came under this id before.",
                     "Make a new id for each command; repeat one only with the same kind and body.");
    return wire::Receipt{.id = tell.id, .seq = kept->seq, .body = kept->body};
  }
  try {
    store::Savepoint part(db);
    Room r = room(*id, job.role);
    Outcome outcome = function(r, Fields(body, kind->fields));
    if (auto* needs = std::get_if<NeedsPlan>(&outcome)) {
      if (++job.tries > most_tries) return busy(tell.id);
      wait_for_plan(std::move(job), std::move(needs->request));
      return {};
    }
    store::KeptReceipt receipt{.digest = digest, .seq = hall_.reached, .body = {}};
    if (const auto* same = std::get_if<Already>(&outcome)) {
      receipt.body = json::serialize(same->receipt);
    } else {
      const auto& change = std::get<Change>(outcome);
      receipt.seq = write(change, *kind, *id);
      receipt.body = json::serialize(change.receipt);
    }
    store::keep_receipt(db, *id, receipt);
    part.keep();
    return wire::Receipt{.id = tell.id, .seq = receipt.seq, .body = receipt.body};
  } catch (Refused& refused) {
    refused.trouble.id = tell.id;
    return std::move(refused.trouble);
  }
}

std::int64_t Ledger::write(const Change& change, const wire::CommandKind& kind,
                           std::optional<store::Uuid> command) {
  const store::JournalRow row{.command = command,
                              .at_ms = clock_.class_ms(),
                              .civil_ms = clock_.civil_ms(),
                              .kind = std::string(kind.kind),
                              .audience = kind.audience,
                              .class_id = change.class_id,
                              .body = json::serialize(change.body),
                              .words = change.words};
  const std::int64_t seq = store::append(store_->database(), row);
  if (change.write) change.write(store_->database(), seq);
  for (const wire::Role role : roles)
    if (auto seen = store::row_for(row, seq, role)) {
      if (role == wire::Role::tool) wire::fold(hall_, *seen);
      fresh_->rows[role].push_back(*std::move(seen));
    }
  return seq;
}

void Ledger::wait_for_plan(Waiting job, PlanRequest request) {
  const std::uint64_t ticket = ++last_ticket_;
  waiting_.emplace(ticket, std::move(job));
  if (planner_) planner_->ask(ticket, std::move(request));
}

void Ledger::planned(PlannedJob done) {
  const auto found = waiting_.find(done.ticket);
  if (found == waiting_.end()) return;
  Waiting job = std::move(found->second);
  waiting_.erase(found);
  plans_.keep(std::move(done.request), std::move(done.result));
  // The same question is asked again: if the class has changed since, it finds no such plan and waits anew.
  if (auto* t = std::get_if<TellJob>(&job)) {
    std::vector<TellJob> one;
    one.push_back(std::move(*t));
    commit(std::move(one));
  } else {
    answer(std::get<AskJob>(std::move(job)));
  }
}

void Ledger::answer(AskJob job) {
  const wire::QuestionKind* kind = wire::find_question(job.ask.kind);
  const QuestionFunction function = question_function(job.ask.kind);
  if (!kind || !function) {
    outgoing_.send(job.screen,
                   trouble(job.ask.id, "unknown_kind", "The question '" + job.ask.kind + "' is not known.",
                           "Known are: " + kinds_in_words(wire::question_kinds()) + "."));
    return;
  }
  if (!kind->audience.contains(job.role)) {
    outgoing_.send(job.screen,
                   trouble(job.ask.id, "refused",
                           "The question '" + job.ask.kind + "' is not for a screen of the role '" +
                               std::string(id_of(job.role)) + "'.",
                           "Ask it on another screen."));
    return;
  }
  try {
    Room r = room({}, job.role);
    if (job.ask.kind == "health") {
      json::array screens;
      for (const ScreenFact& s : job.screens)
        screens.push_back({{"role", id_of(s.role)}, {"reached", s.reached}});
      r.health = {{"version", FLOORWHEEL_VERSION},
                  {"database", store_->path()},
                  {"wal_bytes", store_->wal_bytes()},
                  {"screens", screens},
                  {"speed", clock_.speed()},
                  {"uptime_s", (clock_.machine().boot_ms() - started_boot_ms_) / 1000}};
    }
    const json::object body = wire::object_from(job.ask.body);
    AnswerOrPlan result = function(r, Fields(body, kind->fields));
    if (auto* needs = std::get_if<NeedsPlan>(&result)) {
      if (++job.tries > most_tries)
        outgoing_.send(job.screen, busy(job.ask.id));
      else
        wait_for_plan(std::move(job), std::move(needs->request));
      return;
    }
    outgoing_.send(job.screen,
                   wire::Answer{.id = job.ask.id, .body = json::serialize(std::get<json::object>(result))});
  } catch (Refused& refused) {
    refused.trouble.id = job.ask.id;
    outgoing_.send(job.screen, std::move(refused.trouble));
  } catch (const store::SqlError& e) {
    outgoing_.send(job.screen, store_failed(job.ask.id, e.what()));
  }
}

void Ledger::send_rows(const RowsJob& job) {
  if (job.hello)
    outgoing_.send(job.screen, wire::Welcome{.hub = store::text_of(store_->hub_id()),
                                             .journal = hall_.reached,
                                             .hub_boot_ms = clock_.machine().boot_ms(),
                                             .civil_ms = clock_.civil_ms(),
                                             .speed = clock_.speed(),
                                             .utc_offset_s = clock_.utc_offset_s()});
  store::Stretch s = store::rows_after(store_->database(), job.role, job.after, rows_at_once, bytes_at_once);
  outgoing_.send(job.screen, wire::Rows{.rows = std::move(s.rows), .reached = s.reached});
}

const wire::ClassView* Ledger::clock_running() const {
  const wire::ClassView* c = wire::current_class(hall_);
  return c && c->clock.state != Running::not_started && c->clock.state != Running::over ? c : nullptr;
}

void Ledger::pulse(bool in_transaction) {
  std::optional<store::Transaction> own;
  if (!in_transaction) own.emplace(store_->database());
  if (const wire::ClassView* c = clock_running())
    store::keep_pulse(store_->database(),
                      {.class_id = id_of_class(*c),
                       .boot_id = clock_.machine().boot_id(),
                       .speed = clock_.speed(),
                       .elapsed_ms = wire::moment_at(c->clock, clock_.class_ms()).elapsed_ms,
                       .civil_ms = clock_.civil_ms()});
  else
    store::drop_pulse(store_->database());
  if (own) own->commit();
  last_pulse_boot_ms_ = clock_.machine().boot_ms();
}

void Ledger::come_back() {
  const auto last = store::find_pulse(store_->database());
  const wire::ClassView* c = clock_running();
  if (!last || !c || id_of_class(*c) != last->class_id) return;
  if (last->boot_id == clock_.machine().boot_id() && last->speed == clock_.speed()) return;
  // Another boot (or another factor): earlier readings of the class clock mean nothing now.
  Change held;
  held.class_id = last->class_id;
  held.body = {{"class", c->id}, {"power_cut", true}, {"elapsed_ms", last->elapsed_ms}};
  fresh_ = std::make_shared<Published>();
  store::Transaction transaction(store_->database());
  write(held, *wire::find_command("class.hold"), {});
  pulse(true);
  transaction.commit();
  spdlog::warn("hub: the machine restarted; the class is held at its last pulse");
}

void Ledger::reload() {
  hall_ = {};
  for (std::int64_t after = 0;;) {
    const store::Stretch s =
        store::rows_after(store_->database(), wire::Role::tool, after, rows_at_once, bytes_at_once);
    for (const wire::Row& row : s.rows) wire::fold(hall_, row);
    if (s.reached == after) break;
    after = s.reached;
  }
}

}  // namespace floorwheel::hub
