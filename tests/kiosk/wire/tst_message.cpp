// SPDX-License-Identifier: GPL-3.0-or-later
// Messages: what is encoded comes back, other versions and damaged messages are answered with what was
// expected, and size and depth are bounded.
#include <QtTest>

#include "kiosk/wire/message.h"

using namespace floorwheel::wire;

namespace {

template <class M>
M there_and_back(const M& m) {
  auto got = decode(encode(m));
  const auto* message = std::get_if<Message>(&got);
  if (!message || !std::holds_alternative<M>(*message)) qFatal("%s", encode(m).c_str());
  return std::get<M>(*message);
}

Trouble trouble_of(std::string_view text) {
  auto got = decode(text);
  const auto* t = std::get_if<Trouble>(&got);
  return t ? *t : Trouble{};
}

}  // namespace

class TestMessage : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void every_message_comes_back_as_it_went() {
    const Hello hello = there_and_back(Hello{.role = Role::touch, .screen = "abc", .after = 17});
    QCOMPARE(hello.role, Role::touch);
    QCOMPARE(hello.screen, std::string("abc"));
    QCOMPARE(hello.after, std::int64_t{17});
    const Tell tell = there_and_back(Tell{.id = "1", .kind = "check_in", .body = R"({"member":"m\u00e9"})"});
    QCOMPARE(tell.body, std::string("{\"member\":\"m\xC3\xA9\"}"));
    QCOMPARE(there_and_back(Ask{.id = "2", .kind = "classes", .body = "{}"}).kind, std::string("classes"));
    QCOMPARE(there_and_back(Probe{.sent_ms = 5, .hub_boot_ms = 6}).hub_boot_ms, std::int64_t{6});
    QCOMPARE(there_and_back(Cancel{.id = "2"}).id, std::string("2"));
    const Welcome w = there_and_back(Welcome{.hub = "h",
                                             .journal = 9,
                                             .hub_boot_ms = std::int64_t{1} << 40,
                                             .civil_ms = 1'772'731'800'000,
                                             .speed = 2.5,
                                             .utc_offset_s = -3600});
    QCOMPARE(w.hub_boot_ms, std::int64_t{1} << 40);
    QCOMPARE(w.speed, 2.5);
    QCOMPARE(w.utc_offset_s, -3600);
    const Rows rows = there_and_back(Rows{.rows = {{.seq = 3,
                                                    .at_ms = 1,
                                                    .civil_ms = 2,
                                                    .kind = "class.hold",
                                                    .body = R"({"class":"c"})",
                                                    .words = "{}"}},
                                          .reached = 4});
    QCOMPARE(rows.rows.size(), std::size_t{1});
    QCOMPARE(rows.rows[0].body, std::string(R"({"class":"c"})"));
    QCOMPARE(rows.reached, std::int64_t{4});
    QCOMPARE(there_and_back(Receipt{.id = "1", .seq = 3, .body = "{}"}).seq, std::int64_t{3});
    QCOMPARE(there_and_back(Answer{.id = "1", .body = R"({"a":[1,2]})"}).body, std::string(R"({"a":[1,2]})"));
    QCOMPARE(there_and_back(Underway{.id = "1", .body = "{}"}).id, std::string("1"));
    const Trouble t = there_and_back(
        Trouble{.id = "1", .code = "stale", .text = "t", .hint = "h", .body = R"({"seen":1,"now":2})"});
    QCOMPARE(t.code, std::string("stale"));
    QCOMPARE(t.body, std::string(R"({"seen":1,"now":2})"));
  }

  void another_version_says_which_was_expected() {
    const Trouble t = trouble_of(R"({"v":2,"type":"cancel","id":"7"})");
    QCOMPARE(t.code, std::string("version"));
    QCOMPARE(t.id, std::string("7"));
    QCOMPARE(t.body, std::string(R"({"expected":1,"found":2})"));
    QVERIFY(t.text.find("version 2") != std::string::npos);
    QVERIFY(t.hint.find("version 1") != std::string::npos);
    QCOMPARE(trouble_of(R"({"type":"cancel","id":"7"})").code, std::string("version"));
    QCOMPARE(trouble_of(R"({"v":"1","type":"cancel","id":"7"})").code, std::string("version"));
  }

  void a_damaged_message_says_what_would_be_right_data() {
    QTest::addColumn<QByteArray>("text");
    QTest::addColumn<QByteArray>("code");
    QTest::addColumn<QByteArray>("part");  // of the text or the hint
    QTest::newRow("not JSON") << QByteArray("{") << QByteArray("bad_body") << QByteArray("not JSON");
    QTest::newRow("not an object") << QByteArray("[]") << QByteArray("bad_body") << QByteArray("object");
    QTest::newRow("type") << QByteArray(R"({"v":1,"type":"shout","id":"1"})") << QByteArray("unknown_kind")
                          << QByteArray("hello, tell");
    QTest::newRow("field missing") << QByteArray(R"({"v":1,"type":"tell","id":"1"})")
                                   << QByteArray("bad_body") << QByteArray("'kind'");
    QTest::newRow("field of another type")
        << QByteArray(R"({"v":1,"type":"probe","sent_ms":"now","hub_boot_ms":0})") << QByteArray("bad_body")
        << QByteArray("whole number");
    QTest::newRow("role") << QByteArray(R"({"v":1,"type":"hello","role":"king","screen":"s","after":0})")
                          << QByteArray("bad_body") << QByteArray("wall, touch");
    QTest::newRow("below zero") << QByteArray(
                                       R"({"v":1,"type":"hello","role":"wall","screen":"s","after":-1})")
                                << QByteArray("bad_body") << QByteArray("0 or more");
    QTest::newRow("body no object") << QByteArray(R"({"v":1,"type":"ask","id":"1","kind":"k","body":[]})")
                                    << QByteArray("bad_body") << QByteArray("an object");
    QTest::newRow("row no row") << QByteArray(R"({"v":1,"type":"rows","reached":1,"rows":[{"seq":1}]})")
                                << QByteArray("bad_body") << QByteArray("array of rows");
    QTest::newRow("too deep") << QByteArray(R"({"v":1,"type":"ask","id":"1","kind":"k","body":{"a":)") +
                                     QByteArray(100, '[') + QByteArray(100, ']') + "}}"
                              << QByteArray("bad_body") << QByteArray("nested deeper");
    QTest::newRow("not UTF-8") << QByteArray("{\"v\":1,\"type\":\"cancel\",\"id\":\"\xff\"}")
                               << QByteArray("bad_body") << QByteArray("not JSON");
  }
  void a_damaged_message_says_what_would_be_right() {
    QFETCH(const QByteArray, text);
    QFETCH(const QByteArray, code);
    QFETCH(const QByteArray, part);
    const Trouble t = trouble_of(std::string_view(text.constData(), static_cast<std::size_t>(text.size())));
    QCOMPARE(QByteArray::fromStdString(t.code), code);
    QVERIFY2(QByteArray::fromStdString(t.text + t.hint).contains(part), t.text.c_str());
  }

  void a_message_that_is_too_long_is_not_even_parsed() {
    QCOMPARE(trouble_of(std::string(max_message_bytes + 1, ' ')).code, std::string("bad_body"));
  }
};

QTEST_APPLESS_MAIN(TestMessage)
#include "tst_message.moc"
