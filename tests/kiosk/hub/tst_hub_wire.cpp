// SPDX-License-Identifier: GPL-3.0-or-later
// The wire of the hub: what each audience gets and never gets, catching up from any number, messages that the
// hub does not understand, and web pages kept out.
#include <QJsonArray>
#include <QTcpSocket>
#include <QtTest>

#include "tests/kiosk/hub/hub_client.h"

using namespace floorwheel;
using namespace floorwheel::testing;
using wire::Role;

class TestHubWire : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void init() {
    folder_ = std::make_unique<QTemporaryDir>();
    hub_ = std::make_unique<TestHub>(data());
    QVERIFY2(hub_->listening(), qPrintable(hub_->errors()));
  }
  void cleanup() { QVERIFY(hub_->end()); }

  void a_wall_never_gets_pairs_exclusions_reasons_or_loads() {
    Screen wall(hub_->url(), Role::wall);
    Screen teacher(hub_->url(), Role::instructor);
    QVERIFY(teacher.caught_up() && wall.caught_up());
    play(teacher);
    QVERIFY(wall.reach(teacher.hall().reached));
    Screen later(hub_->url(), Role::wall);  // and neither does one that catches up
    QVERIFY(later.reach(teacher.hall().reached));

    const QStringList private_words{"together with", "apart from", "left out",        "agreed",
                                    "excluded",      "allowed",    "reasons",         "cost",
                                    "bound",         "proven",     "loads_hg",        "today",
                                    "hurts",         "box-squat",  "joins from slot", "\"load_hg\"",
                                    "\"notes\"",     "\"spot\"",   "answer.today",    "record.add"};
    for (Screen* s : {&wall, &later})
      for (const QString& frame : s->frames())
        for (const QString& word : private_words)
          QVERIFY2(!frame.contains(word), qPrintable(word + " in " + frame));
    const QString everything = teacher.frames().join('\n');
    for (const QString& word : private_words)
      if (word != "together with" && word != "excluded" && word != "allowed" && word != "today" &&
          word != "agreed")
        QVERIFY2(everything.contains(word),
                 qPrintable(word + " never went over the wire: the scan proves nothing"));

    QVERIFY(wall.the_class().sheet.version > 0);
    QCOMPARE(find_member(wall.the_class(), "m01")->shown_as, std::string("Wren A."));
    for (const RunSheetRow& r : teacher.the_class().sheet.rows)
      for (int slot = 1; slot <= 4; ++slot)
        QCOMPARE(station_of(wall.the_class(), r.member, slot),
                 station_of(teacher.the_class(), r.member, slot));
    QVERIFY(wall.hall() == later.hall());
  }

  void a_desk_gets_no_loads_and_no_reasons_and_touch_gets_loads_but_no_reasons() {
    Screen teacher(hub_->url(), Role::instructor);
    QVERIFY(teacher.caught_up());
    play(teacher);
    Screen desk(hub_->url(), Role::desk);
    Screen touch(hub_->url(), Role::touch);
    QVERIFY(desk.reach(teacher.hall().reached) && touch.reach(teacher.hall().reached));
    for (const char* word : {"loads_hg", "reasons", "apart from", "hurts"})
      QVERIFY2(!desk.frames().join('\n').contains(word), word);
    for (const char* word : {"reasons", "apart from", "hurts", "\"cost\""})
      QVERIFY2(!touch.frames().join('\n').contains(word), word);
    QCOMPARE(find_member(touch.the_class(), "m01")->loads_hg.at("B"), 200);
    QCOMPARE(find_member(touch.the_class(), "m01")->exercises.at("A"), std::string("box-squat"));
    QCOMPARE(desk.ask("preview", {{"class", "x"}, {"saw", 0}, {"change", QJsonObject{}}}).code,
             QString("refused"));
    QCOMPARE(touch.ask("attendance").code, QString("refused"));
  }

  void catching_up_from_any_number_equals_the_whole_fold() {
    Screen teacher(hub_->url(), Role::instructor);
    QVERIFY(teacher.caught_up());
    play(teacher);
    const qint64 last = teacher.hall().reached;
    Screen whole(hub_->url(), Role::instructor);
    QVERIFY(whole.reach(last));
    QVERIFY(whole.hall() == teacher.hall());
    for (qint64 n = 1; n <= last; n += 3) {
      wire::Hall hall;
      for (const wire::Row& r : whole.rows())
        if (r.seq <= n) fold(hall, r);
      Screen rest(hub_->url(), Role::instructor, n);
      QVERIFY(rest.reach(last));
      for (const wire::Row& r : rest.rows()) {
        QVERIFY(r.seq > n);
        fold(hall, r);
      }
      hall.reached = last;
      QVERIFY2(hall == teacher.hall(), qPrintable(QString("from %1").arg(n)));
    }
  }

  void a_long_journal_comes_in_several_frames_in_order() {
    Screen teacher(hub_->url(), Role::instructor);
    QVERIFY(teacher.caught_up());
    const QString c = open_class(teacher);
    QVERIFY(publish(teacher, c, 0).done);
    QString last;
    for (int i = 0; i < 1200; ++i) {
      last = Screen::new_id();
      const QByteArray body = QJsonDocument(QJsonObject{{"class", c},
                                                        {"member", "m01"},
                                                        {"station", "A"},
                                                        {"slot", 1},
                                                        {"done", true},
                                                        {"reps", i}})
                                  .toJson();
      teacher.send(wire::Message(
          wire::Tell{.id = last.toStdString(), .kind = "record.add", .body = body.toStdString()}));
    }
    QVERIFY(wait_until([&] { return teacher.reply(last).has_value(); }));
    QVERIFY(teacher.reach(teacher.reply(last)->seq));
    Screen late(hub_->url(), Role::touch);
    QVERIFY(late.caught_up());
    int frames = 0;
    for (const QString& f : late.frames()) frames += f.contains("\"type\":\"rows\"") ? 1 : 0;
    QVERIFY(frames >= 3);
    for (int i = 1; i < late.rows().size(); ++i) QVERIFY(late.rows()[i].seq > late.rows()[i - 1].seq);
    QCOMPARE(late.the_class().records.at({"m01", 1}).reps, 1199);
  }

  void what_the_hub_does_not_understand_gets_an_answer_that_says_what_was_expected() {
    Screen s(hub_->url(), Role::tool);
    QVERIFY(s.caught_up());
    const auto last_trouble = [&s](const QString& text) {
      const auto before = s.frames().size();
      s.send(text);
      return wait_until([&] { return s.frames().size() > before; }) ? s.frames().back() : QString();
    };
    const QString version = last_trouble(R"({"v":2,"type":"ask","id":"1","kind":"classes","body":{}})");
    QVERIFY2(version.contains("\"code\":\"version\"") && version.contains("\"expected\":1"),
             qPrintable(version));
    QVERIFY(last_trouble("no json").contains("\"bad_body\""));
    QVERIFY(last_trouble(R"({"v":1,"type":"welcome","hub":"h","journal":1,"hub_boot_ms":1,"civil_ms":1,
      "speed":1,"utc_offset_s":0})")
                .contains("A screen sends"));
    const Reply kind = s.tell("class.explode", {});
    QCOMPARE(kind.code, QString("unknown_kind"));
    QVERIFY(kind.hint.contains("class.open"));
    QCOMPARE(s.ask("weather").code, QString("unknown_kind"));
    const Reply field = s.tell("class.open", {{"clas", "x"}});
    QCOMPARE(field.code, QString("bad_body"));
    QVERIFY2(field.hint.contains("'class'"), qPrintable(field.hint));
    QCOMPARE(s.tell("class.open", {}).code, QString("bad_body"));
    QCOMPARE(s.tell("class.open", {{"class", 7}}).code, QString("bad_body"));
    QCOMPARE(s.tell("class.open", {{"class", Screen::new_id()}}).code, QString("not_found"));
    QCOMPARE(s.tell("class.open", {{"class", Screen::new_id()}}, "not-a-uuid").code, QString("bad_body"));
    QVERIFY(s.ask("health").done);  // the connection is as good as before
  }

  void a_screen_that_did_not_say_hello_is_told_to() {
    QWebSocket raw;
    QStringList got;
    connect(&raw, &QWebSocket::textMessageReceived, this, [&got](const QString& t) { got << t; });
    raw.open(hub_->url());
    QVERIFY(wait_until([&raw] { return raw.state() == QAbstractSocket::ConnectedState; }));
    raw.sendTextMessage(R"({"v":1,"type":"ask","id":"1","kind":"classes","body":{}})");
    QVERIFY(wait_until([&got] { return !got.isEmpty(); }));
    QVERIFY(got[0].contains("hello"));
  }

  void the_clock_probe_comes_back_with_both_readings() {
    Screen s(hub_->url(), Role::wall);
    QVERIFY(s.caught_up());
    const auto before = s.frames().size();
    s.send(wire::Message(wire::Probe{.sent_ms = 12345, .hub_boot_ms = 0}));
    QVERIFY(wait_until([&] { return s.frames().size() > before; }));
    const auto m = wire::decode(s.frames().back().toStdString());
    const auto& probe = std::get<wire::Probe>(std::get<wire::Message>(m));
    QCOMPARE(probe.sent_ms, std::int64_t{12345});
    QVERIFY(probe.hub_boot_ms >= s.welcome()->hub_boot_ms);
  }

  void a_web_page_gets_nothing_and_a_plain_request_is_told_what_this_is() {
    const auto request = [this](const QByteArray& head) {
      QTcpSocket socket;
      QByteArray all;
      connect(&socket, &QTcpSocket::readyRead, this, [&] { all += socket.readAll(); });
      socket.connectToHost("127.0.0.1", static_cast<quint16>(hub_->port()));
      if (!socket.waitForConnected()) return QByteArray();
      socket.write(head);
      wait_until([&socket] { return socket.state() == QAbstractSocket::UnconnectedState; });
      return all + socket.readAll();
    };
    const QByteArray upgrade =
        "GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n"
        "Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==\r\nSec-WebSocket-Version: 13\r\n"
        "Origin: http://somewhere.example\r\n\r\n";
    QVERIFY(request(upgrade).startsWith("HTTP/1.1 403"));
    const QByteArray plain = request("GET / HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n");
    QVERIFY(plain.startsWith("HTTP/1.1 426"));
    QVERIFY(plain.contains("floorwheel-screen"));
  }

 private:
  [[nodiscard]] QString data() const { return folder_->path() + "/data"; }
  /// A class with everything in it that not everybody may know.
  static void play(Screen& teacher) {
    const QString c = open_class(teacher);
    QVERIFY(teacher.tell("check_in", {{"class", c}, {"member", "m01"}}).done);
    QVERIFY(teacher.tell("heads.count", {{"class", c}, {"here", QJsonArray{"m01", "m02", "m03"}}}).done);
    QVERIFY(
        teacher
            .tell("answer.today", {{"class", c}, {"member", "m02"}, {"answer", "hurts"}, {"spot", "chest"}})
            .done);
    QVERIFY(publish(teacher, c, 0).done);
    QVERIFY(teacher.tell("class.start", {{"class", c}, {"saw", 1}}).done);
    QVERIFY(teacher.tell("class.late", {{"class", c}, {"saw", 1}}).done);
    QVERIFY(teacher.tell("station.close", {{"class", c}, {"saw", 2}, {"station", "D"}}).done);
    QVERIFY(teacher
                .tell("record.add", {{"class", c},
                                     {"member", "m01"},
                                     {"station", "B"},
                                     {"slot", 1},
                                     {"done", true},
                                     {"load_hg", 200},
                                     {"reps", 10}})
                .done);
    QVERIFY(teacher.tell("class.hold", {{"class", c}}).done);
  }
  std::unique_ptr<QTemporaryDir> folder_;
  std::unique_ptr<TestHub> hub_;
};

QTEST_GUILESS_MAIN(TestHubWire)
#include "tst_hub_wire.moc"
