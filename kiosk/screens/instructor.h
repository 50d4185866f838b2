// SPDX-License-Identifier: GPL-3.0-or-later
// The instructor's view models under one name for QML: Instructor.flow, Instructor.heads, ... Each has one
// subject; this one only makes them, in the order in which they lean on each other.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>

#include "kiosk/screens/instructor_change.h"
#include "kiosk/screens/instructor_classes.h"
#include "kiosk/screens/instructor_exercises.h"
#include "kiosk/screens/instructor_floor.h"
#include "kiosk/screens/instructor_flow.h"
#include "kiosk/screens/instructor_heads.h"
#include "kiosk/screens/instructor_new.h"
#include "kiosk/screens/instructor_pen.h"
#include "kiosk/screens/instructor_picker.h"
#include "kiosk/screens/instructor_plait.h"
#include "kiosk/screens/instructor_programmes.h"
#include "kiosk/screens/instructor_proposal.h"
#include "kiosk/screens/instructor_roster.h"
#include "kiosk/screens/instructor_run.h"
#include "kiosk/screens/instructor_talk.h"
#include "kiosk/screens/instructor_training.h"

class QQmlEngine;
class QJSEngine;

namespace floorwheel::screens {

class Instructor : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_SINGLETON
  Q_PROPERTY(floorwheel::screens::InstructorFlow* flow READ flow CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::InstructorClasses* classes READ classes CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::InstructorHeads* heads READ heads CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::InstructorProposal* proposal READ proposal CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::InstructorRoster* roster READ roster CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::InstructorPicker* picker READ picker CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::InstructorFloor* floor READ floor CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::InstructorChange* change READ change CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::InstructorRun* run READ run CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::InstructorPlait* plait READ plait CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::InstructorTraining* training READ training CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::InstructorPen* pen READ pen CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::InstructorTalk* talk READ talk CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::InstructorNew* newcomers READ newcomers CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::InstructorProgrammes* programmes READ programmes CONSTANT FINAL)

 public:
  // No default argument: a type that QML can construct by itself would get a second instance there.
  explicit Instructor(QObject* parent);
  static Instructor* create(QQmlEngine*, QJSEngine*);

  [[nodiscard]] InstructorFlow* flow() const { return flow_; }
  [[nodiscard]] InstructorClasses* classes() const { return classes_; }
  [[nodiscard]] InstructorHeads* heads() const { return heads_; }
  [[nodiscard]] InstructorProposal* proposal() const { return proposal_; }
  [[nodiscard]] InstructorRoster* roster() const { return roster_; }
  [[nodiscard]] InstructorPicker* picker() const { return picker_; }
  [[nodiscard]] InstructorFloor* floor() const { return floor_; }
  [[nodiscard]] InstructorChange* change() const { return change_; }
  [[nodiscard]] InstructorRun* run() const { return run_; }
  [[nodiscard]] InstructorPlait* plait() const { return plait_; }
  [[nodiscard]] InstructorTraining* training() const { return training_; }
  [[nodiscard]] InstructorPen* pen() const { return pen_; }
  [[nodiscard]] InstructorTalk* talk() const { return talk_; }
  [[nodiscard]] InstructorNew* newcomers() const { return newcomers_; }
  [[nodiscard]] InstructorProgrammes* programmes() const { return programmes_; }

 private:
  InstructorFlow* flow_;
  InstructorClasses* classes_;
  InstructorNew* newcomers_;
  InstructorHeads* heads_;
  InstructorProposal* proposal_;
  InstructorRoster* roster_;
  InstructorPicker* picker_;
  InstructorExercises* exercises_;
  InstructorFloor* floor_;
  InstructorChange* change_;
  InstructorRun* run_;
  InstructorPlait* plait_;
  InstructorTraining* training_;
  InstructorPen* pen_;
  InstructorTalk* talk_;
  InstructorProgrammes* programmes_;
};

}  // namespace floorwheel::screens
