// SPDX-License-Identifier: GPL-3.0-or-later
// The desk's page of attendance and frequency: asks the hub and asks again whenever a class has ended.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QJsonArray>
#include <QObject>
#include <QStringList>

#include "kiosk/screens/row_model.h"

namespace floorwheel::screens {

class DeskReports : public QObject {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(floorwheel::screens::RowModel* bars READ bars CONSTANT FINAL)  // visits by ISO week
  Q_PROPERTY(floorwheel::screens::RowModel* memberWeeks READ memberWeeks CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::RowModel* howOften READ howOften CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::RowModel* attendance READ attendance CONSTANT FINAL)
  Q_PROPERTY(int weekCount READ weekCount NOTIFY changed FINAL)  // 12 or 4
  Q_PROPERTY(QStringList weeks READ weeks NOTIFY changed FINAL)  // their numbers, oldest first
  Q_PROPERTY(QString rangeText READ rangeText NOTIFY changed FINAL)
  Q_PROPERTY(int memberCount READ memberCount NOTIFY changed FINAL)
  Q_PROPERTY(int oftenCount READ oftenCount NOTIFY changed FINAL)  // members who come twice a week or more
  Q_PROPERTY(bool answered READ answered NOTIFY changed FINAL)

 public:
  explicit DeskReports(QObject* parent = nullptr);

  RowModel* bars() { return &bars_; }
  RowModel* memberWeeks() { return &member_weeks_; }
  RowModel* howOften() { return &how_often_; }
  RowModel* attendance() { return &attendance_; }
  [[nodiscard]] int weekCount() const { return week_count_; }
  [[nodiscard]] QStringList weeks() const;
  [[nodiscard]] QString rangeText() const;
  [[nodiscard]] int memberCount() const { return member_count_; }
  [[nodiscard]] int oftenCount() const;
  [[nodiscard]] bool answered() const { return answered_; }

  /// Twelve weeks, or the last four.
  Q_INVOKABLE void otherRange();
  Q_INVOKABLE void ask();

 Q_SIGNALS:
  void changed();

 private:
  void lay_out();
  [[nodiscard]] QDate today() const;

  RowModel bars_, member_weeks_, how_often_, attendance_;
  QString attendance_ask_, frequency_ask_, members_ask_;
  QJsonArray frequency_;
  int member_count_ = 0;
  int week_count_ = 12;
  int ended_ = -1;  // classes that had ended when last asked
  bool answered_ = false;
};

}  // namespace floorwheel::screens
