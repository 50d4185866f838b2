// SPDX-License-Identifier: GPL-3.0-or-later
// The real hub for tests: bin/floorwheel hub on a port of its own, with its file in a temporary folder;
// commands told through `floorwheel tell`; rows read from its SQLite file by the test's own SQL.
#pragma once

#include <QJsonObject>
#include <QProcess>
#include <QStringList>
#include <QTemporaryDir>
#include <QUrl>
#include <QVariantList>

namespace floorwheel::tests {

/// The folder of the programs under test ($FLOORWHEEL_BIN, set by ctest).
QString bin(const QString& program);

class HubProcess {
 public:
  ~HubProcess();
  /// Starts it and waits for its first line. False: `trouble()` says what it printed instead. A port given
  /// keeps the address over a restart; else the system chooses one, which is kept from then on.
  bool start(double speed = 1.0);
  /// SIGKILL, as a power cut would.
  void kill();
  /// SIGTERM, and waits.
  void stop();
  [[nodiscard]] QUrl url() const { return url_; }
  [[nodiscard]] QString folder() const { return folder_.path(); }
  [[nodiscard]] QString trouble() const { return trouble_; }

  /// One command through the command line; its receipt, {"code", "text"} of a refusal where it failed.
  QJsonObject tell(const QString& kind, const QJsonObject& body);
  QJsonObject ask(const QString& kind, const QJsonObject& body = {});
  /// Rows of the hub's own file, each a list of columns, read by this SQL while the hub runs.
  QList<QVariantList> sql(const QString& query) const;
  /// Changes the file of a hub that was killed, as if it had been kept so: for records of earlier weeks.
  bool rewrite(const QString& statements) const;

 private:
  QJsonObject run(const QString& verb, const QString& kind, const QJsonObject& body);

  QTemporaryDir folder_;
  QProcess process_;
  QUrl url_;
  QString trouble_;
};

/// A small class of our own, as a class file: `stations` stations of one place and `members` members m1..
/// with aliases "Ada 1.", "Ada 2."…; work 40 s, change 20 s.
QString small_class_toml(int stations, int members, const QString& name = QStringLiteral("Test ring"));

}  // namespace floorwheel::tests
