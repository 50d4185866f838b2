// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/wall_columns.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

namespace floorwheel::screens {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Wall)
};

constexpr int alias_lines = 2;
constexpr double small_tag = 60;
constexpr double small_tag_gap = 21;
constexpr double dot_step = 17;
constexpr double dot_margin = 20;  // least, from the alias and from the tag
constexpr double dot_above_base = 3.3;
constexpr double gather_top = 12;

QPolygonF polygon(const WheelLine& line) {
  QPolygonF p;
  for (WheelPoint w : line) p.append(QPointF(w.x, w.y));
  return p;
}

QString separator() { return QStringLiteral(" · "); }

WallTextItem text_item(const QString& key, const QString& label, double x, double base, double cap, bool bold,
                       bool mute, double width) {
  WallTextItem t;
  t.key = key;
  t.label = label;
  t.x = x;
  t.base = base;
  t.cap = cap;
  t.bold = bold;
  t.mute = mute;
  t.width = width;
  return t;
}

}  // namespace

WallColumns::WallColumns(const WallFace& face, const WallText& measure) : face_(face), measure_(measure) {
  go_ = shows_go_face(face);
  tags_ = tags_of(face);
  take_boxes(alias_lines);
  // Rows of broken aliases may not cost a page if first letters and a full stop tell people apart as well.
  if (const int pages = layout(0).pages; go_ && pages > 1) {
    take_boxes(1);
    if (layout(0).pages >= pages || !shortened_stay_apart()) take_boxes(alias_lines);
  }
}

void WallColumns::take_boxes(int go_lines) {
  boxes_.clear();
  for (const WallStation& s : face_.stations)
    boxes_.push_back(box_of(s.id, s.closed ? Words::tr("closed") : s.exercise, s.people, s.closed, go_lines));
  boxes_.push_back(
      box_of(QStringLiteral("waiting"), Words::tr("Waiting place"), face_.waiting, false, go_lines));
  if (face_.state == WallState::show)
    for (int i = 0; i <= face_.shown; ++i) boxes_[static_cast<std::size_t>(i)].name_bold = true;
}

bool WallColumns::shortened_stay_apart() const {
  QStringList all;
  for (const Box& box : boxes_)
    for (const QStringList& lines : box.go) all.append(lines.constFirst());
  return all.removeDuplicates() == 0;
}

WallColumns::Box WallColumns::box_of(const QString& key, const QString& name,
                                     const std::vector<WallPerson>& people, bool closed, int go_lines) const {
  Box box;
  box.key = key;
  box.people = &people;
  box.closed = closed;
  const auto broken = [&](const QString& text, double cap, double most, double shortened) {
    return measure_.lines(text, cap, true, most, shortened, alias_lines);
  };
  // Measured in bold where the show sets it so: breaking must not change with the weight.
  box.name = measure_.lines(name, wall_cap::near, face_.state == WallState::show, wall_fit::near_line,
                            wall_fit::near_line, go_ ? 1 : 2);
  double end = 0;
  const double gap = measure_.width(separator(), wall_cap::alias);
  for (int i = 0; i < static_cast<int>(people.size()); ++i) {
    const QString& alias = people[static_cast<std::size_t>(i)].alias;
    box.go.push_back(
        measure_.lines(alias, wall_cap::go, true, wall_fit::alias_go, wall_fit::shortened, go_lines));
    const double beside = wall_fit::near_line - small_tag - small_tag_gap;
    box.tagged.push_back(broken(alias, wall_cap::alias, beside, beside));
    const QStringList lines = broken(alias, wall_cap::alias, wall_fit::near_line, wall_fit::near_line);
    for (int line = 0; line < lines.size(); ++line) {
      const double width = measure_.width(lines[line], wall_cap::alias);
      const bool joins = lines.size() == 1;
      const bool beside_last = joins && !box.joined.empty() && box.joined.back().back().joins &&
                               end + gap + width < wall_fit::near_line;
      if (!beside_last) box.joined.emplace_back();
      end = beside_last ? end + gap + width : width;
      box.joined.back().push_back({i, line, lines[line], joins});
    }
  }
  return box;
}

