// SPDX-License-Identifier: GPL-3.0-or-later
// Members on one of their first four visits: which, and what we suggest to look at. Known to the page of
// heads too, which puts a word beside them.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QJsonArray>
#include <QMap>
#include <QObject>
#include <QString>

#include "kiosk/screens/instructor_flow.h"
#include "kiosk/screens/instructor_rows.h"

namespace floorwheel::screens {

class InstructorNew : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Instructor.newcomers")
  // A page: member, alias, visit ("visit 2"), where ("here", "expected", "last on 3 May"), purpose, more.
  Q_PROPERTY(floorwheel::screens::RowModel* members READ members CONSTANT FINAL)
  Q_PROPERTY(QString heading READ heading NOTIFY changed FINAL)
  Q_PROPERTY(QString empty READ empty NOTIFY changed FINAL)  // why there is no row; else ""
  Q_PROPERTY(int pages READ pages NOTIFY changed FINAL)
  Q_PROPERTY(QString pageText READ pageText NOTIFY changed FINAL)

 public:
  explicit InstructorNew(InstructorFlow& flow, QObject* parent);

  [[nodiscard]] RowModel* members() const { return members_; }
  [[nodiscard]] QString heading() const;
  [[nodiscard]] QString empty() const;
  [[nodiscard]] int pages() const;
  [[nodiscard]] QString pageText() const;

  /// "visit 2" for one of the first four, else "".
  [[nodiscard]] QString visit_word(const QString& member) const;

  Q_INVOKABLE void open();
  Q_INVOKABLE void nextPage();

 Q_SIGNALS:
  void changed();

 private:
  void ask();
  void read_hall();
  void show();

  InstructorFlow& flow_;
  RowModel* members_;
  QJsonArray rows_;
  QMap<QString, int> visit_of_;
  QString question_;
  QString trouble_;
  QString asked_for_;  // the class and how many are here: asked anew when it changes
  bool answered_ = false;
  int page_ = 0;
};

}  // namespace floorwheel::screens
