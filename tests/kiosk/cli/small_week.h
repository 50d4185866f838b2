// SPDX-License-Identifier: GPL-3.0-or-later
// A small week file for tests, and the JSON a program printed.
#pragma once

#include <QByteArray>
#include <QJsonDocument>
#include <QJsonObject>

#include "tests/kiosk/cli/program.h"

inline QJsonObject json_of(const Ran& ran) {
  QJsonParseError error;
  const auto document = QJsonDocument::fromJson(ran.out, &error);
  if (error.error != QJsonParseError::NoError)
    qFatal("%s in %s%s", qPrintable(error.errorString()), ran.out.data(), ran.err.data());
  return document.object();
}

/// The small week with one text in place of another.
inline QByteArray small_week(const QByteArray& from, const QByteArray& to) {
  QByteArray toml =
      "[week]\nname = \"W\"\ntarget_sets = { default = [2, 8], neck = [0, 6] }\n\n[[class]]\nday = "
      "\"Tuesday\"\n"
      "level = \"novice\"\nlength_min = 60\nstations = 4\nlaps = 2\nwork_s = 40\nchange_s = 20\n"
      "equipment = { kettlebell = 2, mat = 2 }\nkeep = [\"goblet-squat\"]\n";
  if (!toml.contains(from)) qFatal("no %s in the week", from.data());
  return toml.replace(from, to);
}
