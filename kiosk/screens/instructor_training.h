// SPDX-License-Identifier: GPL-3.0-or-later
// Training beside the class: whose last visit notes pain, and who makes no progress. Asked from the hub when
// the page is opened; a key a row leads to the member's talk sheet.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QJsonArray>
#include <QObject>
#include <QString>

#include "kiosk/screens/instructor_exercises.h"
#include "kiosk/screens/instructor_flow.h"
#include "kiosk/screens/instructor_rows.h"

namespace floorwheel::screens {

class InstructorTraining : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Instructor.training")
  // A page of each: member, alias, exercise, load, line (when or how long), reason.
  Q_PROPERTY(floorwheel::screens::RowModel* pain READ pain CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::RowModel* stalls READ stalls CONSTANT FINAL)
  Q_PROPERTY(QString painHeading READ painHeading NOTIFY changed FINAL)
  Q_PROPERTY(QString stallHeading READ stallHeading NOTIFY changed FINAL)
  Q_PROPERTY(QString painEmpty READ painEmpty NOTIFY changed FINAL)  // why there is no row; else ""
  Q_PROPERTY(QString stallEmpty READ stallEmpty NOTIFY changed FINAL)
  Q_PROPERTY(int pages READ pages NOTIFY changed FINAL)
  Q_PROPERTY(QString pageText READ pageText NOTIFY changed FINAL)

 public:
  InstructorTraining(InstructorFlow& flow, InstructorExercises& exercises, QObject* parent);

  [[nodiscard]] RowModel* pain() const { return pain_; }
  [[nodiscard]] RowModel* stalls() const { return stalls_; }
  [[nodiscard]] QString painHeading() const;
  [[nodiscard]] QString stallHeading() const;
  [[nodiscard]] QString painEmpty() const;
  [[nodiscard]] QString stallEmpty() const;
  [[nodiscard]] int pages() const;
  [[nodiscard]] QString pageText() const;

  Q_INVOKABLE void open();
  Q_INVOKABLE void nextPage();

 Q_SIGNALS:
  void changed();

 private:
  void ask();
  void show();
  [[nodiscard]] QString why_empty(const QString& otherwise) const;

  InstructorFlow& flow_;
  InstructorExercises& exercises_;
  RowModel* pain_;
  RowModel* stalls_;
  QJsonArray pain_rows_;
  QJsonArray stall_rows_;
  QString question_;
  QString trouble_;
  bool answered_ = false;
  int page_ = 0;
};

}  // namespace floorwheel::screens
