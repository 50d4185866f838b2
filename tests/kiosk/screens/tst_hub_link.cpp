// SPDX-License-Identifier: GPL-3.0-or-later
// The link against the real hub: it connects by itself, catches up after a break, loses nothing that was
// recorded, and its class clock goes on without the hub.
#include <QProcess>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QtTest>
#include <cstdlib>

#include "kiosk/screens/hub_link.h"
#include "kiosk/screens/link_clock.h"
#include "tests/support/hub_process.h"

using floorwheel::screens::HubLink;
using floorwheel::screens::mono_now_ms;
using floorwheel::tests::HubProcess;
using floorwheel::tests::small_class_toml;
namespace wire = floorwheel::wire;

namespace {

constexpr int patience_ms = 20000;

// A hub with one class of our own in it, open for check-in.
class Floor : public HubProcess {
 public:
  bool begin(int members, double speed = 1) {
    if (!start(speed)) return false;
    class_id = tell(QStringLiteral("class.add"), {{QStringLiteral("toml"), small_class_toml(4, members)}})
                   .value(QLatin1String("body"))
                   .toObject()
                   .value(QLatin1String("class"))
                   .toString();
    if (class_id.isEmpty()) return false;
    return !tell(QStringLiteral("class.open"), {{QStringLiteral("class"), class_id}})
                .contains(QLatin1String("text"));
  }
  [[nodiscard]] QJsonObject member(int n) const {
    return {{QStringLiteral("class"), class_id}, {QStringLiteral("member"), QStringLiteral("m%1").arg(n)}};
  }
  QString class_id;
};

int here(const HubLink& link) {
  const wire::ClassView* c = wire::current_class(link.hall());
  if (c == nullptr) return -1;
  return static_cast<int>(
      std::count_if(c->members.begin(), c->members.end(), [](const auto& m) { return m.here; }));
}

}  // namespace

