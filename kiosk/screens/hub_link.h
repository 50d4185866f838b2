// SPDX-License-Identifier: GPL-3.0-or-later
// A screen's link to the hub: one WebSocket, kept alive and found again by itself; the hall folded from the
// rows that come over it; commands and questions with their answers. The only way a screen reaches the hub.
// What this screen recorded while the hub was away waits in the outbox (outbox.h) and is told again.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QJsonObject>
#include <QObject>
#include <QUrl>
#include <memory>

class QQmlEngine;
class QJSEngine;

#include "kiosk/wire/hall.h"

namespace floorwheel::screens {

class HubLink : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_SINGLETON
  Q_PROPERTY(bool connected READ connected NOTIFY connectedChanged FINAL)
  Q_PROPERTY(bool everConnected READ everConnected NOTIFY connectedChanged FINAL)
  Q_PROPERTY(QString url READ url NOTIFY connectedChanged FINAL)
  Q_PROPERTY(int waiting READ waiting NOTIFY waitingChanged FINAL)  // commands not yet confirmed

 public:
  // No default argument: a type that QML can construct by itself would get a second instance there.
  explicit HubLink(QObject* parent);
  ~HubLink() override;
  static HubLink* create(QQmlEngine*, QJSEngine*);

  /// Before start: what people record is kept in this folder until the hub confirms it. Returns what is wrong
  /// and what to do, or "". Without a folder a command told while the hub is away is refused with "away".
  QString keep_outbox_in(const QString& folder);
  /// Connects and stays connected (full-jitter backoff, 5 s at most). Called once, by main or a test.
  void start(const QUrl& hub, wire::Role role);

  [[nodiscard]] bool connected() const;
  [[nodiscard]] bool everConnected() const;
  [[nodiscard]] QString url() const;
  [[nodiscard]] int waiting() const;

  /// What is known of the hall; a new value after every batch of rows (hallChanged).
  [[nodiscard]] const wire::Hall& hall() const;

  /// The hub's class clock now, by this screen's monotonic clock and the estimated offset. Goes on when the
  /// hub is away. 0 before the first contact.
  [[nodiscard]] qint64 classNowMs() const;
  /// Unix time of the hub now, sped up like the class clock; and its offset of local time.
  [[nodiscard]] qint64 civilNowMs() const;
  [[nodiscard]] int utcOffsetS() const;
  [[nodiscard]] double speed() const;

  /// Sends one command; returns its UUID at once. The answer comes as `receipt` or `refused` with that id.
  /// Kinds that a person must never lose (check_in*, record.*, answer.today) go through the outbox: they are
  /// on disk when this returns and `waits(id)` is true until the hub answers. All others are refused with
  /// code "away" where the hub is not there or goes before it answers; then the hall shows what was done.
  Q_INVOKABLE QString tell(const QString& kind, const QJsonObject& body);
  /// Asks one question; the answer comes as `answer` (perhaps `underway` before) or `refused`.
  Q_INVOKABLE QString ask(const QString& kind, const QJsonObject& body = {});
  Q_INVOKABLE void cancel(const QString& id);
  /// True while this command lies in the outbox, not yet confirmed.
  Q_INVOKABLE bool waits(const QString& id) const;

 Q_SIGNALS:
  void connectedChanged();
  void waitingChanged();
  void hallChanged();
  void receipt(const QString& id, qint64 seq, const QJsonObject& body);
  void answer(const QString& id, const QJsonObject& body);
  void underway(const QString& id, const QJsonObject& body);
  void refused(const QString& id, const QString& code, const QString& text, const QString& hint,
               const QJsonObject& body);

 private:
  class Impl;
  std::unique_ptr<Impl> impl_;
};

/// The one link of this process; created by main (or a test) before the engine, handed to QML as singleton.
HubLink& hub_link();

}  // namespace floorwheel::screens
