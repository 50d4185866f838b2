// SPDX-License-Identifier: GPL-3.0-or-later
// The two columns of the wall: breaks names into lines, asks the layout for boxes, and sets aliases, exercise
// names, tags and leaders into them.
#pragma once

#include "kiosk/screens/wall_items.h"

namespace floorwheel::screens {

class WallColumns {
 public:
  WallColumns(const WallFace&, const WallText&);

  [[nodiscard]] WheelLayout layout(int page) const;
  void add(const WheelLayout&, WallItems&) const;
  /// Before a run sheet: who is in, without boxes. Returns the count of pages.
  int add_gathering(int page, WallItems&) const;

 private:
  struct Part {  // a piece of an alias in a joined line
    int person = 0;
    int line = 0;
    QString label;
    bool joins = true;  // may stand beside others
  };
  struct Box {
    QString key;
    const std::vector<WallPerson>* people = nullptr;
    QStringList name;
    std::vector<QStringList> go;      // lines of each alias on the go face
    std::vector<QStringList> tagged;  // lines of each alias with a small tag
    std::vector<std::vector<Part>> joined;
    bool closed = false;
    bool name_bold = false;
  };
  void take_boxes(int go_lines);
  [[nodiscard]] bool shortened_stay_apart() const;
  [[nodiscard]] Box box_of(const QString& key, const QString& name, const std::vector<WallPerson>& people,
                           bool closed, int go_lines) const;
  [[nodiscard]] static WheelStation ask_of(const Box&);
  void add_name(const WheelBox&, const WheelRow&, const Box&, WallItems&) const;
  void add_joined(const WheelBox&, const WheelRow&, const Box&, WallItems&) const;
  void add_person(const WheelBox&, const WheelRow&, const Box&, WallItems&) const;
  void add_tags(const WheelBox&, const Box&, WallItems&) const;
  void add_dots(const WheelBox&, const WheelTag&, const Box&, double tag_left, WallItems&) const;

  const WallFace& face_;
  const WallText& measure_;
  std::vector<Box> boxes_;  // of the stations, then the waiting place
  bool go_ = false;
  WallTags tags_ = WallTags::none;
};

}  // namespace floorwheel::screens
