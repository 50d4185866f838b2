# SPDX-License-Identifier: GPL-3.0-or-later
# The files of the desk screen: QML as paths under qml/, C++ as names under kiosk/screens/.
set(desk_qml
  desk/DeskScreen.qml)
set(desk_sources)
