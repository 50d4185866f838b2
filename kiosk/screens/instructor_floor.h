// SPDX-License-Identifier: GPL-3.0-or-later
// As laid out, before the start: what stands where in truth. Stations lie round the page as round the room;
// each change is told at once, the last can be taken back, and the proposal is made anew in the end.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QJsonObject>
#include <QObject>
#include <QString>
#include <QStringList>

#include "kiosk/screens/instructor_exercises.h"
#include "kiosk/screens/instructor_flow.h"
#include "kiosk/screens/instructor_picker.h"
#include "kiosk/screens/instructor_rows.h"

namespace floorwheel::screens {

class InstructorFloor : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Instructor.floor")
  Q_PROPERTY(floorwheel::screens::RowModel* stations READ stations CONSTANT
                 FINAL)  // id, letter, text, note, closed, chosen, column, line
  Q_PROPERTY(QString letter READ letter NOTIFY changed FINAL)  // of the one chosen
  Q_PROPERTY(QString name READ name NOTIFY changed FINAL)
  Q_PROPERTY(QString note READ note NOTIFY changed FINAL)
  Q_PROPERTY(bool closed READ closed NOTIFY changed FINAL)
  Q_PROPERTY(QString heading READ heading NOTIFY changed FINAL)  // "12 stations, 1 closed"
  Q_PROPERTY(QString told READ told NOTIFY changed FINAL)        // "B was changed, K closed."
  Q_PROPERTY(QString effect READ effect NOTIFY changed FINAL)
  Q_PROPERTY(bool canUndo READ canUndo NOTIFY changed FINAL)
  Q_PROPERTY(int pages READ pages NOTIFY changed FINAL)
  Q_PROPERTY(QString pageText READ pageText NOTIFY changed FINAL)

 public:
  InstructorFloor(InstructorFlow& flow, InstructorPicker& picker, InstructorExercises& exercises,
                  QObject* parent);

  [[nodiscard]] RowModel* stations() const { return rows_; }
  [[nodiscard]] QString letter() const;
  [[nodiscard]] QString name() const;
  [[nodiscard]] QString note() const;
  [[nodiscard]] bool closed() const;
  [[nodiscard]] QString heading() const;
  [[nodiscard]] QString told() const;
  [[nodiscard]] QString effect() const;
  [[nodiscard]] bool canUndo() const { return !undo_.isEmpty(); }
  [[nodiscard]] int pages() const;
  [[nodiscard]] QString pageText() const;

  Q_INVOKABLE void open();
  Q_INVOKABLE void choose(const QString& id);
  Q_INVOKABLE void setExercise();
  Q_INVOKABLE void swap();
  Q_INVOKABLE void toggle();  // close, or open again
  Q_INVOKABLE void add();
  Q_INVOKABLE void undo();
  Q_INVOKABLE void asInFile();
  Q_INVOKABLE void right();
  Q_INVOKABLE void nextPage();

 Q_SIGNALS:
  void changed();

 private:
  struct Undo {
    QString kind;
    QJsonObject fields;
    QString told;  // what was done, for the middle of the page
  };
  void show();
  void tell(const QString& kind, const QJsonObject& fields, const Undo& back);
  [[nodiscard]] const wire::StationView* chosen() const;
  [[nodiscard]] QString letter_of(const QString& id) const;

  InstructorFlow& flow_;
  InstructorPicker& picker_;
  InstructorExercises& exercises_;
  RowModel* rows_;
  QString class_;
  QString chosen_;
  QList<Undo> undo_;
  QMap<QString, Undo> waiting_;  // told, not yet confirmed
  QString undoing_;
  bool touched_ = false;
  int page_ = 0;
};

}  // namespace floorwheel::screens
