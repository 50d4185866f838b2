// SPDX-License-Identifier: GPL-3.0-or-later
// Fields of the hub's answers by name; what is not there is empty or 0.
#pragma once

#include <QJsonObject>
#include <QString>

namespace floorwheel::screens {

inline QString text_in(const QJsonObject& o, const char* key) {
  return o.value(QLatin1String(key)).toString();
}
inline int whole_in(const QJsonObject& o, const char* key) { return o.value(QLatin1String(key)).toInt(); }
inline double number_in(const QJsonObject& o, const char* key) {
  return o.value(QLatin1String(key)).toDouble();
}

}  // namespace floorwheel::screens
