// SPDX-License-Identifier: GPL-3.0-or-later
// The programmes in the hub's data folder and what the programme check finds in one of them. A file that
// cannot be read says where and why.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QJsonObject>
#include <QObject>
#include <QString>
#include <QStringList>

#include "kiosk/screens/instructor_exercises.h"
#include "kiosk/screens/instructor_flow.h"
#include "kiosk/screens/instructor_rows.h"

namespace floorwheel::screens {

class InstructorProgrammes : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Instructor.programmes")
  Q_PROPERTY(floorwheel::screens::RowModel* names READ names CONSTANT FINAL)  // a page: name
  Q_PROPERTY(QString namesEmpty READ namesEmpty NOTIFY changed FINAL)         // why there is no name; else ""
  Q_PROPERTY(int namePages READ namePages NOTIFY changed FINAL)
  Q_PROPERTY(QString namePageText READ namePageText NOTIFY changed FINAL)
  // Of the one chosen.
  Q_PROPERTY(QString title READ title NOTIFY changed FINAL)
  Q_PROPERTY(QString summary READ summary NOTIFY changed FINAL)
  Q_PROPERTY(
      QString error READ error NOTIFY changed FINAL)  // the file cannot be read: where and why; else ""
  // A page: severity (word), grave (must), place, found, wanted, mend, source.
  Q_PROPERTY(floorwheel::screens::RowModel* findings READ findings CONSTANT FINAL)
  Q_PROPERTY(int pages READ pages NOTIFY changed FINAL)
  Q_PROPERTY(QString pageText READ pageText NOTIFY changed FINAL)

 public:
  InstructorProgrammes(InstructorFlow& flow, InstructorExercises& exercises, QObject* parent);

  [[nodiscard]] RowModel* names() const { return names_; }
  [[nodiscard]] QString namesEmpty() const;
  [[nodiscard]] int namePages() const;
  [[nodiscard]] QString namePageText() const;
  [[nodiscard]] QString title() const;
  [[nodiscard]] QString summary() const;
  [[nodiscard]] QString error() const;
  [[nodiscard]] RowModel* findings() const { return findings_; }
  [[nodiscard]] int pages() const;
  [[nodiscard]] QString pageText() const;

  Q_INVOKABLE void open();
  Q_INVOKABLE void check(const QString& name);
  Q_INVOKABLE void again();
  Q_INVOKABLE void nextNames();
  Q_INVOKABLE void nextPage();

 Q_SIGNALS:
  void changed();

 private:
  void show();
  [[nodiscard]] QVariantMap row_of(const QJsonObject& finding) const;
  [[nodiscard]] int count(const char* severity) const;

  InstructorFlow& flow_;
  InstructorExercises& exercises_;
  RowModel* names_;
  RowModel* findings_;
  QStringList all_;
  QJsonObject checked_;
  QString name_;
  QString names_question_;
  QString check_question_;
  QString trouble_;
  bool answered_ = false;
  int name_page_ = 0;
  int page_ = 0;
};

}  // namespace floorwheel::screens
