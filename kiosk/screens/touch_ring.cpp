// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/touch_ring.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace floorwheel::screens {
namespace {

constexpr double start_deg = 4;
constexpr double between_regions_deg = 8;
constexpr double between_sectors_deg = 2;
constexpr double leader_gap = 8;

struct Place {
  Group group;
  bool always;
};
/// Clockwise: front upper body, back upper body, arms, trunk, legs.
const std::array<std::vector<Place>, 5> regions{{
    {{Group::chest, true}, {Group::shoulders, true}, {Group::serratus, false}},
    {{Group::upper_back, true}, {Group::lats, true}, {Group::rotator_cuff, false}, {Group::neck, false}},
    {{Group::biceps, true}, {Group::triceps, true}, {Group::forearms, true}},
    {{Group::abs, true}, {Group::obliques, true}, {Group::lower_back, true}},
    {{Group::glutes, true},
     {Group::quadriceps, true},
     {Group::hamstrings, true},
     {Group::adductors, false},
     {Group::abductors, false},
     {Group::hip_flexors, false},
     {Group::calves, true},
     {Group::shin, false}},
}};

/// The groups that stand there, region by region.
std::vector<std::vector<GroupDose>> standing(const std::vector<GroupDose>& trained) {
  std::vector<std::vector<GroupDose>> out;
  for (const auto& region : regions) {
    out.emplace_back();
    for (const Place& p : region) {
      const auto found = std::ranges::find(trained, p.group, &GroupDose::group);
      if (found != trained.end() && found->sets > 0)
        out.back().push_back(*found);
      else if (p.always)
        out.back().push_back({p.group, 0, 0});
    }
  }
  return out;
}

double middle_deg(const RingSector& s) { return s.from_deg + s.sweep_deg / 2; }

/// Words to the right from the top, to the left from the bottom, so that no leader crosses another.
void place_words(DoseRing& ring) {
  std::vector<RingSector*> right;
  std::vector<RingSector*> left;
  for (RingSector& s : ring.sectors) {
    s.at_right = middle_deg(s) <= 180;
    (s.at_right ? right : left).push_back(&s);
  }
  std::ranges::reverse(left);
  const auto rows = static_cast<double>(std::max(right.size(), left.size()));
  ring.row_height = (rows_bottom - rows_top) / rows;
  for (const auto& side : {right, left}) {
    // Fewer rows on one side stand in its middle.
    const double top = (rows_top + rows_bottom - ring.row_height * static_cast<double>(side.size())) / 2;
    for (std::size_t i = 0; i < side.size(); ++i) {
      RingSector& s = *side[i];
      const double angle = middle_deg(s) * std::numbers::pi / 180;
      s.row_y = top + (static_cast<double>(i) + 0.5) * ring.row_height;
      s.leader_x1 = s.at_right ? words_right : words_left;
      s.leader_y1 = s.row_y;
      s.leader_x2 = ring_x + (ring_outer + leader_gap) * std::sin(angle);
      s.leader_y2 = ring_y - (ring_outer + leader_gap) * std::cos(angle);
    }
  }
}

}  // namespace

DoseRing ring_of(const std::vector<GroupDose>& trained) {
  const auto body = standing(trained);
  std::size_t sectors = 0;
  for (const auto& region : body) sectors += region.size();
  const double gaps = between_regions_deg * static_cast<double>(body.size()) +
                      between_sectors_deg * static_cast<double>(sectors - body.size());
  const double sweep = (360 - gaps) / static_cast<double>(sectors);
  DoseRing ring;
  double at = start_deg;
  for (const auto& region : body) {
    for (const GroupDose& d : region) {
      RingSector s;
      s.dose = d;
      s.from_deg = at;
      s.sweep_deg = sweep;
      ring.sectors.push_back(s);
      at += sweep + between_sectors_deg;
    }
    at += between_regions_deg - between_sectors_deg;
  }
  place_words(ring);
  return ring;
}

int band_number(std::string_view id, int sets) {
  if (sets <= 0) return 0;
  constexpr std::array<std::string_view, ring_bands> ids{"under_3", "3_to_9", "10_to_15", "over_15"};
  const auto found = std::ranges::find(ids, id);
  return found == ids.end() ? 0 : static_cast<int>(found - ids.begin()) + 1;
}

}  // namespace floorwheel::screens
