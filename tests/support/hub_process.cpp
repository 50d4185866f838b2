// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/hub_process.h"

#include <sqlite3.h>

#include <QDir>
#include <QJsonDocument>

namespace floorwheel::tests {

namespace {
constexpr int patience_ms = 20000;
const QStringList exercise_ids{QStringLiteral("goblet-squat"), QStringLiteral("seated-row")};
}  // namespace

QString bin(const QString& program) {
  return qEnvironmentVariable("FLOORWHEEL_BIN") + QLatin1Char('/') + program;
}

HubProcess::~HubProcess() {
  if (process_.state() != QProcess::NotRunning) stop();
}

bool HubProcess::start(double speed) {
  const QString at =
      url_.isEmpty() ? QStringLiteral("127.0.0.1:0") : QStringLiteral("127.0.0.1:%1").arg(url_.port());
  process_.setProcessChannelMode(QProcess::ForwardedErrorChannel);
  process_.start(bin(QStringLiteral("floorwheel")),
                 {QStringLiteral("hub"), QStringLiteral("--listen"), at, QStringLiteral("--data"),
                  folder_.path(), QStringLiteral("--speed"), QString::number(speed)});
  while (!process_.canReadLine()) {
    if (!process_.waitForReadyRead(patience_ms)) {
      trouble_ = QStringLiteral("the hub said nothing: %1").arg(process_.errorString());
      return false;
    }
  }
  const QByteArray line = process_.readLine();
  const QString listening =
      QJsonDocument::fromJson(line).object().value(QLatin1String("listening")).toString();
  if (listening.isEmpty()) {
    trouble_ = QString::fromUtf8(line);
    return false;
  }
  url_ = QUrl(QStringLiteral("ws://") + listening);
  return true;
}

void HubProcess::kill() {
  process_.kill();
  process_.waitForFinished(patience_ms);
}

void HubProcess::stop() {
  process_.terminate();
  if (!process_.waitForFinished(patience_ms)) kill();
}

QJsonObject HubProcess::tell(const QString& kind, const QJsonObject& body) {
  return run(QStringLiteral("tell"), kind, body);
}
QJsonObject HubProcess::ask(const QString& kind, const QJsonObject& body) {
  return run(QStringLiteral("ask"), kind, body);
}

QJsonObject HubProcess::run(const QString& verb, const QString& kind, const QJsonObject& body) {
  QProcess tool;
  tool.start(bin(QStringLiteral("floorwheel")),
             {verb, kind, QString::fromUtf8(QJsonDocument(body).toJson(QJsonDocument::Compact)),
              QStringLiteral("--hub"), url_.toString()});
  if (!tool.waitForFinished(patience_ms)) return {{QStringLiteral("code"), QStringLiteral("no answer")}};
  if (tool.exitCode() != 0)
    return {{QStringLiteral("code"), tool.exitCode()},
            {QStringLiteral("text"), QString::fromUtf8(tool.readAllStandardError())}};
  return QJsonDocument::fromJson(tool.readAllStandardOutput()).object();
}

bool HubProcess::rewrite(const QString& statements) const {
  sqlite3* db = nullptr;
  const QByteArray file = QDir(folder_.path()).filePath(QStringLiteral("floorwheel.db")).toUtf8();
  const bool done = process_.state() == QProcess::NotRunning &&
                    sqlite3_open_v2(file.constData(), &db, SQLITE_OPEN_READWRITE, nullptr) == SQLITE_OK &&
                    sqlite3_exec(db, statements.toUtf8().constData(), nullptr, nullptr, nullptr) == SQLITE_OK;
  if (!done) qWarning("%s: %s", qPrintable(statements), db ? sqlite3_errmsg(db) : "the hub runs");
  sqlite3_close(db);
  return done;
}

QList<QVariantList> HubProcess::sql(const QString& query) const {
  QList<QVariantList> rows;
  const QStringList files =
      QDir(folder_.path()).entryList({QStringLiteral("*.db"), QStringLiteral("*.sqlite*")}, QDir::Files);
  sqlite3* db = nullptr;
  if (files.isEmpty() || sqlite3_open_v2(QDir(folder_.path()).filePath(files.first()).toUtf8().constData(),
                                         &db, SQLITE_OPEN_READONLY, nullptr) != SQLITE_OK) {
    sqlite3_close(db);
    return rows;
  }
  sqlite3_stmt* statement = nullptr;
  if (sqlite3_prepare_v2(db, query.toUtf8().constData(), -1, &statement, nullptr) != SQLITE_OK)
    qWarning("%s: %s", qPrintable(query), sqlite3_errmsg(db));
  while (statement != nullptr && sqlite3_step(statement) == SQLITE_ROW) {
    QVariantList row;
    for (int c = 0; c < sqlite3_column_count(statement); ++c) {
      if (sqlite3_column_type(statement, c) == SQLITE_INTEGER)
        row.append(static_cast<qint64>(sqlite3_column_int64(statement, c)));
      else
        row.append(QString::fromUtf8(reinterpret_cast<const char*>(sqlite3_column_text(statement, c))));
    }
    rows.append(row);
  }
  sqlite3_finalize(statement);
  sqlite3_close(db);
  return rows;
}

QString small_class_toml(int stations, int members, const QString& name) {
  QString toml =
      QStringLiteral(
          "[class]\nname = \"%1\"\nstart = 2026-03-05T18:30:00+01:00\nwork_s = 40\nchange_s = 20\n")
          .arg(name);
  for (int s = 0; s < stations; ++s)
    toml += QStringLiteral("\n[[station]]\nid = \"%1\"\nexercise = \"%2\"\ncapacity = 1\nat = [%3.0, 1.0]\n")
                .arg(QChar('A' + s))
                .arg(exercise_ids[s % exercise_ids.size()])
                .arg(2 * s);
  for (int m = 1; m <= members; ++m)
    toml += QStringLiteral("\n[[member]]\nid = \"m%1\"\nshown_as = \"Ada %1.\"\nlevel = \"novice\"\n").arg(m);
  return toml;
}

}  // namespace floorwheel::tests
