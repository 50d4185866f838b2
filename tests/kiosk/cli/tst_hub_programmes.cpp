// SPDX-License-Identifier: GPL-3.0-or-later
// Programmes in a hub's data folder: their names, and that the hub's findings are those of `check --json` on
// the same file, for every programme of tests/kiosk/files/programmes. What cannot be read says where; a name
// leads nowhere but into the folder.
#include <QDir>
#include <QJsonArray>
#include <QJsonDocument>
#include <QTest>

#include "tests/kiosk/cli/program.h"
#include "tests/support/hub_process.h"

using floorwheel::tests::HubProcess;

class TestHubProgrammes : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void init() {
    hub_ = std::make_unique<HubProcess>();
    QVERIFY2(hub_->start(), qPrintable(hub_->trouble()));
  }
  void cleanup() { hub_.reset(); }

  void without_a_folder_there_are_none() {
    QCOMPARE(hub_->ask("programmes").value("programmes").toArray().size(), 0);
    const QJsonObject refused = hub_->ask("programme.check", {{"name", "none"}});
    QCOMPARE(refused.value("code").toInt(), 2);
    QVERIFY2(refused.value("text").toString().contains("folder 'programmes'"),
             qPrintable(refused.value("text").toString()));
  }

  void findings_are_those_of_the_command_line() {
    const QDir from(source_path("tests/kiosk/files/programmes"));
    QVERIFY(QDir(hub_->folder()).mkdir("programmes"));
    QStringList names;
    for (const QString& file : from.entryList({"*.programme.toml"}, QDir::Files, QDir::Name)) {
      QVERIFY(QFile::copy(from.filePath(file), in_folder(file)));
      names << file.chopped(QString(".programme.toml").size());
    }
    QCOMPARE(names.size(), 20);
    QStringList answered;
    for (const auto& n : hub_->ask("programmes").value("programmes").toArray()) answered << n.toString();
    QCOMPARE(answered, names);
    int findings = 0;
    for (const QString& name : names) {
      const Ran check = run_floorwheel({"check", in_folder(name + ".programme.toml"), "--json"});
      const QJsonArray expected = QJsonDocument::fromJson(check.out).object().value("findings").toArray();
      const QJsonObject answer = hub_->ask("programme.check", {{"name", name}});
      QVERIFY(answer.contains("findings"));
      QCOMPARE(answer.value("findings").toArray(), expected);
      findings += static_cast<int>(expected.size());
    }
    QVERIFY(findings > 20);
    QCOMPARE(hub_->ask("programme.check", {{"name", names[0]}}).value("title").toString(),
             QString("Two full-body days"));
  }

  void a_file_that_cannot_be_read_says_where() {
    QVERIFY(QDir(hub_->folder()).mkdir("programmes"));
    write_file(in_folder("broken.programme.toml"), "[programme]\nname = \"P\"\nlevel = \"novize\"\n");
    write_file(in_folder("torn.programme.toml"), "[programme\n");
    write_file(in_folder("huge.programme.toml"), "# " + QByteArray(1 << 20, 'x'));
    const auto error = [&](const char* name) {
      return hub_->ask("programme.check", {{"name", name}}).value("error").toString();
    };
    QVERIFY2(error("broken").startsWith("broken.programme.toml:3:9: "), qPrintable(error("broken")));
    QVERIFY2(error("broken").contains("novize"), qPrintable(error("broken")));
    QVERIFY2(error("torn").startsWith("torn.programme.toml:1:"), qPrintable(error("torn")));
    QVERIFY2(error("huge").startsWith("huge.programme.toml: is larger than 1 MB"), qPrintable(error("huge")));
    QCOMPARE(hub_->ask("classes").value("classes").toArray().size(), 0);  // the hub goes on
  }

  void a_name_leads_nowhere_else() {
    QVERIFY(QDir(hub_->folder()).mkdir("programmes"));
    QVERIFY(QDir(in_folder("")).mkdir("deeper"));
    QVERIFY(QDir(in_folder("")).mkdir("folder.programme.toml"));
    const QByteArray good =
        file_text(source_path("tests/kiosk/files/programmes/01-two-full-body-days.programme.toml"));
    write_file(hub_->folder() + "/out.programme.toml", good);
    write_file(in_folder("deeper/in.programme.toml"), good);
    write_file(in_folder("plain.toml"), good);
    write_file(in_folder(".programme.toml"), good);
    write_file(in_folder("two evenings.v2_a-b.programme.toml"), good);
    const QJsonArray names = hub_->ask("programmes").value("programmes").toArray();
    QCOMPARE(names, QJsonArray{"two evenings.v2_a-b"});
    QVERIFY(hub_->ask("programme.check", {{"name", "two evenings.v2_a-b"}}).contains("findings"));
    for (const QString& name :
         {QString("../out"), QString("deeper/in"), QString("deeper/../../out"), QString("/etc/passwd"),
          QString("."), QString(".."), QString("..\\out"), QString("%2e%2e/out"), QString("out"),
          QString("folder"), QString("two evenings.v2_a-b.programme.toml"), QString("a..b"), QString(65, 'a'),
          QString(" ")}) {
      const QJsonObject answer = hub_->ask("programme.check", {{"name", name}});
      QVERIFY2(answer.value("code").toInt() == 2, qPrintable(name));
      QVERIFY2(!answer.value("text").toString().contains("root:"), qPrintable(name));
    }
  }

 private:
  [[nodiscard]] QString in_folder(const QString& file) const {
    return hub_->folder() + "/programmes/" + file;
  }
  std::unique_ptr<HubProcess> hub_;
};

QTEST_GUILESS_MAIN(TestHubProgrammes)
#include "tst_hub_programmes.moc"
