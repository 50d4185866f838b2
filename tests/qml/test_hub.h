// SPDX-License-Identifier: GPL-3.0-or-later
// What a QML test may do beside looking at its screen: tell the hub, read its store, kill it, find an item.
#pragma once

#include <QDateTime>
#include <QDir>
#include <QFile>
#include <QJsonArray>
#include <QJsonObject>
#include <QObject>
#include <QQuickItem>
#include <QQuickWindow>
#include <QVariant>

#include "kiosk/screens/item_names.h"
#include "kiosk/screens/picture.h"
#include "tests/kiosk/hub/past_classes.h"
#include "tests/support/hub_process.h"

namespace floorwheel::tests {

class TestHub : public QObject {
  Q_OBJECT
 public:
  bool begin() { return hub_.start(); }
  void end() { hub_.stop(); }
  [[nodiscard]] QUrl url() const { return hub_.url(); }
  [[nodiscard]] QString trouble() const { return hub_.trouble(); }

  /// Adds a small class (m1.. with aliases "Ada 1."..) and returns its id.
  Q_INVOKABLE QString addSmallClass(int stations, int members, const QString& name) {
    return addClass(small_class_toml(stations, members, name));
  }
  Q_INVOKABLE QString addClass(const QString& toml) {
    return tell(QStringLiteral("class.add"), {{QStringLiteral("toml"), toml}})
        .value(QLatin1String("body"))
        .toObject()
        .value(QLatin1String("class"))
        .toString();
  }
  Q_INVOKABLE QJsonObject tell(const QString& kind, const QJsonObject& body) { return hub_.tell(kind, body); }
  Q_INVOKABLE QJsonObject ask(const QString& kind, const QJsonObject& body) { return hub_.ask(kind, body); }
  /// Rows of the store by the test's own SQL, each a list.
  Q_INVOKABLE QVariantList sql(const QString& query) {
    QVariantList all;
    for (const QVariantList& row : hub_.sql(query)) all.append(QVariant(row));
    return all;
  }
  /// Plays classes of earlier days on the hub's own store while the hub is away, then starts it again. Each
  /// is {ago (days), here: [member], sets: [[member, station, slot, load_hg, reps]], hurts?, spot?}, latest
  /// last.
  Q_INVOKABLE bool playPast(const QString& toml, const QJsonArray& classes) {
    hub_.stop();
    QList<testing::PastClass> past;
    const QDate today = QDateTime::currentDateTimeUtc().date();
    for (const QJsonValue& v : classes) {
      const QJsonObject o = v.toObject();
      testing::PastClass p{.day = today.addDays(-o.value(QLatin1String("ago")).toInt())};
      for (const QJsonValue& m : o.value(QLatin1String("here")).toArray()) p.here << m.toString();
      for (const QJsonValue& s : o.value(QLatin1String("sets")).toArray()) {
        const QJsonArray a = s.toArray();
        p.sets << testing::PastSet{a[0].toString(), a[1].toString(), a[2].toInt(), a[3].toInt(),
                                   a[4].toInt()};
      }
      p.hurts = o.value(QLatin1String("hurts")).toString();
      p.spot = o.value(QLatin1String("spot")).toString();
      past << p;
    }
    testing::play_past_classes(hub_.folder(), toml, past);
    return hub_.start();
  }
  /// A programme file into the hub's data folder: of a file of the source tree the first bytes, or all.
  Q_INVOKABLE bool writeProgramme(const QString& name, const QString& source, int bytes = -1) {
    QFile from(qEnvironmentVariable("FLOORWHEEL_SOURCE") + QLatin1Char('/') + source);
    QDir(hub_.folder()).mkpath(QStringLiteral("programmes"));
    QFile to(hub_.folder() + QStringLiteral("/programmes/%1.programme.toml").arg(name));
    if (!from.open(QIODevice::ReadOnly) || !to.open(QIODevice::WriteOnly)) return false;
    const QByteArray text = from.readAll().left(bytes < 0 ? from.size() : bytes);
    return !text.isEmpty() && to.write(text) == text.size();
  }
  Q_INVOKABLE void kill() { hub_.kill(); }
  Q_INVOKABLE bool rewrite(const QString& statements) { return hub_.rewrite(statements); }
  /// A picture with its text twin for people to look at, where FLOORWHEEL_PICTURES names a folder; what is
  /// wrong, or "".
  Q_INVOKABLE QString picture(QQuickItem* near, const QString& name) {
    const QString folder = qEnvironmentVariable("FLOORWHEEL_PICTURES");
    if (folder.isEmpty()) return {};
    return screens::save_picture(*near->window(), folder + QLatin1Char('/') + name + QStringLiteral(".png"));
  }
  Q_INVOKABLE bool restart() { return hub_.start(); }

  /// The one visible, enabled control with this accessible name in the window of `near`; null if none or
  /// several.
  Q_INVOKABLE QQuickItem* control(QQuickItem* near, const QString& name) {
    QQuickItem* found = nullptr;
    for (const screens::ShownItem& i : screens::shown_items(*near->window())) {
      if (!i.acts || !i.enabled || i.name != name) continue;
      if (found != nullptr) return nullptr;
      found = i.item;
    }
    return found;
  }
  /// True if an item with this accessible name or text is visible.
  Q_INVOKABLE bool sees(QQuickItem* near, const QString& name) {
    for (const screens::ShownItem& i : screens::shown_items(*near->window()))
      if (i.name == name) return true;
    return false;
  }
  /// Everything visible, for messages: names by " | ".
  Q_INVOKABLE QString names(QQuickItem* near) {
    QStringList all;
    for (const screens::ShownItem& i : screens::shown_items(*near->window())) all.append(i.name);
    return all.join(QStringLiteral(" | "));
  }

 private:
  HubProcess hub_;
};

}  // namespace floorwheel::tests
