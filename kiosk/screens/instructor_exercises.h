// SPDX-License-Identifier: GPL-3.0-or-later
// The exercise table as the instructor picks from it: asked from the hub once, what can stand in for the
// present exercise first, then what trains the same groups, then the rest by name.
#pragma once

#include <QObject>
#include <QStringList>

#include "kiosk/screens/instructor_picker.h"
#include "kiosk/wire/hall.h"

namespace floorwheel::screens {

class InstructorExercises : public QObject {
  Q_OBJECT
 public:
  explicit InstructorExercises(QObject* parent);

  /// In order for a station; without one by name. Empty until the hub has answered (`changed`).
  [[nodiscard]] QList<InstructorPicker::Option> options_for(const wire::StationView* station) const;
  /// The first substitute of an exercise that no other station has, or "".
  [[nodiscard]] QString first_substitute(const wire::ClassView& c, const wire::StationView& station) const;
  [[nodiscard]] QString name_of(const QString& id) const;

 Q_SIGNALS:
  void changed();

 private:
  struct Item {
    QString id, name;
    QStringList primary, substitutes;
  };
  void ask();
  [[nodiscard]] const Item* find(const QString& id) const;

  QString question_;
  QList<Item> items_;
};

}  // namespace floorwheel::screens
