# SPDX-License-Identifier: GPL-3.0-or-later
# The files of the touch screen: QML as paths under qml/, C++ as names under kiosk/screens/.
set(touch_qml
  touch/TouchScreen.qml)
set(touch_sources)
