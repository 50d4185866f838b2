# SPDX-License-Identifier: GPL-3.0-or-later
# The files of the wall screen: QML as paths under qml/, C++ as names under kiosk/screens/.
set(wall_qml
  wall/WallScreen.qml)
set(wall_sources)
