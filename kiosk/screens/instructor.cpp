// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/instructor.h"

#include <QCoreApplication>
#include <QJSEngine>

namespace floorwheel::screens {

Instructor::Instructor(QObject* parent)
    : QObject(parent),
      flow_(new InstructorFlow(this)),
      classes_(new InstructorClasses(*flow_, this)),
      newcomers_(new InstructorNew(*flow_, this)),
      heads_(new InstructorHeads(*flow_, *newcomers_, this)),
      proposal_(new InstructorProposal(*flow_, this)),
      roster_(new InstructorRoster(*flow_, *newcomers_, this)),
      picker_(new InstructorPicker(*flow_, this)),
      exercises_(new InstructorExercises(this)),
      floor_(new InstructorFloor(*flow_, *picker_, *exercises_, this)),
      change_(new InstructorChange(*flow_, *picker_, *exercises_, this)),
      run_(new InstructorRun(*flow_, *roster_, this)),
      plait_(new InstructorPlait(*this, this)),
      training_(new InstructorTraining(*flow_, *exercises_, this)),
      pen_(new InstructorPen(*flow_, this)),
      talk_(new InstructorTalk(*flow_, *pen_, this)),
      programmes_(new InstructorProgrammes(*flow_, *exercises_, this)) {}

Instructor* Instructor::create(QQmlEngine*, QJSEngine*) {
  static Instructor* const instructor = new Instructor(QCoreApplication::instance());
  QJSEngine::setObjectOwnership(instructor, QJSEngine::CppOwnership);
  return instructor;
}

}  // namespace floorwheel::screens
