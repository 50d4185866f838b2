# SPDX-License-Identifier: GPL-3.0-or-later
# The files of the instructor screen: QML as paths under qml/, C++ as names under kiosk/screens/.
set(instructor_qml
  instructor/InstructorScreen.qml
  instructor/BarKey.qml
  instructor/BesideBar.qml
  instructor/ChangePage.qml
  instructor/ClassPage.qml
  instructor/ClassesPage.qml
  instructor/ComparePage.qml
  instructor/EndPage.qml
  instructor/FindingsPage.qml
  instructor/FloorPage.qml
  instructor/FourWords.qml
  instructor/HeadsPage.qml
  instructor/LiveHeader.qml
  instructor/NewcomersPage.qml
  instructor/PickPage.qml
  instructor/PlaitPage.qml
  instructor/PlaitDots.qml
  instructor/PlaitView.qml
  instructor/PreviewPage.qml
  instructor/ProgrammesPage.qml
  instructor/ProposalPage.qml
  instructor/RosterColumn.qml
  instructor/RunPage.qml
  instructor/Said.qml
  instructor/Sentences.qml
  instructor/StopKey.qml
  instructor/StoppedPage.qml
  instructor/TalkDose.qml
  instructor/TalkLoads.qml
  instructor/TalkPage.qml
  instructor/TrainingKey.qml
  instructor/TrainingPage.qml
  instructor/WritePage.qml)
set(instructor_sources
  instructor.h instructor.cpp
  instructor_as_if.h instructor_as_if.cpp
  instructor_change.h instructor_change.cpp
  instructor_ways.cpp
  instructor_classes.h instructor_classes.cpp
  instructor_exercises.h instructor_exercises.cpp
  instructor_floor.h instructor_floor.cpp
  instructor_flow.h instructor_flow.cpp
  instructor_heads.h instructor_heads.cpp
  instructor_new.h instructor_new.cpp
  instructor_pen.h instructor_pen.cpp
  instructor_picker.h instructor_picker.cpp
  instructor_plait.h instructor_plait.cpp
  instructor_programmes.h instructor_programmes.cpp
  instructor_proposal.h instructor_proposal.cpp
  instructor_roster.h instructor_roster.cpp
  instructor_rows.h
  instructor_run.h instructor_run.cpp
  instructor_talk.h instructor_talk.cpp
  instructor_training.h instructor_training.cpp
  instructor_words.h instructor_words.cpp
  plait_layout.h plait_layout.cpp)