WheelStation WallColumns::ask_of(const Box& box) {
  WheelStation s;
  s.people = static_cast<int>(box.people->size());
  s.closed = box.closed;
  s.name_lines = static_cast<int>(box.name.size());
  s.joined_lines = static_cast<int>(box.joined.size());
  for (const QStringList& l : box.go) s.go_lines.push_back(static_cast<int>(l.size()));
  for (const QStringList& l : box.tagged) s.tag_lines.push_back(static_cast<int>(l.size()));
  return s;
}

WheelLayout WallColumns::layout(int page) const {
  WheelAsk ask;
  for (std::size_t i = 0; i + 1 < boxes_.size(); ++i) ask.stations.push_back(ask_of(boxes_[i]));
  ask.waiting_place = face_.waiting_place;
  ask.waiting = ask_of(boxes_.back());
  ask.face = go_ ? WheelFace::go : WheelFace::near;
  ask.tag_a_row = face_.free_tags;
  ask.small_tags = !go_ && tags_ != WallTags::none;
  ask.names_only = face_.state == WallState::show || face_.state == WallState::gather;
  ask.page = page;
  return lay_out_wheel(ask);
}

void WallColumns::add(const WheelLayout& layout, WallItems& items) const {
  for (const WheelBox& box : layout.boxes) {
    const Box& of = box.station < 0 ? boxes_.back() : boxes_[static_cast<std::size_t>(box.station)];
    for (const WheelRow& row : box.rows) switch (row.what) {
        case WheelRow::What::name:
          add_name(box, row, of, items);
          break;
        case WheelRow::What::joined:
          add_joined(box, row, of, items);
          break;
        case WheelRow::What::person:
          add_person(box, row, of, items);
          break;
      }
    add_tags(box, of, items);
    if (face_.state == WallState::show && box.station == face_.shown) {
      items.shown_line.append(polygon(box.bracket));
      items.shown_line.append(polygon(box.leader));
    } else {
      QList<QPolygonF> lines;
      if (!box.bracket.empty()) lines.append(polygon(box.bracket));
      if (!box.leader.empty()) lines.append(polygon(box.leader));
      items.lines.append(lines);
    }
  }
}

void WallColumns::add_name(const WheelBox& box, const WheelRow& row, const Box& of, WallItems& items) const {
  const QString& label = of.name[row.line];
  const bool bold = of.name_bold;
  const double width = measure_.width(label, wall_cap::near, bold);
  // On the go face both columns are flush left alike, but for the word of a closed station at its leader.
  double x = wheel::right_flush;
  if (box.left) x = go_ && !of.closed ? wheel::left_x : wheel::left_flush - width;
  items.texts.push_back(text_item(QStringLiteral("name:%1:%2").arg(of.key).arg(row.line), label, x,
                                  row.baseline, wall_cap::near, bold, !bold, width));
}

void WallColumns::add_joined(const WheelBox& box, const WheelRow& row, const Box& of,
                             WallItems& items) const {
  const std::vector<Part>& line = of.joined[static_cast<std::size_t>(row.line)];
  const double gap = measure_.width(separator(), wall_cap::alias);
  const double space = measure_.width(QStringLiteral(" "), wall_cap::alias);
  double total = gap * static_cast<double>(line.size() - 1);
  for (const Part& p : line) total += measure_.width(p.label, wall_cap::alias);
  double x = box.left ? wheel::left_flush - total : wheel::right_flush;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Part& p = line[i];
    const QString& id = (*of.people)[static_cast<std::size_t>(p.person)].id;
    if (i > 0) {
      items.texts.push_back(text_item(QStringLiteral("dot:%1").arg(id), QStringLiteral("·"), x + space,
                                      row.baseline, wall_cap::alias, true, false, gap - 2 * space));
      x += gap;
    }
    const double width = measure_.width(p.label, wall_cap::alias);
    items.texts.push_back(text_item(QStringLiteral("alias:%1:%2").arg(id).arg(p.line), p.label, x,
                                    row.baseline, wall_cap::alias, true, false, width));
    x += width;
  }
}

void WallColumns::add_person(const WheelBox& box, const WheelRow& row, const Box& of,
                             WallItems& items) const {
  const auto person = static_cast<std::size_t>(row.person);
  const QString& label = (go_ ? of.go : of.tagged)[person][row.line];
  const double cap = go_ ? wall_cap::go : wall_cap::alias;
  const double width = measure_.width(label, cap);
  double x = wheel::right_flush;
  if (box.left) x = go_ ? wheel::left_x : wheel::left_flush - small_tag - small_tag_gap - width;
  items.texts.push_back(text_item(QStringLiteral("alias:%1:%2").arg((*of.people)[person].id).arg(row.line),
                                  label, x, row.baseline, cap, true, false, width));
}

