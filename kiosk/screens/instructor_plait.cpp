// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/instructor_plait.h"

#include <algorithm>
#include <map>

#include "kiosk/screens/class_time.h"
#include "kiosk/screens/instructor.h"
#include "kiosk/screens/instructor_words.h"

namespace floorwheel::screens {

namespace {

using RowOf = std::map<std::string, int, std::less<>>;

std::vector<int> rows_of(const RunSheetRow& r, const RowOf& row_of, int slot_count) {
  std::vector<int> out(static_cast<std::size_t>(slot_count), no_row);
  for (std::size_t t = 0; t < out.size() && t < r.stations.size(); ++t)
    if (const auto found = row_of.find(r.stations[t]); found != row_of.end()) out[t] = found->second;
  return out;
}

/// Holes between the first and the last worked slot become the waiting place. True if there was one.
bool wait_in_holes(std::vector<int>& row, int waiting_row) {
  const auto worked = [](int r) { return r != no_row; };
  const auto first = std::ranges::find_if(row, worked);
  const auto last = std::find_if(row.rbegin(), row.rend(), worked).base();
  bool any = false;
  for (auto it = first; it < last; ++it)
    if (*it == no_row) {
      *it = waiting_row;
      any = true;
    }
  return any;
}

QVariant lines_of(const PlaitStrands& strands) {
  QList<QPolygonF> out;
  for (const PlaitLine& line : strands.lines) {
    QPolygonF polygon;
    for (const PlaitPoint& p : line) polygon.append({p.x, p.y});
    out.append(polygon);
  }
  return QVariant::fromValue(out);
}

QList<QPointF> dots_of(const std::vector<PlaitPoint>& dots) {
  QList<QPointF> out;
  for (const PlaitPoint& p : dots) out.append({p.x, p.y});
  return out;
}

QRectF rect_of(const PlaitBox& b) { return {b.x, b.y, b.width, b.height}; }

bool same(const PlaitAsk& a, const PlaitAsk& b) {
  const auto closed = [](const PlaitClosure& x, const PlaitClosure& y) {
    return x.row == y.row && x.first == y.first && x.last == y.last;
  };
  return a.slots == b.slots && a.laps == b.laps && a.ring == b.ring && a.letters == b.letters &&
         a.waiting == b.waiting && a.at == b.at && a.gone == b.gone && a.present == b.present &&
         a.chosen == b.chosen && a.before == b.before && a.from_slot == b.from_slot &&
         std::ranges::equal(a.closed, b.closed, closed);
}

}  // namespace

PlaitAsk plait_ask(const wire::ClassView& shown, const wire::ClassView* before, const std::string& chosen) {
  const wire::RunSheet& sheet = shown.sheet;
  PlaitAsk ask;
  ask.slots = sheet.timing.slots;
  ask.laps = sheet.timing.laps;
  ask.ring = sheet.style == Style::ring;

  std::vector<const wire::StationView*> order;
  if (ask.ring)
    for (const std::string& id : sheet.ring)
      if (const wire::StationView* s = wire::find_station(shown, id)) order.push_back(s);
  for (const wire::StationView& s : shown.stations)
    if (std::ranges::find(order, &s) == order.end() && !ask.ring) order.push_back(&s);
  RowOf row_of;
  for (const wire::StationView* s : order) {
    const int row = static_cast<int>(ask.letters.size());
    row_of[s->id] = row;
    ask.letters.push_back(s->letter);
    for (const SlotRange& r : s->closed)
      if (r.first <= ask.slots) ask.closed.push_back({row, r.first, std::min(r.last, ask.slots)});
  }

  for (const RunSheetRow& r : sheet.rows) {
    if (r.member == chosen) ask.chosen = static_cast<int>(ask.at.size());
    ask.at.push_back(rows_of(r, row_of, ask.slots));
    if (before == nullptr) continue;
    const auto old = std::ranges::find(before->sheet.rows, r.member, &RunSheetRow::member);
    ask.before.push_back(old == before->sheet.rows.end() ? std::vector<int>{}
                                                         : rows_of(*old, row_of, ask.slots));
  }
  if (before != nullptr) {
    ask.from_slot = std::max(sheet.at_slot, 1);
    ask.chosen = -1;
  }
  if (!ask.ring) {
    const int waiting_row = static_cast<int>(ask.letters.size());
    for (auto& row : ask.at) ask.waiting = wait_in_holes(row, waiting_row) || ask.waiting;
    for (auto& row : ask.before) wait_in_holes(row, waiting_row);
  }
  return ask;
}

InstructorPlait::InstructorPlait(Instructor& all, QObject* parent) : QObject(parent), all_(all) {
  connect(all.flow(), &InstructorFlow::pageChanged, this, &InstructorPlait::look);
  connect(all.proposal(), &InstructorProposal::changed, this, &InstructorPlait::look);
  connect(all.roster(), &InstructorRoster::changed, this, &InstructorPlait::look);
  connect(all.change(), &InstructorChange::changed, this, &InstructorPlait::look);
}

void InstructorPlait::look() {
  const InstructorFlow& flow = *all_.flow();
  const wire::ClassView* now = flow.view();
  const wire::ClassView* shown = now;
  const wire::ClassView* before = nullptr;
  if (flow.stage() == QLatin1String("proposal")) shown = all_.proposal()->then();
  if (flow.page() == QLatin1String("preview") && all_.change()->then() != nullptr) {
    shown = all_.change()->then();
    before = now;
  }
  PlaitAsk ask;
  if (shown != nullptr && shown->sheet.timing.slots > 0) {
    ask = plait_ask(*shown, before, all_.roster()->chosen());
    if (flow.live()) {
      ask.present = class_time().slot();
      ask.gone = std::max(0, ask.present - 1);
      if (flow.stage() == QLatin1String("ended") || class_time().phase() == QLatin1String("cool-down"))
        ask.gone = ask.slots;
    }
  }
  if (same(ask, ask_)) return;  // a second's tick must not repaint it
  ask_ = ask;
  plait_ = lay_plait(ask_);
  grey_lines_ = lines_of(plait_.grey);
  yellow_lines_ = lines_of(plait_.yellow);
  sky_lines_ = lines_of(plait_.sky);
  grey_dots_ = dots_of(plait_.grey.dots);
  yellow_dots_ = dots_of(plait_.yellow.dots);
  sky_dots_ = dots_of(plait_.sky.dots);
  skipped_ = dots_of(plait_.skipped);
  Q_EMIT changed();
}

QVariantList InstructorPlait::letters() const {
  QVariantList out;
  for (const PlaitLetter& l : plait_.letters)
    out.append(QVariantMap{{QStringLiteral("letter"), words::text(l.letter)},
                           {QStringLiteral("y"), l.y},
                           {QStringLiteral("waiting"), l.waiting}});
  return out;
}

QVariantList InstructorPlait::numbers() const {
  QVariantList out;
  for (const PlaitNumber& n : plait_.numbers)
    out.append(QVariantMap{{QStringLiteral("slot"), n.slot},
                           {QStringLiteral("x"), n.x},
                           {QStringLiteral("present"), n.present}});
  return out;
}

QVariantList InstructorPlait::closed() const {
  QVariantList out;
  for (const PlaitBox& b : plait_.closed) out.append(rect_of(b));
  return out;
}

QVariantList InstructorPlait::laps() const {
  QVariantList out;
  for (const double x : plait_.lap_lines) out.append(x);
  return out;
}

QRectF InstructorPlait::gone() const { return rect_of(plait_.gone); }
QRectF InstructorPlait::present() const { return rect_of(plait_.present); }
qreal InstructorPlait::rowRight() const { return plait_left + plait_.slots * plait_.column; }

QString InstructorPlait::description() const {
  if (plait_.letters.empty()) return tr("No run sheet yet");
  return tr("The plait: %1 people, %2 stations, %3 slots")
      .arg(ask_.at.size())
      .arg(ask_.letters.size())
      .arg(ask_.slots);
}

}  // namespace floorwheel::screens
