// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/wheel_layout.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

#include "kiosk/screens/wheel_leader.h"

namespace floorwheel::screens {
namespace {

constexpr double near_pitch = 61;   // rows of exercise and joined aliases
constexpr double tight_pitch = 56;  // rows with small tags, or where 61 is too much
constexpr double near_inset = 26;   // a near bracket keeps so far from its box
constexpr double go_inset = 12;
constexpr double bracket_left = 504;
constexpr double bracket_right = 1416;
constexpr double small_tag_width = 60;
constexpr double small_tag_height = 49;
constexpr double box_tag_inset = 9;  // one tag over a box: so much less than its rows at each end
constexpr double row_tag_inset = 8;  // a tag for each row
constexpr double name_caps = 43;
constexpr double go_caps = 71;
constexpr double between_boxes = 8;  // near boxes that need more than their equal share

int sum(const std::vector<int>& lines, int first, int count) {
  if (lines.empty()) return count;
  return std::accumulate(lines.begin() + first, lines.begin() + first + count, 0);
}
int lines_of(const std::vector<int>& lines, int person) {
  return lines.empty() ? 1 : lines[static_cast<std::size_t>(person)];
}

/// A box before it has a place: the station, which of its people, how many rows.
struct Want {
  int station = 0;
  const WheelStation* of = nullptr;
  int first = 0;
  int people = 0;
  int rows = 0;
  bool tagged = false;
};

bool fits_tags(const WheelStation& s, double share) {
  const int rows = s.name_lines + sum(s.tag_lines, 0, s.people);
  return s.people > 0 && share >= tight_pitch * rows;
}

double near_need(int rows) { return tight_pitch * rows + between_boxes; }

/// What the stations of one side want, a page after another. A page holds whole stations; a station of more
/// people than a side has rows goes on over the next page.
std::vector<std::vector<Want>> paged(const WheelAsk& ask, const std::vector<int>& stations) {
  const bool go = ask.face == WheelFace::go;
  const double share = wheel::column_height / static_cast<double>(std::max<std::size_t>(1, stations.size()));
  std::vector<Want> all;
  for (int i : stations) {
    const WheelStation& s = i < 0 ? ask.waiting : ask.stations[static_cast<std::size_t>(i)];
    const int people = s.closed || ask.names_only ? 0 : s.people;
    if (!go) {
      const bool tagged = ask.small_tags && people > 0 && fits_tags(s, share);
      const int people_rows = people == 0 ? 0 : tagged ? sum(s.tag_lines, 0, people) : s.joined_lines;
      all.push_back({i, &s, 0, people, s.name_lines + people_rows, tagged});
      continue;
    }
    int first = 0;
    do {
      int count = 0;
      int rows = 0;
      while (first + count < people && rows + lines_of(s.go_lines, first + count) <= wheel::rows_a_side) {
        rows += lines_of(s.go_lines, first + count);
        ++count;
      }
      all.push_back({i, &s, first, count, std::max(1, rows), true});
      first += count;
    } while (first < people);
  }

  std::vector<std::vector<Want>> pages(1);
  const auto room = [&](const std::vector<Want>& page, const Want& more) {
    double rows = 0;
    double need = 0;
    for (const Want& w : page) {
      rows += w.rows;
      need += near_need(w.rows);
    }
    return go ? rows + more.rows <= wheel::rows_a_side : need + near_need(more.rows) <= wheel::column_height;
  };
  for (const Want& w : all) {
    if (!pages.back().empty() && !room(pages.back(), w)) pages.emplace_back();
    pages.back().push_back(w);
  }
  return pages;
}

void add_near_rows(WheelBox& box, const Want& w, double pitch) {
  const double rows = w.rows;
  double top = box.rect.y + (box.rect.h - rows * pitch) / 2;
  // Capitals of 43 and 44 a little above the middle of their row, as drawn.
  const auto baseline = [&](double down) { return top + pitch / 2 + 0.22 * pitch + down; };
  for (int line = 0; line < w.of->name_lines; ++line, top += pitch)
    box.rows.push_back({WheelRow::What::name, -1, line, baseline(7.7)});
  if (w.people == 0) {
    if (box.rows.size() == 1) box.rows[0].baseline = box.rect.y + box.rect.h / 2 + name_caps / 2 - 0.5;
    return;
  }
  if (!w.tagged) {
    for (int line = 0; line < w.of->joined_lines; ++line, top += pitch)
      box.rows.push_back({WheelRow::What::joined, -1, line, baseline(9.9)});
    return;
  }
  for (int p = 0; p < w.people; ++p) {
    const int lines = lines_of(w.of->tag_lines, p);
    const double middle = top + lines * pitch / 2;
    const double x = box.left ? wheel::left_flush - small_tag_width : wheel::right_flush;
    box.tags.push_back({p, {x, middle - small_tag_height / 2, small_tag_width, small_tag_height}});
    for (int line = 0; line < lines; ++line, top += pitch)
      box.rows.push_back({WheelRow::What::person, p, line, baseline(9.1)});
  }
}

void add_go_rows(WheelBox& box, const Want& w, bool tag_a_row) {
  const double block = w.rows * box.pitch;
  const double start = box.rect.y + (box.rect.h - block) / 2;
  double top = start;
  const double tag_x = (box.left ? wheel::left_flush : wheel::right_x) - wheel::tag_width;
  if (w.people == 0) {
    box.rows.push_back({WheelRow::What::name, -1, 0, top + box.pitch / 2 + name_caps / 2 - 0.5});
    return;
  }
  for (int p = w.first; p < w.first + w.people; ++p) {
    const int lines = lines_of(w.of->go_lines, p);
    if (tag_a_row)
      box.tags.push_back(
          {p, {tag_x, top + row_tag_inset, wheel::tag_width, lines * box.pitch - 2 * row_tag_inset}});
    for (int line = 0; line < lines; ++line, top += box.pitch)
      box.rows.push_back({WheelRow::What::person, p, line, top + box.pitch / 2 + go_caps / 2 - 2});
  }
  if (!tag_a_row)
    box.tags.push_back({-1, {tag_x, start + box_tag_inset, wheel::tag_width, block - 2 * box_tag_inset}});
}

/// Tops of the boxes of a side that has pages: each as near to its disc as the others allow, so that a leader
/// need not pass discs whose boxes are on another page.
std::vector<double> tops_near_discs(const WheelLayout& layout, const std::vector<Want>& page,
                                    const std::vector<double>& heights) {
  std::vector<double> tops;
  double free_from = wheel::column_top;
  for (std::size_t i = 0; i < page.size(); ++i) {
    const double wanted = page[i].station < 0
                              ? wheel::height
                              : layout.discs[static_cast<std::size_t>(page[i].station)].centre.y;
    tops.push_back(std::max(free_from, wanted - heights[i] / 2));
    free_from = tops.back() + heights[i];
  }
  double foot = wheel::column_top + wheel::column_height;
  for (std::size_t i = page.size(); i-- > 0;) {
    tops[i] = std::min(tops[i], foot - heights[i]);
    foot = tops[i];
  }
  return tops;
}

/// Places the boxes of one page of one side.
void place(WheelLayout& layout, const WheelAsk& ask, const std::vector<Want>& page, bool left, bool paged) {
  const auto count = static_cast<double>(page.size());
  double rows = 0;
  double need = 0;
  bool equal = true;
  for (const Want& w : page) {
    rows += w.rows;
    need += near_need(w.rows);
    equal = equal && tight_pitch * w.rows <= wheel::column_height / count;
  }
  const bool go = ask.face == WheelFace::go;
  const double pitch = go ? std::min(wheel::pitch_most, wheel::column_height / std::max(1.0, rows)) : 0;
  const double share = (wheel::column_height - (go ? rows * pitch : equal ? 0 : need)) / count;
  const double spare = paged ? 0 : share;
  std::vector<double> heights;
  std::vector<double> tops;
  double y = wheel::column_top;
  for (const Want& w : page) {
    tops.push_back(y);
    heights.push_back(spare + (go ? w.rows * pitch : equal && !paged ? 0 : near_need(w.rows)));
    y += heights.back();
  }
  if (paged) tops = tops_near_discs(layout, page, heights);
  for (std::size_t i = 0; i < page.size(); ++i) {
    const Want& w = page[i];
    const double h = heights[i];
    WheelBox box;
    box.station = w.station;
    box.left = left;
    box.first_person = w.first;
    box.people = w.people;
    box.tagged = w.tagged;
    box.rect = {left ? wheel::left_x : wheel::right_flush, tops[i], wheel::near_width + 2, h};
    if (go) {
      box.pitch = pitch;
      add_go_rows(box, w, ask.tag_a_row);
    } else {
      const bool tight = w.tagged || near_pitch * w.rows > h;
      box.pitch = tight ? tight_pitch : near_pitch;
      add_near_rows(box, w, box.pitch);
    }
    layout.boxes.push_back(std::move(box));
  }
}

/// The bracket covers a near box less its inset; on the go face the rows, not the spare room round them.
void add_leader(WheelLayout& layout, WheelBox& box, const WheelAsk& ask) {
  const bool go = ask.face == WheelFace::go;
  const double rows_of_box = go ? static_cast<double>(std::max<std::size_t>(1, box.rows.size())) : 0;
  const double slack = go ? (box.rect.h - rows_of_box * box.pitch) / 2 + go_inset : near_inset;
  const double x = box.left ? bracket_left : bracket_right;
  const double top = box.rect.y + slack;
  const double bottom = box.rect.bottom() - slack;
  const bool closed = box.station >= 0 && ask.stations[static_cast<std::size_t>(box.station)].closed;
  if (!closed) box.bracket = {{x, top}, {x, bottom}};
  if (box.station < 0) {
    box.leader = leader_to_plate(x, top, bottom);
    return;
  }
  LeaderWay way;
  way.plate = ask.waiting_place;
  const auto own = static_cast<std::size_t>(box.station);
  for (std::size_t i = 0; i < layout.discs.size(); ++i)
    if (i != own) way.others.push_back(layout.discs[i].centre);
  const WheelPoint disc = layout.discs[own].centre;
  const double middle = (top + bottom) / 2;
  auto line = leader_to_disc(x, closed ? middle : top, closed ? middle : bottom, disc, way);
  if (line)
    box.leader = std::move(*line);
  else
    layout.every_leader_clear = false;
}

}  // namespace

double wheel_phi(int stations) {
  // The nearest step of 0.01 to one half at which every disc keeps 4 px from the figures and the gate; the
  // test works it out again.
  switch (stations) {
    case 7:
      return 0.57;
    case 10:
      return 0.35;
    case 11:
      return 0.32;
    default:
      return 0.5;
  }
}

WheelPoint wheel_point(double angle, double radius) {
  const double a = angle * std::numbers::pi / 180;
  return {wheel::centre.x + radius * std::sin(a), wheel::centre.y - radius * std::cos(a)};
}

WheelLayout lay_out_wheel(const WheelAsk& ask) {
  WheelLayout layout;
  const int n = static_cast<int>(ask.stations.size());
  layout.phi = wheel_phi(n);
  const double step = n > 0 ? 360.0 / n : 360.0;
  for (int i = 0; i < n; ++i) {
    const double angle = (i + layout.phi) * step;
    layout.discs.push_back({angle, wheel_point(angle, wheel::rail)});
    layout.gaps.push_back(std::fmod(angle + step / 2, 360.0));
  }
  const double gap = 2 * std::numbers::pi * wheel::rail / std::max(1, n) - 114;
  layout.chevrons = static_cast<int>(std::clamp(std::floor(gap / 29), 1.0, 3.0));

  // Right takes the first half from the top, left the rest from the bottom, so leaders cannot cross.
  std::vector<int> right;
  std::vector<int> left;
  for (int i = 0; i < (n + 1) / 2; ++i) right.push_back(i);
  for (int i = n - 1; i >= (n + 1) / 2; --i) left.push_back(i);
  if (ask.waiting_place) left.push_back(-1);

  const auto right_pages = paged(ask, right);
  const auto left_pages = paged(ask, left);
  layout.pages = static_cast<int>(std::max(right_pages.size(), left_pages.size()));
  const auto page = static_cast<std::size_t>(std::max(0, ask.page) % layout.pages);
  if (!right.empty())
    place(layout, ask, right_pages[page % right_pages.size()], false, right_pages.size() > 1);
  if (!left.empty()) place(layout, ask, left_pages[page % left_pages.size()], true, left_pages.size() > 1);
  for (WheelBox& box : layout.boxes) add_leader(layout, box, ask);
  return layout;
}

}  // namespace floorwheel::screens