void WallColumns::add_tags(const WheelBox& box, const Box& of, WallItems& items) const {
  if (tags_ == WallTags::none) return;
  for (const WheelTag& tag : box.tags) {
    const auto person = static_cast<std::size_t>(std::max(tag.person, box.first_person));
    const WallPerson& p = (*of.people)[person];
    if (p.next.isEmpty()) continue;
    WallTagItem t;
    t.key = QStringLiteral("%1:%2").arg(tag.person < 0 ? of.key : p.id).arg(go_ ? "go" : "near");
    t.letter = p.next;
    t.y = tag.rect.y;
    t.width = tag.rect.w;
    t.height = tag.rect.h;
    t.right = tag.rect.right();
    t.filled = tags_ == WallTags::filled;
    if (!go_) {
      t.cap = wall_cap::near;
      t.stroke = 5;
      if (!box.left) {
        double widest = 0;
        for (const QString& line : of.tagged[person])
          widest = std::max(widest, measure_.width(line, wall_cap::alias));
        t.right = wheel::right_flush + widest + small_tag_gap + small_tag;
      }
      items.tags.push_back(t);
      continue;
    }
    if (face_.state == WallState::last) {
      const int s = std::clamp(face_.seconds_left, 1, 5);
      t.width = 110 - 10 * s;
      t.cap = 78 - 7 * s;
    } else if (tag.person < 0 && box.rows.size() > 1) {
      t.cap = wall_cap::tag_over_rows;
    }
    if (t.letter.size() > 1) t.cap = std::min(t.cap, wall_cap::near);
    add_dots(box, tag, of, t.right - t.width, items);
    items.tags.push_back(t);
  }
}

void WallColumns::add_dots(const WheelBox& box, const WheelTag& tag, const Box& of, double tag_left,
                           WallItems& items) const {
  for (const WheelRow& row : box.rows) {
    if (row.what != WheelRow::What::person || (tag.person >= 0 && row.person != tag.person)) continue;
    const QStringList& lines = of.go[static_cast<std::size_t>(row.person)];
    if (row.line + 1 < lines.size()) continue;
    const double end =
        (box.left ? wheel::left_x : wheel::right_flush) + measure_.width(lines[row.line], wall_cap::go);
    const double gap = tag_left - end;
    if (gap < 2 * dot_margin) continue;
    const double span = std::floor((gap - 2 * dot_margin) / dot_step) * dot_step;
    const double x = (end + tag_left) / 2 + 1 - span / 2;
    const double y = row.baseline - dot_above_base;
    items.dots.append({QPolygonF(QList<QPointF>{{x, y}, {x + span + 0.1, y}})});
  }
}

int WallColumns::add_gathering(int page, WallItems& items) const {
  std::vector<std::pair<QString, QString>> rows;  // key, line
  for (const WallPerson& p : face_.here) {
    const QStringList lines =
        measure_.lines(p.alias, wall_cap::go, true, wall_fit::alias_go, wall_fit::shortened, 1);
    rows.emplace_back(p.id, lines.constFirst());
  }
  const auto a_page = std::size_t{2} * wheel::rows_a_side;
  const int pages = std::max(1, static_cast<int>((rows.size() + a_page - 1) / a_page));
  const std::size_t first = static_cast<std::size_t>(page % pages) * a_page;
  for (std::size_t i = first; i < std::min(rows.size(), first + a_page); ++i) {
    const std::size_t at = i - first;
    const bool left = at < static_cast<std::size_t>(wheel::rows_a_side);
    const auto row = static_cast<double>(at % static_cast<std::size_t>(wheel::rows_a_side));
    items.texts.push_back(text_item(QStringLiteral("alias:%1:0").arg(rows[i].first), rows[i].second,
                                    left ? wheel::left_x : wheel::right_flush,
                                    gather_top + (row + 0.5) * wheel::pitch_least + wall_cap::go / 2 - 2,
                                    wall_cap::go, true, false, measure_.width(rows[i].second, wall_cap::go)));
  }
  return pages;
}

}  // namespace floorwheel::screens
