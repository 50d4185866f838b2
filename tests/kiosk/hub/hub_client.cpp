// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/kiosk/hub/hub_client.h"

#include <sqlite3.h>

#include <QCoreApplication>
#include <QDeadlineTimer>
#include <QEventLoop>
#include <QJsonDocument>
#include <QTimer>
#include <QUuid>

namespace floorwheel::testing {
namespace {

QJsonObject object(const std::string& text) {
  return QJsonDocument::fromJson(QByteArray::fromStdString(text)).object();
}
std::string text(const QJsonObject& o) {
  return QJsonDocument(o).toJson(QJsonDocument::Compact).toStdString();
}

}  // namespace

bool wait_until(const std::function<bool()>& fact, int most_ms) {
  // Each event is handled as it comes (qWaitFor sleeps between looks); the tick is for facts outside Qt.
  QTimer tick;
  tick.start(20);
  const QDeadlineTimer limit(most_ms);
  while (!fact()) {
    if (limit.hasExpired()) return false;
    QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
  }
  return true;
}

QString TestHub::program() { return QStringLiteral(FLOORWHEEL_HUB_UNDER_TEST); }

TestHub::TestHub(const QString& data, const QStringList& more) {
  QObject::connect(&process_, &QProcess::readyReadStandardOutput, &process_, [this] {
    while (process_.canReadLine()) {
      const QString line = QString::fromUtf8(process_.readLine()).trimmed();
      if (url_.isEmpty())
        url_ = "ws://" + QJsonDocument::fromJson(line.toUtf8()).object().value("listening").toString();
      else
        lines_ << line;
    }
  });
  QObject::connect(&process_, &QProcess::readyReadStandardError, &process_,
                   [this] { errors_ += QString::fromUtf8(process_.readAllStandardError()); });
  process_.start(program(), QStringList{"--data", data} + more);
  wait_until([this] { return listening() || process_.state() == QProcess::NotRunning; });
}

TestHub::~TestHub() {
  if (process_.state() != QProcess::NotRunning) kill();
}

void TestHub::kill() {
  process_.kill();
  process_.waitForFinished();
  process_.readAllStandardError();
  while (process_.canReadLine()) lines_ << QString::fromUtf8(process_.readLine()).trimmed();
}

bool TestHub::end() {
  process_.terminate();
  return wait_until([this] { return process_.state() == QProcess::NotRunning; }) &&
         process_.exitStatus() == QProcess::NormalExit && process_.exitCode() == 0;
}

Screen::Screen(const QUrl& hub, wire::Role role, qint64 after) {
  hall_.reached = reached_ = after;
  QObject::connect(&socket_, &QWebSocket::textMessageReceived, &socket_,
                   [this](const QString& f) { take(f); });
  QObject::connect(&socket_, &QWebSocket::connected, &socket_, [this, role, after] {
    send(wire::Message(wire::Hello{.role = role, .screen = new_id().toStdString(), .after = after}));
  });
  socket_.open(hub);
  if (!caught_up()) qFatal("the hub does not welcome a screen");
}

void Screen::take(const QString& frame) {
  frames_ << frame;
  auto decoded = wire::decode(frame.toStdString());
  if (!std::holds_alternative<wire::Message>(decoded)) qFatal("the hub sent %s", qPrintable(frame));
  const auto& message = std::get<wire::Message>(decoded);
  if (const auto* w = std::get_if<wire::Welcome>(&message)) welcome_ = *w;
  if (const auto* rows = std::get_if<wire::Rows>(&message)) {
    for (const wire::Row& r : rows->rows) {
      wire::fold(hall_, r);
      rows_ << r;
    }
    got_rows_ = true;
    reached_ = hall_.reached = std::max(hall_.reached, rows->reached);
  }
  if (const auto* r = std::get_if<wire::Receipt>(&message))
    replies_.insert(QString::fromStdString(r->id), {.done = true, .seq = r->seq, .body = object(r->body)});
  if (const auto* a = std::get_if<wire::Answer>(&message))
    replies_.insert(QString::fromStdString(a->id), {.done = true, .body = object(a->body)});
  if (const auto* t = std::get_if<wire::Trouble>(&message))
    replies_.insert(QString::fromStdString(t->id), {.body = object(t->body),
                                                    .code = QString::fromStdString(t->code),
                                                    .text = QString::fromStdString(t->text),
                                                    .hint = QString::fromStdString(t->hint)});
}

bool Screen::reach(qint64 seq) {
  return wait_until([this, seq] { return reached_ >= seq; });
}
bool Screen::caught_up() {
  // An empty journal is said in a frame of its own, too.
  return wait_until([this] { return welcome_ && got_rows_ && reached_ >= welcome_->journal; });
}

QString Screen::new_id() { return QUuid::createUuid().toString(QUuid::WithoutBraces); }

void Screen::send(const QString& text) { socket_.sendTextMessage(text); }

std::optional<Reply> Screen::reply(const QString& id) const {
  const auto found = replies_.find(id);
  return found == replies_.end() ? std::nullopt : std::optional(*found);
}

Reply Screen::tell(const QString& kind, const QJsonObject& body, const QString& id) {
  replies_.remove(id);
  send(wire::Message(wire::Tell{.id = id.toStdString(), .kind = kind.toStdString(), .body = text(body)}));
  if (!wait_until([&] { return reply(id).has_value(); })) return {.code = "no reply"};
  const Reply r = *reply(id);
  if (r.done) reach(r.seq);
  return r;
}

Reply Screen::ask(const QString& kind, const QJsonObject& body) {
  const QString id = new_id();
  send(wire::Message(wire::Ask{.id = id.toStdString(), .kind = kind.toStdString(), .body = text(body)}));
  return wait_until([&] { return reply(id).has_value(); }) ? *reply(id) : Reply{.code = "no reply"};
}

const wire::ClassView& Screen::the_class() const {
  if (hall_.classes.empty()) qFatal("no class has been folded");
  return hall_.classes.begin()->second;
}

QVariant sql(const QString& data, const QString& query) {
  sqlite3* db = nullptr;
  QVariant out;
  const QByteArray path = (data + "/floorwheel.db").toUtf8();
  if (sqlite3_open_v2(path.constData(), &db, SQLITE_OPEN_READONLY, nullptr) == SQLITE_OK) {
    sqlite3_busy_timeout(db, 5000);
    sqlite3_stmt* s = nullptr;
    if (sqlite3_prepare_v2(db, query.toUtf8().constData(), -1, &s, nullptr) != SQLITE_OK)
      qFatal("%s: %s", qPrintable(query), sqlite3_errmsg(db));
    if (sqlite3_step(s) == SQLITE_ROW) {
      if (sqlite3_column_type(s, 0) == SQLITE_INTEGER)
        out = static_cast<qlonglong>(sqlite3_column_int64(s, 0));
      else if (sqlite3_column_type(s, 0) == SQLITE_BLOB)
        out = QByteArray(static_cast<const char*>(sqlite3_column_blob(s, 0)), sqlite3_column_bytes(s, 0));
      else if (sqlite3_column_type(s, 0) != SQLITE_NULL)
        out = QString::fromUtf8(reinterpret_cast<const char*>(sqlite3_column_text(s, 0)));
    }
    sqlite3_finalize(s);
  }
  sqlite3_close(db);
  return out;
}

QString small_class() {
  return QStringLiteral(R"(
[class]
name = "Ring at the mill"
laps = 1
work_s = 40
change_s = 20
lead_in_s = 30
slots = 4

[[station]]
id = "A"
exercise = "goblet-squat"
substitutes = ["box-squat"]
capacity = 1
at = [0.0, 0.0]

[[station]]
id = "B"
exercise = "seated-row"
capacity = 1
at = [4.0, 0.0]

[[station]]
id = "C"
exercise = "press-up"
substitutes = ["band-chest-press"]
capacity = 1
at = [4.0, 3.0]

[[station]]
id = "D"
exercise = "bridge"
capacity = 1
at = [0.0, 3.0]

[[member]]
id = "m01"
shown_as = "Wren A."
level = "novice"
excluded_features = ["deep-knee"]
allowed_exercises = ["box-squat"]
loads_kg = { B = 20.0 }

[[member]]
id = "m02"
shown_as = "Teal B."
level = "advanced"

[[member]]
id = "m03"
shown_as = "Finch C."
level = "intermediate"

[[pair]]
members = ["m01", "m02"]
rule = "apart"
)");
}

QString open_class(Screen& instructor, const QString& toml) {
  const Reply added = instructor.tell("class.add", {{"toml", toml}});
  if (!added.done) qFatal("class.add: %s %s", qPrintable(added.text), qPrintable(added.hint));
  const QString id = added.body.value("class").toString();
  const Reply opened = instructor.tell("class.open", {{"class", id}});
  if (!opened.done) qFatal("class.open: %s", qPrintable(opened.text));
  return id;
}

Reply publish(Screen& instructor, const QString& class_id, int saw, int slots) {
  QJsonObject question{{"class", class_id}};
  if (slots > 0) question["slots"] = slots;
  const Reply proposal = instructor.ask("proposal", question);
  if (!proposal.done || !proposal.body.contains("proposal")) return proposal;
  return instructor.tell("class.publish",
                         {{"class", class_id}, {"saw", saw}, {"proposal", proposal.body.value("proposal")}});
}

}  // namespace floorwheel::testing
