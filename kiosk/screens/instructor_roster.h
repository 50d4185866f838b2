// SPDX-License-Identifier: GPL-3.0-or-later
// The roster: who is in the class, what is to be known of them, and the one chosen, whose strand is yellow.
// Those with a note come first; two keys step through it.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QString>

#include "kiosk/screens/instructor_flow.h"
#include "kiosk/screens/instructor_new.h"
#include "kiosk/screens/instructor_rows.h"

namespace floorwheel::screens {

class InstructorRoster : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Instructor.roster")
  Q_PROPERTY(QString heading READ heading NOTIFY changed FINAL)
  Q_PROPERTY(floorwheel::screens::RowModel* rows READ rows CONSTANT
                 FINAL)  // six round the chosen: name, note, follows, chosen

 public:
  InstructorRoster(InstructorFlow& flow, InstructorNew& newcomers, QObject* parent);

  [[nodiscard]] QString heading() const;
  [[nodiscard]] RowModel* rows() const { return rows_; }
  [[nodiscard]] std::string chosen() const { return chosen_; }  // member id, "" for nobody

  Q_INVOKABLE void up();
  Q_INVOKABLE void down();

 Q_SIGNALS:
  void changed();

 private:
  void show();
  void step(int by);
  [[nodiscard]] std::vector<const wire::MemberView*> people() const;

  InstructorFlow& flow_;
  InstructorNew& newcomers_;
  RowModel* rows_;
  std::string chosen_;
  bool stepped_ = false;  // until then the first is chosen, whoever that becomes
};

}  // namespace floorwheel::screens
