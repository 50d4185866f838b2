// SPDX-License-Identifier: GPL-3.0-or-later
// The talk sheet of one member, as texts: what was done, done of planned by group, three loads, the goal in
// the member's own words and what was agreed. The last two are written here and kept by the hub.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QJsonObject>
#include <QObject>
#include <QString>
#include <QStringList>

#include "kiosk/screens/instructor_flow.h"
#include "kiosk/screens/instructor_pen.h"
#include "kiosk/screens/instructor_rows.h"

namespace floorwheel::screens {

class InstructorTalk : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Instructor.talk")
  Q_PROPERTY(QString alias READ alias NOTIFY changed FINAL)
  Q_PROPERTY(QString about READ about NOTIFY changed FINAL)  // level and week; or what is missing
  Q_PROPERTY(QList<QString> done READ done NOTIFY changed FINAL)
  // group, amount ("4 of 6"), band, donePart and plannedPart (of the widest, 0 to 1)
  Q_PROPERTY(floorwheel::screens::RowModel* groups READ groups CONSTANT FINAL)
  // name, from, to, trend, points (x and y in turn, 0 to 1)
  Q_PROPERTY(floorwheel::screens::RowModel* loads READ loads CONSTANT FINAL)
  Q_PROPERTY(QString goal READ goal NOTIFY changed FINAL)
  Q_PROPERTY(QString goalNote READ goalNote NOTIFY changed FINAL)
  Q_PROPERTY(QString agreed READ agreed NOTIFY changed FINAL)
  Q_PROPERTY(QString agreedNote READ agreedNote NOTIFY changed FINAL)
  Q_PROPERTY(bool ready READ ready NOTIFY changed FINAL)  // the sheet is here

 public:
  InstructorTalk(InstructorFlow& flow, InstructorPen& pen, QObject* parent);

  [[nodiscard]] QString alias() const;
  [[nodiscard]] QString about() const;
  [[nodiscard]] QStringList done() const;
  [[nodiscard]] RowModel* groups() const { return groups_; }
  [[nodiscard]] RowModel* loads() const { return loads_; }
  [[nodiscard]] QString goal() const;
  [[nodiscard]] QString goalNote() const;
  [[nodiscard]] QString agreed() const;
  [[nodiscard]] QString agreedNote() const;
  [[nodiscard]] bool ready() const { return !sheet_.isEmpty(); }

  Q_INVOKABLE void open(const QString& member);
  Q_INVOKABLE void back();  // to the page it was opened from
  Q_INVOKABLE void writeGoal();
  Q_INVOKABLE void writeAgreed();

 Q_SIGNALS:
  void changed();

 private:
  void ask();
  void show();
  void write(const QString& field, const QString& title);
  [[nodiscard]] QString stands(const QString& field) const;
  [[nodiscard]] QString note_of(const QString& field) const;

  InstructorFlow& flow_;
  InstructorPen& pen_;
  RowModel* groups_;
  RowModel* loads_;
  QString member_;
  QString from_;  // the page it was opened from
  QString question_;
  QString told_;
  QString trouble_;
  QJsonObject sheet_;
};

}  // namespace floorwheel::screens