class TestHubLink : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void it_finds_a_hub_that_comes_later_and_folds_its_hall() {
    Floor hub;
    QVERIFY2(hub.begin(4), qPrintable(hub.trouble()));
    const QUrl url = hub.url();
    hub.stop();
    HubLink link(nullptr);
    link.start(url, wire::Role::touch);
    QVERIFY(!link.everConnected());
    QVERIFY2(hub.start(), qPrintable(hub.trouble()));
    QTRY_VERIFY_WITH_TIMEOUT(link.connected(), patience_ms);
    QTRY_COMPARE_WITH_TIMEOUT(here(link), 0, patience_ms);
    QCOMPARE(wire::current_class(link.hall())->members.size(), std::size_t{4});
    QCOMPARE(wire::current_class(link.hall())->stations.size(), std::size_t{4});
  }

  void after_a_break_it_catches_up_from_where_it_was() {
    Floor hub;
    QVERIFY2(hub.begin(4), qPrintable(hub.trouble()));
    HubLink link(nullptr);
    link.start(hub.url(), wire::Role::desk);
    QTRY_COMPARE_WITH_TIMEOUT(here(link), 0, patience_ms);
    const auto reached = link.hall().reached;
    hub.kill();
    QTRY_VERIFY_WITH_TIMEOUT(!link.connected(), patience_ms);
    QVERIFY(link.everConnected());
    QCOMPARE(here(link), 0);  // what it knew stays
    QVERIFY2(hub.start(), qPrintable(hub.trouble()));
    hub.tell(QStringLiteral("check_in"), hub.member(2));
    QTRY_COMPARE_WITH_TIMEOUT(here(link), 1, patience_ms);
    QVERIFY(link.hall().reached > reached);
    HubLink fresh(nullptr);
    fresh.start(hub.url(), wire::Role::desk);
    QTRY_COMPARE_WITH_TIMEOUT(here(fresh), 1, patience_ms);
    QTRY_VERIFY_WITH_TIMEOUT(fresh.hall() == link.hall(), patience_ms);  // the same path, the same hall
  }

  void what_was_recorded_while_the_hub_was_away_arrives_once() {
    Floor hub;
    QVERIFY2(hub.begin(4), qPrintable(hub.trouble()));
    QTemporaryDir state;
    HubLink link(nullptr);
    QCOMPARE(link.keep_outbox_in(state.path()), QString());
    link.start(hub.url(), wire::Role::touch);
    QTRY_COMPARE_WITH_TIMEOUT(here(link), 0, patience_ms);
    hub.kill();
    QTRY_VERIFY_WITH_TIMEOUT(!link.connected(), patience_ms);
    QSignalSpy receipts(&link, &HubLink::receipt);
    const QString id = link.tell(QStringLiteral("check_in"), hub.member(1));
    QCOMPARE(link.waiting(), 1);
    QVERIFY(link.waits(id));
    QVERIFY2(hub.start(), qPrintable(hub.trouble()));
    QTRY_COMPARE_WITH_TIMEOUT(link.waiting(), 0, patience_ms);
    QCOMPARE(receipts.count(), 1);
    QCOMPARE(receipts.first().first().toString(), id);
    QTRY_COMPARE_WITH_TIMEOUT(here(link), 1, patience_ms);
    QCOMPARE(hub.sql(QStringLiteral("SELECT count(*) FROM journal WHERE kind = 'check_in'"))
                 .value(0)
                 .value(0)
                 .toInt(),
             1);
  }

  void what_cannot_wait_is_refused_while_the_hub_is_away() {
    HubLink link(nullptr);
    link.start(QUrl(QStringLiteral("ws://127.0.0.1:1")), wire::Role::instructor);
    QSignalSpy refused(&link, &HubLink::refused);
    const QString id =
        link.tell(QStringLiteral("class.hold"), {{QStringLiteral("class"), QStringLiteral("x")}});
    QCOMPARE(refused.count(), 0);  // the caller knows the id first
    QTRY_COMPARE(refused.count(), 1);
    QCOMPARE(refused.first().at(0).toString(), id);
    QCOMPARE(refused.first().at(1).toString(), QStringLiteral("away"));
  }

  void a_refused_command_says_why() {
    Floor hub;
    QVERIFY2(hub.begin(4), qPrintable(hub.trouble()));
    HubLink link(nullptr);
    link.start(hub.url(), wire::Role::touch);
    QTRY_COMPARE_WITH_TIMEOUT(here(link), 0, patience_ms);
    QSignalSpy refused(&link, &HubLink::refused);
    const QString id = link.tell(
        QStringLiteral("check_in"),
        {{QStringLiteral("class"), hub.class_id}, {QStringLiteral("member"), QStringLiteral("nobody")}});
    QTRY_COMPARE_WITH_TIMEOUT(refused.count(), 1, patience_ms);
    QCOMPARE(refused.first().at(0).toString(), id);
    QVERIFY(!refused.first().at(2).toString().isEmpty());
  }

  void the_class_clock_is_the_hubs_and_goes_on_without_it() {
    Floor hub;
    QVERIFY2(hub.begin(4, 50), qPrintable(hub.trouble()));
    HubLink link(nullptr);
    link.start(hub.url(), wire::Role::wall);
    QTRY_COMPARE_WITH_TIMEOUT(here(link), 0, patience_ms);
    QCOMPARE(link.speed(), 50.0);
    // Hub and link share this machine's boot clock here, so the true offset is 0.
    QTRY_VERIFY_WITH_TIMEOUT(std::llabs(link.classNowMs() - 50 * mono_now_ms()) <= 50 * 20, patience_ms);
    hub.kill();
    QTRY_VERIFY_WITH_TIMEOUT(!link.connected(), patience_ms);
    const qint64 then = link.classNowMs();
    QTRY_VERIFY_WITH_TIMEOUT(link.classNowMs() >= then + 50 * 100, patience_ms);
  }

  void a_killed_screens_records_are_all_there_when_it_comes_back() {
    constexpr int count = 40;
    Floor hub;
    QVERIFY2(hub.begin(count), qPrintable(hub.trouble()));
    hub.kill();
    QTemporaryDir state;
    QProcess screen;
    screen.start(QCoreApplication::applicationDirPath() + QStringLiteral("/record_and_wait"),
                 {state.path(), hub.url().toString(), hub.class_id, QString::number(count)});
    QStringList kept;
    while (kept.size() < count / 2) {
      QVERIFY(screen.waitForReadyRead(patience_ms));
      while (screen.canReadLine())
        kept.append(QString::fromUtf8(screen.readLine()).trimmed().section(QLatin1Char(' '), 1));
    }
    screen.kill();  // SIGKILL, in the midst of it
    QVERIFY(screen.waitForFinished(patience_ms));
    while (screen.canReadLine())
      kept.append(QString::fromUtf8(screen.readLine()).trimmed().section(QLatin1Char(' '), 1));

    QVERIFY2(hub.start(), qPrintable(hub.trouble()));
    HubLink again(nullptr);
    QSignalSpy receipts(&again, &HubLink::receipt);
    QCOMPARE(again.keep_outbox_in(state.path()), QString());
    QVERIFY(again.waiting() >= static_cast<int>(kept.size()));
    again.start(hub.url(), wire::Role::touch);
    QTRY_COMPARE_WITH_TIMEOUT(again.waiting(), 0, patience_ms);
    QSet<QString> confirmed;
    for (const QList<QVariant>& r : receipts) confirmed.insert(r.first().toString());
    for (const QString& id : kept) QVERIFY2(confirmed.contains(id), qPrintable(id));
    QCOMPARE(hub.sql(QStringLiteral("SELECT count(*) FROM journal WHERE kind = 'check_in'"))
                 .value(0)
                 .value(0)
                 .toInt(),
             static_cast<int>(confirmed.size()));
  }
};

QTEST_GUILESS_MAIN(TestHubLink)
#include "tst_hub_link.moc"
