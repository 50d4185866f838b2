// SPDX-License-Identifier: GPL-3.0-or-later
// For tests of the hub: the hub as a process with its file in a temporary folder, and a screen's end of the
// wire that keeps every frame it got. Waiting is for events, with a limit that only a failing test reaches.
#pragma once

#include <QJsonObject>
#include <QProcess>
#include <QString>
#include <QStringList>
#include <QTemporaryDir>
#include <QWebSocket>
#include <functional>
#include <memory>
#include <optional>

#include "kiosk/wire/hall.h"
#include "kiosk/wire/message.h"

namespace floorwheel::testing {

/// Waits for a fact while events are handled.
bool wait_until(const std::function<bool()>& fact, int most_ms = 30'000);

/// The program hub_under_test, on a port of its own.
class TestHub {
 public:
  explicit TestHub(const QString& data, const QStringList& more = {});
  ~TestHub();
  /// Whether it listens; else `errors()` says why not.
  [[nodiscard]] bool listening() const { return !url_.isEmpty(); }
  [[nodiscard]] QUrl url() const { return QUrl(url_); }
  [[nodiscard]] int port() const { return QUrl(url_).port(); }
  QProcess& process() { return process_; }
  [[nodiscard]] QString errors() const { return errors_; }
  [[nodiscard]] const QStringList& lines() const { return lines_; }  // of output, after the first
  void kill();
  /// SIGTERM; true where it ended by itself with code 0.
  bool end();
  static QString program();

 private:
  QProcess process_;
  QString url_;
  QString errors_;
  QStringList lines_;
};

struct Reply {
  bool done = false;  // a receipt or an answer
  qint64 seq = 0;
  QJsonObject body = {};
  QString code = {};  // of a trouble
  QString text = {};
  QString hint = {};
  bool operator==(const Reply&) const = default;
};

class Screen {
 public:
  /// Connected and caught up.
  Screen(const QUrl& hub, wire::Role role, qint64 after = 0);
  /// Until everything the journal holds is folded.
  bool caught_up();
  /// Until a row with this number is folded.
  bool reach(qint64 seq);

  static QString new_id();
  /// Sends and waits for the reply.
  Reply tell(const QString& kind, const QJsonObject& body, const QString& id = new_id());
  Reply ask(const QString& kind, const QJsonObject& body = {});
  /// Sends without waiting.
  void send(const QString& text);
  void send(const wire::Message& m) { send(QString::fromStdString(wire::encode(m))); }
  /// The reply to an id, once it is there.
  [[nodiscard]] std::optional<Reply> reply(const QString& id) const;

  [[nodiscard]] const wire::Hall& hall() const { return hall_; }
  [[nodiscard]] const wire::ClassView& the_class() const;
  [[nodiscard]] const QStringList& frames() const { return frames_; }
  [[nodiscard]] const QList<wire::Row>& rows() const { return rows_; }
  [[nodiscard]] std::optional<wire::Welcome> welcome() const { return welcome_; }
  QWebSocket& socket() { return socket_; }

 private:
  void take(const QString& frame);
  QWebSocket socket_;
  wire::Hall hall_;
  QStringList frames_;
  QList<wire::Row> rows_;
  QHash<QString, Reply> replies_;
  std::optional<wire::Welcome> welcome_;
  qint64 reached_ = 0;
  bool got_rows_ = false;
};

/// One value of the hub's file, by SQL of the test's own; the hub may be running.
QVariant sql(const QString& data, const QString& query);

/// A class of our own invention: four stations, four members, somebody with exclusions, two kept apart.
QString small_class();

/// Adds small_class() (or another) and opens it; its id.
QString open_class(Screen& instructor, const QString& toml = small_class());
/// Proposal and publication for whoever is here.
Reply publish(Screen& instructor, const QString& class_id, int saw, int slots = 0);

}  // namespace floorwheel::testing
