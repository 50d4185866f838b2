# SPDX-License-Identifier: GPL-3.0-or-later
# The files of the instructor screen: QML as paths under qml/, C++ as names under kiosk/screens/.
set(instructor_qml
  instructor/InstructorScreen.qml)
set(instructor_sources)
