# SPDX-License-Identifier: GPL-3.0-or-later
# Tests and pictures of the wall.
add_library(wall_classes STATIC ${CMAKE_SOURCE_DIR}/tests/support/wall_classes.h
  ${CMAKE_SOURCE_DIR}/tests/support/wall_classes.cpp)
target_link_libraries(wall_classes PUBLIC floorwheel_wire PRIVATE floorwheel_options)
# Pictures of every state of the wall, to look at; not a test.
add_executable(wall_pictures wall_pictures.cpp)
target_link_libraries(wall_pictures PRIVATE floorwheel_options wall_classes floorwheel_ui floorwheel_uiplugin
  Qt6::Quick)
qt_import_qml_plugins(wall_pictures)

floorwheel_test(tst_wall_face tst_wall_face.cpp LIBS wall_classes floorwheel_ui)
floorwheel_test(tst_wall_legibility tst_wall_legibility.cpp LIBS wall_classes floorwheel_ui floorwheel_uiplugin)
qt_import_qml_plugins(tst_wall_legibility)
floorwheel_test(tst_wall_rows tst_wall_rows.cpp LIBS floorwheel_ui)
floorwheel_test(tst_wall_site tst_wall_site.cpp LIBS floorwheel_ui)
