// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/touch_kept.h"

#include <QStringList>
#include <algorithm>
#include <chrono>
#include <utility>

namespace floorwheel::screens {
namespace {

using namespace std::chrono_literals;
constexpr std::chrono::milliseconds undo_time = 8s;

QString q(const std::string& s) { return QString::fromStdString(s); }

void add_values(QJsonObject& body, const wire::SetRecord& r) {
  body["done"] = r.done;
  if (!r.done) return;
  if (r.load_hg) body["load_hg"] = *r.load_hg;
  body["reps"] = r.reps;
  if (r.rir) body["rir"] = *r.rir;
}

}  // namespace

QString trouble_line(const QString& text, const QString& hint) {
  const auto sentence = [](const QString& s) {
    return s.isEmpty() || s.endsWith(QLatin1Char('.')) ? s : s + QLatin1Char('.');
  };
  return QStringList{sentence(text), sentence(hint)}.join(QLatin1Char(' ')).trimmed();
}

TouchKept::TouchKept(Tell tell, QObject* parent) : QObject(parent), tell_(std::move(tell)) {
  line_.setSingleShot(true);
  line_.setInterval(undo_time);
  connect(&line_, &QTimer::timeout, this, [this] {
    last_.reset();
    say({}, {});
  });
}

void TouchKept::check_in(const std::string& class_id, const std::string& member, const QString& alias) {
  const Key key{class_id, member, 0};
  send(key, {.alias = alias, .here = true}, "check_in", {{"class", q(class_id)}, {"member", q(member)}});
  last_ = Undoable{key, {}, {}};
  say("check_in", alias);
}

void TouchKept::not_me() {
  if (last_ && last_->record.isEmpty()) undo();
}

void TouchKept::keep(const wire::ClassView& c, wire::SetRecord r, const QString& alias) {
  const Key key{c.id, r.member, r.slot};
  std::optional<wire::SetRecord> before;
  if (const auto* b = record_of(c, r.member, r.slot)) before = *b;

  QJsonObject body;
  if (before) {
    body["record"] = q(before->id);
  } else {
    body = {{"class", q(c.id)},
            {"member", q(r.member)},
            {"station", q(r.station)},
            {"slot", r.slot},
            {"exercise", q(r.exercise)}};
  }
  add_values(body, r);
  const bool done = r.done;
  const QString id =
      send(key, {.alias = alias, .record = std::move(r)}, before ? "record.correct" : "record.add", body);
  last_ = Undoable{key, id, before};
  say(done ? "record" : "not_done", alias);
}

const wire::SetRecord* TouchKept::record_of(const wire::ClassView& c, const std::string& member,
                                            int slot) const {
  if (const auto at = pending_.find({c.id, member, slot}); at != pending_.end()) return &at->second.record;
  const auto at = c.records.find({member, slot});
  return at == c.records.end() ? nullptr : &at->second;
}

bool TouchKept::here(const wire::ClassView& c, const wire::MemberView& m) const {
  const auto at = pending_.find({c.id, m.id, 0});
  return at == pending_.end() ? m.here : at->second.here;
}

void TouchKept::undo() {
  if (!last_) return;
  const Undoable u = *std::exchange(last_, {});
  const auto& [class_id, member, slot] = u.key;
  const QString alias = alias_;
  if (u.record.isEmpty()) {
    send(u.key, {.alias = alias, .here = false}, "check_in.undo",
         {{"class", q(class_id)}, {"member", q(member)}});
  } else {
    // Both records stay in the journal; what counted before counts again.
    wire::SetRecord r;
    if (u.before)
      r = *u.before;
    else
      r.done = false;
    r.member = member;
    r.slot = slot;
    QJsonObject body{{"record", u.record}};
    add_values(body, r);
    send(u.key, {.alias = alias, .record = r}, "record.correct", body);
  }
  say("undone", alias);
}

void TouchKept::on_receipt(const QString& id, qint64 seq) {
  for (auto& [key, p] : pending_)
    if (p.id == id) p.seq = seq;
}

void TouchKept::on_refused(const QString& id, const QString& text, const QString& hint) {
  const auto at = std::ranges::find_if(pending_, [&](const auto& p) { return p.second.id == id; });
  if (at == pending_.end()) return;
  const QString alias = at->second.alias;
  pending_.erase(at);
  last_.reset();
  trouble_ = trouble_line(text, hint);
  say("refused", alias);
  Q_EMIT told();
}

void TouchKept::on_hall(qint64 reached) {
  if (std::erase_if(pending_, [&](const auto& p) { return p.second.seq > 0 && p.second.seq <= reached; }) > 0)
    Q_EMIT told();
}

void TouchKept::setLineMs(int ms) {
  line_.setInterval(ms);
  Q_EMIT changed();
}

QString TouchKept::send(const Key& key, Pending p, const QString& kind, const QJsonObject& body) {
  p.id = tell_(kind, body);
  p.record.id = p.id.toStdString();
  const QString id = p.id;
  pending_[key] = std::move(p);
  Q_EMIT told();
  return id;
}

void TouchKept::say(const QString& what, const QString& alias) {
  what_ = what;
  alias_ = alias;
  if (what.isEmpty())
    line_.stop();
  else
    line_.start();
  Q_EMIT changed();
}

}  // namespace floorwheel::screens
