// SPDX-License-Identifier: GPL-3.0-or-later
// The classes of the timetable: which one the instructor takes now. The next one is proposed.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QJsonObject>
#include <QObject>
#include <QString>

#include "kiosk/screens/instructor_flow.h"
#include "kiosk/screens/instructor_rows.h"

namespace floorwheel::screens {

class InstructorClasses : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Instructor.classes")
  Q_PROPERTY(QString bigTime READ bigTime NOTIFY changed FINAL)  // of the class proposed; "" if there is none
  Q_PROPERTY(QString bigName READ bigName NOTIFY changed FINAL)
  Q_PROPERTY(QString bigWhen READ bigWhen NOTIFY changed FINAL)
  Q_PROPERTY(QString people READ people NOTIFY changed FINAL)
  Q_PROPERTY(QString plan READ plan NOTIFY changed FINAL)
  Q_PROPERTY(floorwheel::screens::RowModel* others READ others CONSTANT
                 FINAL)  // the two beside it: row, time, name, when, people
  Q_PROPERTY(
      floorwheel::screens::RowModel* all READ all CONSTANT FINAL)  // a page of all: the same, and chosen
  Q_PROPERTY(int pages READ pages NOTIFY changed FINAL)
  Q_PROPERTY(int page READ page NOTIFY changed FINAL)

 public:
  explicit InstructorClasses(InstructorFlow& flow, QObject* parent);

  [[nodiscard]] QString bigTime() const;
  [[nodiscard]] QString bigName() const;
  [[nodiscard]] QString bigWhen() const;
  [[nodiscard]] QString people() const;
  [[nodiscard]] QString plan() const;
  [[nodiscard]] RowModel* others() const { return others_; }
  [[nodiscard]] RowModel* all() const { return all_; }
  [[nodiscard]] int pages() const;
  [[nodiscard]] int page() const { return page_; }

  /// Another class is proposed: its row in the list of all.
  Q_INVOKABLE void choose(int index);
  Q_INVOKABLE void nextPage();
  /// Opens the class proposed.
  Q_INVOKABLE void take();

 Q_SIGNALS:
  void changed();

 private:
  struct Item {
    QString id, name, start, state;
    int expected = 0;
    int here = 0;
  };
  void ask();
  void take_answer(const QJsonObject& body);
  void show();
  [[nodiscard]] const Item* big() const;
  [[nodiscard]] const wire::ClassView* view_of(const Item&) const;
  [[nodiscard]] QString when(const Item&) const;
  [[nodiscard]] QVariantMap row(int index) const;

  InstructorFlow& flow_;
  RowModel* others_;
  RowModel* all_;
  QList<Item> items_;
  QString question_;
  QString chosen_;  // id; "" lets the hub's order decide
  int page_ = 0;
};

}  // namespace floorwheel::screens
