// SPDX-License-Identifier: GPL-3.0-or-later
// `plan --certificate` and `audit --certificate` as a person or a script meets them: what holds ends with 0,
// what does not with 1 and the claim's name, what is no certificate with 2.
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QTest>

#include "tests/kiosk/cli/program.h"

namespace {

/// Three people want the one place of A and B in two slots: two visits are missed.
const QByteArray crowded = R"([class]
name = "Crowded"
laps = 1
work_s = 40
change_s = 20
slots = 2
style = "free"

[[station]]
id = "A"
exercise = "goblet-squat"
capacity = 1
at = [0.0, 0.0]

[[station]]
id = "B"
exercise = "seated-row"
capacity = 1
at = [3.0, 4.0]

[[member]]
id = "m1"
shown_as = "One"
level = "novice"

[[member]]
id = "m2"
shown_as = "Two"
level = "novice"

[[member]]
id = "m3"
shown_as = "Three"
level = "novice"
)";

}  // namespace

class TestCertificateCommands : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void initTestCase() {
    QVERIFY2(QFile::exists(program_path()), qPrintable(program_path()));
    QVERIFY(folder_.isValid());
    class_ = folder_.filePath("x.class.toml");
    rotation_ = folder_.filePath("x.json");
    certificate_ = folder_.filePath("x.certificate.json");
    write_file(class_, crowded);
    const Ran ran = run_floorwheel({"plan", class_, "--json", "--certificate", certificate_});
    QCOMPARE(ran.err, QByteArray());
    QCOMPARE(ran.code, 0);
    write_file(rotation_, ran.out);
    QVERIFY(!QFile::exists(certificate_ + ".part"));
  }

  void what_plan_writes_holds() {
    const Ran ran = audit(file_text(certificate_));
    QCOMPARE(ran.err, QByteArray());
    QVERIFY2(ran.out.contains("hall") && ran.out.contains("holds: at least 2 recomputed"),
             ran.out.constData());
    QVERIFY2(ran.out.contains("The certificate holds. Proven: missed, uneven, back_to_back"),
             ran.out.constData());
    QCOMPARE(ran.code, 0);
    const Ran json = run_floorwheel({"audit", class_, rotation_, "--certificate", certificate_, "--json"});
    const QJsonObject said = QJsonDocument::fromJson(json.out).object()["certificate"].toObject();
    QVERIFY(said["holds"].toBool());
    QCOMPARE(said["claims"].toArray().size(), 8);
    QCOMPARE(said["proven"].toArray().first().toString(), QString("missed"));
  }

  void one_digit_changed_does_not_hold() {
    const Ran higher = audit(file_text(certificate_).replace("\"bound\": 2", "\"bound\": 3"));
    QVERIFY2(higher.out.contains("does not hold: recomputed is no more than 2"), higher.out.constData());
    QVERIFY(higher.out.contains("The certificate does not hold."));
    QCOMPARE(higher.code, 1);
    const Ran lower = audit(file_text(certificate_).replace("\"bound\": 2", "\"bound\": 1"));
    QVERIFY2(lower.out.contains("The rotation calls missed proven, the certificate does not show it."),
             lower.out.constData());
    QCOMPARE(lower.code, 1);
    const Ran cost = audit(file_text(certificate_).replace("\"missed\": 2", "\"missed\": 1"));
    QVERIFY2(cost.out.contains("The certificate is of a rotation with missed 1, this one has 2."),
             cost.out.constData());
    QCOMPARE(cost.code, 1);
  }

  void another_class_or_number_of_slots_does_not_hold() {
    const QString other = folder_.filePath("other.class.toml");
    write_file(other, QByteArray(crowded).replace("[3.0, 4.0]", "[3.0, 4.1]"));
    const Ran ran = run_floorwheel({"audit", other, rotation_, "--certificate", certificate_});
    QVERIFY2(ran.out.contains("The certificate does not hold: the certificate is of another class"),
             ran.out.constData());
    QCOMPARE(ran.code, 1);
    const Ran slots = audit(file_text(certificate_).replace("\"slots\": 2,", "\"slots\": 3,"));
    QVERIFY2(slots.out.contains("of 3 slots, not of 2"), slots.out.constData());
    QCOMPARE(slots.code, 1);
  }

  void what_is_no_certificate_ends_with_2() {
    for (const QByteArray& text : {QByteArray("nonsense"), QByteArray("{}"), file_text(rotation_),
                                   file_text(certificate_).replace("\"bound\": 2", "\"bound\": -2"),
                                   file_text(certificate_).replace("hall", "wall")}) {
      const Ran ran = audit(text);
      QVERIFY2(ran.err.startsWith((folder_.filePath("changed.json") + ":").toUtf8()), ran.err.constData());
      QCOMPARE(ran.code, 2);
    }
    const Ran none = run_floorwheel({"audit", class_, rotation_, "--certificate", folder_.filePath("none")});
    QCOMPARE(none.code, 2);
  }

  void a_certificate_is_of_one_rotation() {
    const QString open = folder_.filePath("open.class.toml");
    write_file(open, QByteArray(crowded).replace("slots = 2\n", ""));
    const Ran ran = run_floorwheel({"plan", open, "--certificate", folder_.filePath("y.json")});
    QVERIFY2(ran.err.contains("--slots T"), ran.err.constData());
    QCOMPARE(ran.code, 2);
    const Ran nowhere = run_floorwheel({"plan", class_, "--certificate", folder_.filePath("no/such/y.json")});
    QVERIFY2(nowhere.err.contains("cannot be written"), nowhere.err.constData());
    QCOMPARE(nowhere.code, 2);
    QCOMPARE(nowhere.out, QByteArray());
  }

 private:
  Ran audit(const QByteArray& certificate) {
    const QString path = folder_.filePath("changed.json");
    write_file(path, certificate);
    return run_floorwheel({"audit", class_, rotation_, "--certificate", path});
  }

  QTemporaryDir folder_;
  QString class_, rotation_, certificate_;
};

QTEST_GUILESS_MAIN(TestCertificateCommands)
#include "tst_certificate_commands.moc"
