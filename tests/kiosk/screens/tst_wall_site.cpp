// SPDX-License-Identifier: GPL-3.0-or-later
// The site's words: read whole or refused with place and what would be right; without a file no place and no
// number is claimed.
#include <QFile>
#include <QTemporaryDir>
#include <QTest>

#include "kiosk/screens/wall_site.h"

using namespace floorwheel::screens;

class TestWallSite : public QObject {
  Q_OBJECT
  QTemporaryDir folder_;

  WallSite read(const QByteArray& toml, QString* trouble) {
    QFile f(folder_.filePath(QStringLiteral("site.toml")));
    if (!f.open(QIODevice::WriteOnly)) qFatal("no temporary file");
    f.write(toml);
    f.close();
    return read_site(f.fileName(), trouble);
  }

 private Q_SLOTS:
  void the_demo_file_is_read() {
    QString trouble;
    const WallSite s = read_site(
        qEnvironmentVariable("FLOORWHEEL_SOURCE") + QStringLiteral("/config/demo/site.toml"), &trouble);
    QCOMPARE(trouble, QString());
    QCOMPARE(s.emergency.size(), std::size_t{4});
    QCOMPARE(s.last_words.size(), std::size_t{4});
    QCOMPARE(s.first_aid, 0);
  }
  void without_a_file_nothing_is_claimed() {
    const WallSite s = plain_site();
    QCOMPARE(s.first_aid, -1);
    for (const WallWord& w : s.emergency)
      for (QChar c : w.head + w.text) QVERIFY2(!c.isDigit(), "a number that nobody gave");
  }
  void wrong_files_are_refused_data() {
    QTest::addColumn<QByteArray>("toml");
    QTest::addColumn<QString>("says");
    QTest::newRow("not TOML") << QByteArray("keep = ") << ":1:";
    QTest::newRow("unknown key") << QByteArray("keeps = \"x\"") << ":1:1: unknown key 'keeps'";
    QTest::newRow("no text") << QByteArray("\n[[emergency]]\nhead = \"Call\"\n") << "'text' is missing";
    QTest::newRow("wrong kind") << QByteArray("keep = 3") << ":1:8: 'keep' is not a text";
    QTest::newRow("no list") << QByteArray("emergency = 3") << "write [[emergency]]";
    QByteArray five;
    for (int i = 0; i < 5; ++i) five += "[[last_word]]\nhead = \"a\"\ntext = \"b\"\n";
    QTest::newRow("too many") << five << "room for 4";
  }
  void wrong_files_are_refused() {
    QFETCH(QByteArray, toml);
    QFETCH(QString, says);
    QString trouble;
    const WallSite s = read(toml, &trouble);
    QVERIFY2(trouble.contains(says), qPrintable(trouble));
    QVERIFY(trouble.contains(QStringLiteral("site.toml")));
    QVERIFY(s.last_words == plain_site().last_words);
  }
  void a_missing_file_is_named() {
    QString trouble;
    read_site(folder_.filePath(QStringLiteral("none.toml")), &trouble);
    QVERIFY(trouble.contains(QStringLiteral("none.toml")));
  }
};

QTEST_GUILESS_MAIN(TestWallSite)
#include "tst_wall_site.moc"
