// SPDX-License-Identifier: GPL-3.0-or-later
// Puts whole teams (members held together; mostly one) on a sheet by the best path of each member, on a ring
// or freely. A sheet that is built and rebuilt this way keeps all rules at every moment.
#pragma once

#include "scheduler/rotation/member_path.h"
#include "scheduler/rotation/price.h"

namespace floorwheel {

/// How rows are laid out: freely, or along a ring.
struct Track {
  std::vector<StationIndex> ring;  // empty: free
  std::vector<int> place;          // inverse of ring
  [[nodiscard]] bool is_ring() const { return !ring.empty(); }
};
Track ring_track(std::vector<StationIndex> ring);

class Placement {
 public:
  /// `width`: labels a free path keeps; `thorough`: a ring path leaves nothing out.
  Placement(const Problem&, Track, int width, bool thorough, Random&);

  [[nodiscard]] const Track& track() const { return track_; }

  /// Everybody from the first planned slot on, those with the least slack first.
  void build(Sheet&);
  /// In a repair: everybody stays where the earlier sheet has them, as far as the rules let; teams that lose
  /// an entry or had none are placed anew.
  void build_from_old(Sheet&);
  void remove(Sheet&, int team);
  void insert(Sheet&, int team);

 private:
  void insert_member(Sheet&, int m);
  bool follows(const Sheet&, int m, const Openings&) const;
  bool holds(const Sheet&, int team) const;
  bool put_old(Sheet&, int team);

  const Problem& p_;
  Track track_;
  int width_;
  bool thorough_;
  Random& random_;
  std::vector<std::uint8_t> placed_;
};

}  // namespace floorwheel
