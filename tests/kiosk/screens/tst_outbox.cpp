// SPDX-License-Identifier: GPL-3.0-or-later
// The outbox on disk: what was put is there after any end of the process, in order, until it is confirmed.
#include <QFile>
#include <QTemporaryDir>
#include <QtTest>

#include "kiosk/screens/outbox.h"

using floorwheel::screens::Outbox;

namespace {
Outbox::Entry entry(int n) {
  return {QStringLiteral("id-%1").arg(n), QStringLiteral("check_in"), {{QStringLiteral("member"), n}}};
}
QStringList ids(const Outbox& box) {
  QStringList all;
  for (const Outbox::Entry& e : box.entries()) all.append(e.id);
  return all;
}
QByteArray bytes_of(const QString& file) {
  QFile f(file);
  return f.open(QIODevice::ReadOnly) ? f.readAll() : QByteArray("no file");
}
}  // namespace

class TestOutbox : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void what_was_put_is_there_after_a_restart_in_order() {
    QTemporaryDir dir;
    {
      Outbox box;
      QCOMPARE(box.open(dir.path()), QString());
      for (int n = 1; n <= 3; ++n) QVERIFY(box.put(entry(n)));
      box.confirmed(QStringLiteral("id-2"));
    }
    Outbox again;
    QCOMPARE(again.open(dir.path()), QString());
    QCOMPARE(ids(again), (QStringList{QStringLiteral("id-1"), QStringLiteral("id-3")}));
    QCOMPARE(again.entries().last().body, entry(3).body);
    QCOMPARE(again.entries().last().kind, QStringLiteral("check_in"));
  }

  void a_line_cut_short_is_ignored_and_swallows_nothing_later() {
    QTemporaryDir dir;
    {
      Outbox box;
      QCOMPARE(box.open(dir.path()), QString());
      QVERIFY(box.put(entry(1)));
    }
    QFile file(dir.filePath(QStringLiteral("outbox.jsonl")));
    QVERIFY(file.open(QIODevice::Append));
    file.write("{\"put\":\"id-2\",\"ki");
    file.close();
    {
      Outbox box;
      QCOMPARE(box.open(dir.path()), QString());
      QCOMPARE(ids(box), QStringList{QStringLiteral("id-1")});
      QVERIFY(box.put(entry(3)));
    }
    Outbox again;
    QCOMPARE(again.open(dir.path()), QString());
    QCOMPARE(ids(again), (QStringList{QStringLiteral("id-1"), QStringLiteral("id-3")}));
  }

  void the_file_is_written_anew_when_most_of_it_is_gone() {
    QTemporaryDir dir;
    Outbox box;
    QCOMPARE(box.open(dir.path()), QString());
    QVERIFY(box.put(entry(0)));
    for (int n = 1; n <= 65; ++n) {
      QVERIFY(box.put(entry(n)));
      box.confirmed(entry(n).id);
    }
    QCOMPARE(bytes_of(dir.filePath(QStringLiteral("outbox.jsonl"))).count('\n'), 1);
    QVERIFY(box.put(entry(66)));
    QCOMPARE(bytes_of(dir.filePath(QStringLiteral("outbox.jsonl"))).count('\n'), 2);
    QVERIFY(!QFile::exists(dir.filePath(QStringLiteral("outbox.jsonl.new"))));
  }

  void what_the_hub_refused_is_kept_to_be_looked_at() {
    QTemporaryDir dir;
    Outbox box;
    QCOMPARE(box.open(dir.path()), QString());
    QVERIFY(box.put(entry(7)));
    box.refused(QStringLiteral("id-7"), QStringLiteral("not_found"), QStringLiteral("no such class"));
    QVERIFY(box.entries().isEmpty());
    QVERIFY(bytes_of(dir.filePath(QStringLiteral("refused.jsonl"))).contains("no such class"));
  }

  void two_screens_cannot_share_one_outbox() {
    QTemporaryDir dir;
    Outbox one;
    QCOMPARE(one.open(dir.path()), QString());
    Outbox two;
    QVERIFY(two.open(dir.path()).contains(QStringLiteral("--state")));
    QVERIFY(!two.put(entry(1)));
  }

  void a_full_disk_keeps_nothing_and_says_so() {
    // /dev/full answers every write with 'no space left'.
    QTemporaryDir dir;
    QVERIFY(QFile::link(QStringLiteral("/dev/full"), dir.filePath(QStringLiteral("outbox.jsonl"))));
    Outbox box;
    box.open(dir.path());
    QVERIFY(!box.put(entry(1)));
    QVERIFY(box.entries().isEmpty());
  }
};

QTEST_GUILESS_MAIN(TestOutbox)
#include "tst_outbox.moc"
