// SPDX-License-Identifier: GPL-3.0-or-later
// Runs the real `floorwheel` and keeps what it printed and its exit code.
#pragma once

#include <QFile>
#include <QProcess>
#include <QStringList>

struct Ran {
  int code = -1;
  QByteArray out;
  QByteArray err;
};

inline QString program_path() { return qEnvironmentVariable("FLOORWHEEL_BIN") + "/floorwheel"; }
inline QString source_path(const QString& path) {
  return qEnvironmentVariable("FLOORWHEEL_SOURCE") + "/" + path;
}

inline Ran run_floorwheel(const QStringList& words, const QByteArray& input = {}) {
  QProcess p;
  p.start(program_path(), words);
  p.write(input);
  p.closeWriteChannel();
  if (!p.waitForFinished(200'000)) return {-1, p.readAllStandardOutput(), p.errorString().toUtf8()};
  const bool exited = p.exitStatus() == QProcess::NormalExit;
  return {exited ? p.exitCode() : -2, p.readAllStandardOutput(), p.readAllStandardError()};
}

inline QByteArray file_text(const QString& path) {
  QFile file(path);
  return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

inline void write_file(const QString& path, const QByteArray& text) {
  QFile file(path);
  if (!file.open(QIODevice::WriteOnly) || file.write(text) != text.size())
    qFatal("cannot write %s", qPrintable(path));
}
