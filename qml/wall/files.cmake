# SPDX-License-Identifier: GPL-3.0-or-later
# The files of the wall screen: QML as paths under qml/, C++ as names under kiosk/screens/.
set(wall_qml
  wall/ChevronRing.qml
  wall/GoTag.qml
  wall/Hand.qml
  wall/Rail.qml
  wall/RailPiece.qml
  wall/StationDisc.qml
  wall/StopAndHelp.qml
  wall/StrokeSet.qml
  wall/Strokes.qml
  wall/WallLine.qml
  wall/WallScreen.qml
  wall/Wheel.qml)
set(wall_sources
  wall_columns.h wall_columns.cpp
  wall_face.h wall_face.cpp
  wall_items.h wall_items.cpp
  wall_middle.h wall_middle.cpp
  wall_rows.h wall_rows.cpp
  wall_site.h wall_site.cpp
  wall_text.h wall_text.cpp
  wall_view.h wall_view.cpp)
