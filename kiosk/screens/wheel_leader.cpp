// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/wheel_leader.h"

#include <algorithm>
#include <cmath>

namespace floorwheel::screens {
namespace {

constexpr double ends_before = wheel::disc + 10;  // from the centre of its own disc
constexpr double keeps_from = wheel::disc + 4;    // from the centre of any other: its line is 4 wide
// Beside the bracket, where a detour runs; the second where a disc at three or nine o'clock leaves no more.
constexpr double asides[] = {14, 7};
constexpr double headline_foot = 150;  // a leader that starts higher goes round the headline
constexpr double below_headline = 192;
constexpr double search_from = 150;
constexpr double search_to = 1074;
constexpr double search_step = 4;

WheelPoint towards(WheelPoint from, WheelPoint to, double short_of) {
  const double d = std::hypot(to.x - from.x, to.y - from.y);
  if (d <= short_of) return from;
  const double k = (d - short_of) / d;
  return {from.x + (to.x - from.x) * k, from.y + (to.y - from.y) * k};
}

bool clear(const WheelLine& line, const LeaderWay& way) {
  const WheelRect plate{wheel::plate.x - 6, wheel::plate.y - 6, wheel::plate.w + 12, wheel::plate.h + 12};
  for (std::size_t i = 1; i < line.size(); ++i) {
    for (WheelPoint o : way.others)
      if (distance_to_segment(o, line[i - 1], line[i]) < keeps_from) return false;
    if (way.plate && segment_meets(line[i - 1], line[i], plate)) return false;
  }
  return true;
}

/// Along x beside the bracket to `y`, then to the disc; `from_x` further along that y first, if said.
WheelLine round_by(WheelPoint start, double side, double y, WheelPoint disc, double from_x = 0) {
  const double bevel = std::abs(side);
  const double by = start.y + (y >= start.y ? std::min(bevel, y - start.y) : std::max(-bevel, y - start.y));
  WheelLine line{start, {start.x + side, by}, {start.x + side, y}};
  if (from_x != 0) line.push_back({from_x, y});
  line.push_back(towards(line.back(), disc, ends_before));
  return line;
}

}  // namespace

double distance_to_segment(WheelPoint p, WheelPoint a, WheelPoint b) {
  const double dx = b.x - a.x;
  const double dy = b.y - a.y;
  const double length2 = dx * dx + dy * dy;
  const double t = length2 > 0 ? std::clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / length2, 0.0, 1.0) : 0.0;
  return std::hypot(a.x + t * dx - p.x, a.y + t * dy - p.y);
}

bool segment_meets(WheelPoint a, WheelPoint b, const WheelRect& r) {
  // Liang-Barsky: the part of the segment inside each pair of edges.
  double t0 = 0;
  double t1 = 1;
  const double p[4] = {a.x - b.x, b.x - a.x, a.y - b.y, b.y - a.y};
  const double q[4] = {a.x - r.x, r.right() - a.x, a.y - r.y, r.bottom() - a.y};
  for (int i = 0; i < 4; ++i) {
    if (p[i] == 0) {
      if (q[i] < 0) return false;
      continue;
    }
    const double t = q[i] / p[i];
    if (p[i] < 0)
      t0 = std::max(t0, t);
    else
      t1 = std::min(t1, t);
    if (t0 > t1) return false;
  }
  return true;
}

std::optional<WheelLine> leader_to_disc(double x, double top, double bottom, WheelPoint disc,
                                        const LeaderWay& way) {
  const double inward = x < wheel::centre.x ? 1 : -1;
  const WheelPoint start{x, std::clamp(disc.y, top, bottom)};
  const bool beside_headline = start.y < headline_foot;
  WheelLine line = beside_headline ? round_by(start, inward * asides[0], below_headline, disc)
                                   : WheelLine{start, towards(start, disc, ends_before)};
  if (clear(line, way)) return line;

  for (double aside : asides) {
    std::optional<WheelLine> best;
    double best_off = 0;
    for (double y = search_from; y <= search_to; y += search_step) {
      if (beside_headline && y < below_headline) continue;
      const double off = std::abs(y - start.y);
      if (best && off >= best_off) continue;
      WheelLine detour = round_by(start, inward * aside, y, disc);
      if (!clear(detour, way)) continue;
      best = std::move(detour);
      best_off = off;
    }
    if (best) return best;
  }
  // Along the foot of the wall, below the W plate, to where the way up is clear.
  for (double aside : asides)
    for (double along = 20; along < 400; along += 10) {
      WheelLine foot = round_by(start, inward * aside, search_to, disc, x + inward * along);
      if (clear(foot, way)) return foot;
    }
  return std::nullopt;
}

WheelLine leader_to_plate(double x, double top, double bottom) {
  const WheelPoint middle{wheel::plate.x + wheel::plate.w / 2, wheel::plate.y + wheel::plate.h / 2};
  const WheelPoint start{x, std::clamp(middle.y, top, bottom)};
  const double edge = wheel::plate.x - 3;  // the plate's own edge is 6 wide
  const double k = (edge - start.x) / (middle.x - start.x);
  const double y = start.y + (middle.y - start.y) * k;
  if (y >= wheel::plate.y - 3) return {start, {edge, y}};
  const double foot = wheel::plate.y - 3;
  return {start, {start.x + (middle.x - start.x) * (foot - start.y) / (middle.y - start.y), foot}};
}

}  // namespace floorwheel::screens
