// SPDX-License-Identifier: GPL-3.0-or-later
// No confirmed record is lost: the hub is killed 50 times while records arrive, each time at another moment,
// on a disk made slow. Afterwards every record that a screen saw confirmed is in the file. A
// kill tells something only where it falls between a command's arrival and its confirmation: at least one in
// five must. And the same test must find the loss in a hub that confirms before it commits.
#include <QJsonArray>
#include <QJsonDocument>
#include <QtTest>
#include <csignal>
#include <random>

#include "tests/kiosk/hub/hub_client.h"

using namespace floorwheel;
using namespace floorwheel::testing;
using wire::Role;

namespace {

constexpr int in_flight = 8;

struct Kill {
  QSet<QString> confirmed;
  QSet<QString> received;
  [[nodiscard]] bool between() const { return !(received - confirmed).isEmpty(); }
};

QSet<QString> kept(const QString& data) {
  QSet<QString> out;
  const QString all = sql(data, "SELECT group_concat(lower(hex(id))) FROM set_record").toString();
  for (const QString& id : all.split(',', Qt::SkipEmptyParts)) out.insert(id);
  return out;
}

QString set_up(const QString& data) {
  TestHub hub(data);
  if (!hub.listening()) qFatal("%s", qPrintable(hub.errors()));
  Screen teacher(hub.url(), Role::instructor);
  teacher.caught_up();
  const QString c = open_class(teacher);
  if (!publish(teacher, c, 0).done) qFatal("no run sheet");
  if (!hub.end()) qFatal("the hub does not end");
  return c;
}

/// Sends records without pause, kills the hub so long after the first confirmation, and hears the rest.
Kill kill_while_records_arrive(const QString& data, const QString& class_id, int after_ms,
                               const QStringList& more) {
  TestHub hub(data, QStringList{"--say-received", "--slow-commit", "4"} + more);
  if (!hub.listening()) qFatal("%s", qPrintable(hub.errors()));
  Screen touch(hub.url(), Role::touch);
  touch.caught_up();
  Kill k;
  QStringList sent;
  int heard = 0;
  const auto send = [&] {
    sent << Screen::new_id();
    const QJsonObject body{{"class", class_id}, {"member", "m02"}, {"station", "B"},
                           {"slot", 1},         {"done", true},    {"reps", static_cast<int>(sent.size())}};
    touch.send(wire::Message(wire::Tell{.id = sent.back().toStdString(),
                                        .kind = "record.add",
                                        .body = QJsonDocument(body).toJson().toStdString()}));
  };
  // One more for each confirmed, so that some are always under way; and the kill at any moment of that.
  QTimer kill_at;
  kill_at.setSingleShot(true);
  kill_at.setTimerType(Qt::PreciseTimer);
  QObject::connect(&kill_at, &QTimer::timeout, &touch.socket(),
                   [&hub] { ::kill(static_cast<pid_t>(hub.process().processId()), SIGKILL); });
  QObject::connect(&touch.socket(), &QWebSocket::textMessageReceived, &touch.socket(), [&] {
    for (; heard < sent.size() && touch.reply(sent[heard]); ++heard) {
      if (heard == 0) kill_at.start(after_ms);
      send();
    }
  });
  for (int i = 0; i < in_flight; ++i) send();
  wait_until([&] { return touch.socket().state() == QAbstractSocket::UnconnectedState; });
  hub.kill();
  for (const QString& id : sent)
    if (const auto r = touch.reply(id)) {
      if (!r->done) qFatal("%s", qPrintable(r->text));
      k.confirmed.insert(QString(id).remove('-'));
    }
  for (const QString& line : hub.lines())
    if (line.startsWith("received ")) k.received.insert(line.mid(9).remove('-'));
  return k;
}

}  // namespace

class TestKill : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void every_confirmed_record_survives_fifty_kills() {
    QTemporaryDir folder;
    const QString data = folder.path() + "/data";
    const QString c = set_up(data);
    std::mt19937 moments(20260305);
    int between = 0;
    int confirmed = 0;
    QSet<QString> all;
    for (int i = 0; i < 50; ++i) {
      const Kill k = kill_while_records_arrive(data, c, static_cast<int>(moments() % 40), {});
      QVERIFY(!k.confirmed.isEmpty());
      between += k.between() ? 1 : 0;
      confirmed += static_cast<int>(k.confirmed.size());
      all += k.confirmed;
      const QSet<QString> lost = k.confirmed - kept(data);
      QVERIFY2(lost.isEmpty(),
               qPrintable(QString("kill %1 lost %2 confirmed records").arg(i).arg(lost.size())));
    }
    QVERIFY((all - kept(data)).isEmpty());
    QCOMPARE(sql(data, "PRAGMA integrity_check").toString(), QString("ok"));
    QCOMPARE(sql(data, "SELECT max(seq) = count(*) FROM journal").toInt(), 1);
    QVERIFY2(between >= 10,
             qPrintable(QString("only %1 kills fell between receipt and confirmation").arg(between)));
    qInfo("50 kills, %d records confirmed, 0 lost, %d kills between receipt and confirmation", confirmed,
          between);
  }

  void a_hub_that_confirms_before_it_commits_is_found_out() {
    QTemporaryDir folder;
    const QString data = folder.path() + "/data";
    const QString c = set_up(data);
    std::mt19937 moments(20260306);
    int lost = 0;
    int kills = 0;
    for (; kills < 50 && lost == 0; ++kills) {
      const Kill k =
          kill_while_records_arrive(data, c, static_cast<int>(moments() % 40), {"--confirm-before-commit"});
      lost += static_cast<int>((k.confirmed - kept(data)).size());
    }
    QVERIFY2(lost > 0, "the control build lost nothing: the test above proves nothing");
    qInfo("control build: %d confirmed records lost after %d kills", lost, kills);
  }
};

QTEST_GUILESS_MAIN(TestKill)
#include "tst_kill.moc"
