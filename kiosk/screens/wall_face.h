// SPDX-License-Identifier: GPL-3.0-or-later
// What the wall says at one moment: the state, the people with their next letters, what the rail and the
// clock show. Pure: a class and a moment in, a value out. Every decision about the wall is made here; the
// items and QML only place it. Source: the table of the wall's states (DEVELOPERS.md, "The wall").
#pragma once

#include <QString>
#include <vector>

#include "kiosk/wire/hall.h"

namespace floorwheel::screens {

enum class WallState {
  nobody,  // no class chosen
  gather,  // a class is chosen, no run sheet yet: who is in
  ready,   // published, not started
  show,
  warm_up,
  lead_in,
  work,
  last,  // the last five seconds of work
  change,
  pause,
  cool_down,
  past_end,
  stopped,  // stop and help
};

struct WallPerson {
  QString id;
  QString alias;
  QString next;  // letter of the next place; "" if there is none to say
};
struct WallStation {
  QString id;
  QString letter;
  QString exercise;
  QString plan;  // "2 places, 12 reps", for the show
  bool closed = false;
  std::vector<WallPerson> people;
};

enum class WallTags { none, outlined, filled };
enum class WallRail { plain, sleepers, beads, chevrons };
enum class WallTone { active, go, held };  // the rail's colour

struct WallFace {
  WallState state = WallState::nobody;
  bool held = false;
  bool power_cut = false;
  bool lap_ends = false;  // of a pause
  bool ring = false;      // everybody moves one on; else next places
  bool free_rotation = false;
  bool free_tags = false;  // a tag for each person, else one for a box
  int slot = 0;
  int slot_count = 0;
  int lap = 0;
  int lap_count = 0;
  std::vector<WallStation> stations;  // in the order of the rail
  bool waiting_place = false;
  std::vector<WallPerson> waiting;
  std::vector<WallPerson> here;      // while gathering
  int shown = -1;                    // show: the station in turn
  WallState then = WallState::work;  // show: what comes next
  double hand = 0;                   // degrees
  int seconds_left = 0;
  int seconds_since_stop = 0;
  QString class_name;
  QString start;  // "18:30", or ""
};

/// `elapsed` decides everything that changes within a segment; a null class is WallState::nobody.
WallFace wall_face(const wire::ClassView*, const std::vector<wire::Segment>&, const wire::Moment&,
                   int seconds_since_stop);

/// Whether people stand at their places or read where to go.
bool shows_go_face(const WallFace&);
WallTags tags_of(const WallFace&);
WallRail rail_of(const WallFace&);
WallTone tone_of(const WallFace&);
/// Whether somebody works at a station now: a filled disc.
bool is_filled(const WallFace&, int station);

}  // namespace floorwheel::screens
