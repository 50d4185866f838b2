// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/instructor_as_if.h"

#include <QJsonDocument>

namespace floorwheel::screens {

namespace {
std::string compact(const QJsonObject& o) {
  return QJsonDocument(o).toJson(QJsonDocument::Compact).toStdString();
}
}  // namespace

std::optional<wire::ClassView> as_if(const wire::Hall& hall, const std::string& class_id,
                                     const QJsonObject& answer) {
  const QJsonObject sheet = answer.value(QStringLiteral("sheet")).toObject();
  const auto found = hall.classes.find(class_id);
  if (sheet.isEmpty() || found == hall.classes.end()) return std::nullopt;
  wire::Hall copy;
  copy.current = class_id;
  copy.classes[class_id] = found->second;
  copy.exercise_names = hall.exercise_names;
  wire::Row row;
  row.seq = 1;
  row.kind = "class.publish";
  row.body = compact(
      {{QStringLiteral("class"), QString::fromStdString(class_id)}, {QStringLiteral("sheet"), sheet}});
  row.words = compact(answer.value(QStringLiteral("words")).toObject());
  // The clock is not the proposal's to move: what is shown of time stays that of the class.
  wire::fold(copy, row);
  wire::ClassView then = copy.classes[class_id];
  then.clock = found->second.clock;
  return then;
}

}  // namespace floorwheel::screens
