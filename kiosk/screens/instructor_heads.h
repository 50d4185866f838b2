// SPDX-License-Identifier: GPL-3.0-or-later
// Counting heads: who is here, tapped name by name, and how many guests besides. Who checked in is ticked
// already; where nobody is, the main key takes everybody on the list.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QMap>
#include <QObject>
#include <QString>
#include <optional>

#include "kiosk/screens/instructor_flow.h"
#include "kiosk/screens/instructor_new.h"
#include "kiosk/screens/instructor_rows.h"

namespace floorwheel::screens {

class InstructorHeads : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Instructor.heads")
  // A page: member, name, here, visit ("visit 2" on one of the first four, else "").
  Q_PROPERTY(floorwheel::screens::RowModel* names READ names CONSTANT FINAL)
  Q_PROPERTY(int guests READ guests NOTIFY changed FINAL)
  Q_PROPERTY(int total READ total NOTIFY changed FINAL)  // people the main key counts
  Q_PROPERTY(QString summary READ summary NOTIFY changed FINAL)
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed FINAL)
  Q_PROPERTY(int pages READ pages NOTIFY changed FINAL)
  Q_PROPERTY(QString pageText READ pageText NOTIFY changed FINAL)

 public:
  InstructorHeads(InstructorFlow& flow, InstructorNew& newcomers, QObject* parent);

  [[nodiscard]] RowModel* names() const { return names_; }
  [[nodiscard]] int guests() const;
  [[nodiscard]] int total() const;
  [[nodiscard]] QString summary() const;
  [[nodiscard]] QString mainText() const;
  [[nodiscard]] int pages() const;
  [[nodiscard]] QString pageText() const;

  Q_INVOKABLE void tap(const QString& member);
  Q_INVOKABLE void moreGuests();
  Q_INVOKABLE void fewerGuests();
  Q_INVOKABLE void nextPage();
  Q_INVOKABLE void count();

 Q_SIGNALS:
  void changed();

 private:
  void read_hall();
  void show();
  [[nodiscard]] bool is_here(const wire::MemberView&) const;
  [[nodiscard]] bool takes_all() const;
  [[nodiscard]] int tapped() const;
  [[nodiscard]] QList<const wire::MemberView*> named() const;

  InstructorFlow& flow_;
  InstructorNew& newcomers_;
  RowModel* names_;
  QString class_;
  QString counted_;           // the count told last
  QMap<QString, bool> mine_;  // what was tapped here, by member
  std::optional<int> guests_;
  int page_ = 0;
};

}  // namespace floorwheel::screens
