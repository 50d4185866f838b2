// SPDX-License-Identifier: GPL-3.0-or-later
// What the instructor reads while the class runs: the state and its seconds, the chosen member, what comes
// next, sets kept, cost, the last change. Texts only.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QString>
#include <QStringList>

#include "kiosk/screens/instructor_flow.h"
#include "kiosk/screens/instructor_roster.h"

namespace floorwheel::screens {

class InstructorRun : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Instructor.run")
  Q_PROPERTY(QString state READ state NOTIFY changed FINAL)    // "Work", "Held"
  Q_PROPERTY(QString place READ place NOTIFY changed FINAL)    // "Slot 16 of 24, lap 2"
  Q_PROPERTY(QString sheet READ sheet NOTIFY changed FINAL)    // "run sheet 1, ends 19:10"
  Q_PROPERTY(QString member READ member NOTIFY changed FINAL)  // the one chosen
  Q_PROPERTY(QList<QString> memberLines READ memberLines NOTIFY changed FINAL)
  Q_PROPERTY(QList<QString> nextLines READ nextLines NOTIFY changed FINAL)
  Q_PROPERTY(QList<QString> keptLines READ keptLines NOTIFY changed FINAL)
  Q_PROPERTY(QList<QString> costLines READ costLines NOTIFY changed FINAL)
  Q_PROPERTY(QString lastChange READ lastChange NOTIFY changed FINAL)
  Q_PROPERTY(QString resumeNote READ resumeNote NOTIFY changed FINAL)
  Q_PROPERTY(QString repeatNote READ repeatNote NOTIFY changed FINAL)
  Q_PROPERTY(QString closeNote READ closeNote NOTIFY changed FINAL)

 public:
  InstructorRun(InstructorFlow& flow, InstructorRoster& roster, QObject* parent);

  [[nodiscard]] QString state() const;
  [[nodiscard]] QString place() const;
  [[nodiscard]] QString sheet() const;
  [[nodiscard]] QString member() const;
  [[nodiscard]] QStringList memberLines() const;
  [[nodiscard]] QStringList nextLines() const;
  [[nodiscard]] QStringList keptLines() const;
  [[nodiscard]] QStringList costLines() const;
  [[nodiscard]] QString lastChange() const;
  [[nodiscard]] QString resumeNote() const;
  [[nodiscard]] QString repeatNote() const;
  [[nodiscard]] QString closeNote() const;

 Q_SIGNALS:
  void changed();

 private:
  [[nodiscard]] const wire::Segment* segment(int index) const;
  [[nodiscard]] int last_worked_slot() const;
  [[nodiscard]] QString at(const std::string& member, int slot) const;

  InstructorFlow& flow_;
  InstructorRoster& roster_;
};

}  // namespace floorwheel::screens
