# SPDX-License-Identifier: GPL-3.0-or-later
# The files of the touch screen: QML as paths under qml/, C++ as names under kiosk/screens/.
set(touch_qml
  touch/AnswerKey.qml
  touch/ArrivePage.qml
  touch/CardPage.qml
  touch/CardSideKeys.qml
  touch/ClockText.qml
  touch/EverybodyPage.qml
  touch/HandCard.qml
  touch/HurtsPage.qml
  touch/InPage.qml
  touch/KeptLine.qml
  touch/KeyGrid.qml
  touch/LeaveNote.qml
  touch/LetterKeys.qml
  touch/LoadChoice.qml
  touch/NewPage.qml
  touch/NextPlace.qml
  touch/NonePage.qml
  touch/PersonKey.qml
  touch/PlainFigure.qml
  touch/QuestionPage.qml
  touch/SeatRing.qml
  touch/SetsPage.qml
  touch/SpotKey.qml
  touch/SpotPage.qml
  touch/Stepper.qml
  touch/StopPage.qml
  touch/TimeHeader.qml
  touch/TouchNote.qml
  touch/TouchRule.qml
  touch/TouchScreen.qml
  touch/WeekLoads.qml
  touch/WeekOff.qml
  touch/WeekPage.qml
  touch/WeekRing.qml
  touch/WeekSector.qml
  touch/WeekTrends.qml
  touch/WhoPage.qml)
set(touch_sources
  touch_card.h touch_card.cpp
  touch_check_in.h touch_check_in.cpp
  touch_kept.h touch_kept.cpp
  touch_keys.h touch_keys.cpp
  touch_ring.h touch_ring.cpp
  touch_rules.h touch_rules.cpp
  touch_visit.h touch_visit.cpp
  touch_week.h touch_week.cpp
  touch_week_words.h touch_week_words.cpp)
