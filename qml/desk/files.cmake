# SPDX-License-Identifier: GPL-3.0-or-later
# The files of the desk screen: QML as paths under qml/, C++ as names under kiosk/screens/.
set(desk_qml
  desk/AttendancePage.qml
  desk/AttendanceTable.qml
  desk/ClassCard.qml
  desk/DeskKey.qml
  desk/DeskScreen.qml
  desk/DeskTab.qml
  desk/DeskText.qml
  desk/HowOften.qml
  desk/LastPanel.qml
  desk/MemberWeeks.qml
  desk/PeopleColumn.qml
  desk/TodayPage.qml
  desk/WalkIn.qml
  desk/WeekBars.qml)
set(desk_sources
  desk_reports.h desk_reports.cpp
  desk_tables.h desk_tables.cpp
  desk_today.h desk_today.cpp)
