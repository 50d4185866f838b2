// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/wall_view.h"

#include <QCoreApplication>
#include <array>
#include <cmath>

#include "kiosk/screens/class_time.h"
#include "kiosk/screens/hub_link.h"
#include "kiosk/screens/this_screen.h"

namespace floorwheel::screens {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Wall)
};

constexpr int page_ms = 4000;  // each page of people is to be read
constexpr double chevron_step = 5.4;

const QList<QByteArray>& text_roles() {
  static const QList<QByteArray> roles{"label", "px", "base", "pixels", "heavy", "mute", "spacing"};
  return roles;
}
const QList<QByteArray>& tag_roles() {
  static const QList<QByteArray> roles{"letter",    "tip",    "py",     "tagWidth",
                                       "tagHeight", "pixels", "filled", "edge"};
  return roles;
}
const QList<QByteArray>& disc_roles() {
  static const QList<QByteArray> roles{"letter", "px", "py", "filled", "closed"};
  return roles;
}

std::vector<WallRows::Row> rows_of(const std::vector<WallTextItem>& items) {
  std::vector<WallRows::Row> rows;
  for (const WallTextItem& t : items)
    rows.push_back({t.key, {t.label, t.x, t.base, wall_pixel_size(t.cap), t.bold, t.mute, t.spacing}});
  return rows;
}

}  // namespace

WallSite& wall_site() {
  static WallSite site = plain_site();
  return site;
}

WallView::WallView(QObject* parent)
    : QObject(parent),
      measure_(this_screen().narrowFamily()),
      site_(wall_site()),
      texts_(text_roles(), this),
      middle_(text_roles(), this),
      tags_(tag_roles(), this),
      discs_(disc_roles(), this) {
  connect(&hub_link(), &HubLink::hallChanged, this, &WallView::read);
  connect(&hub_link(), &HubLink::connectedChanged, this, &WallView::read);
  connect(&class_time(), &ClassTime::phaseChanged, this, &WallView::read);
  connect(&class_time(), &ClassTime::secondChanged, this, &WallView::read);
  connect(&class_time(), &ClassTime::ticked, this, &WallView::move_hand);
  page_timer_.setInterval(page_ms);
  connect(&page_timer_, &QTimer::timeout, this, [this] {
    ++page_;
    place();
  });
  read();
}

void WallView::read() {
  if (!live_) return;
  const ClassTime& time = class_time();
  const WallFace face = wall_face(wire::current_class(hub_link().hall()), time.segments(), time.moment(),
                                  time.secondsSinceStop());
  if (face.state != face_.state || face.slot != face_.slot) page_ = 0;
  face_ = face;
  note_ = hub_link().connected() ? QString() : Words::tr("On its own", "the hub is away");
  time_of_day_ = time.clockText();
  place();
}

void WallView::show(const WallFace& face, const QString& note, const QString& time_of_day) {
  live_ = false;
  face_ = face;
  note_ = note;
  time_of_day_ = time_of_day;
  place();
}

void WallView::set_site(WallSite site) {
  site_ = std::move(site);
  place();
}

void WallView::move_hand() {
  if (!live_) return;
  const wire::Moment m = class_time().moment();
  // In the show the hand points at the station in turn and moves with it.
  if (face_.state == WallState::show || m.segment < 0) return;
  const double hand = 360 * class_time().fraction();
  if (hand == hand_) return;
  hand_ = hand;
  Q_EMIT handChanged();
}

void WallView::place() {
  WallItems items = wall_items(face_, measure_, site_, note_, time_of_day_, page_);
  const bool lines =
      items.lines != items_.lines || items.shown_line != items_.shown_line || items.dots != items_.dots;
  const bool wheel = items.rail != items_.rail || items.gaps != items_.gaps;
  items_ = std::move(items);

  double hand = face_.hand;
  if (face_.state == WallState::show && face_.shown >= 0)
    hand = items_.rail[static_cast<std::size_t>(face_.shown) + 1];
  const bool hand_moved = hand != hand_;
  hand_ = hand;

  // Neither into a picture of another moment nor out of it does anything move.
  const bool calm = class_time().calm();
  moves_ = !calm && !calm_before_;
  calm_before_ = calm;

  // First what decides whether things move, then where they are.
  Q_EMIT faceChanged();
  if (wheel) Q_EMIT wheelChanged();
  if (hand_moved) Q_EMIT handChanged();
  texts_.assign(rows_of(items_.texts));
  middle_.assign(rows_of(items_.middle));
  std::vector<WallRows::Row> rows;
  for (const WallTagItem& t : items_.tags)
    rows.push_back(
        {t.key, {t.letter, t.right, t.y, t.width, t.height, wall_pixel_size(t.cap), t.filled, t.stroke}});
  tags_.assign(std::move(rows));
  rows.clear();
  for (const WallDiscItem& d : items_.discs)
    rows.push_back({d.key, {d.letter, d.centre.x, d.centre.y, d.filled, d.closed}});
  discs_.assign(std::move(rows));
  if (lines) Q_EMIT linesChanged();
  place_chevrons(face_.seconds_left != last_second_);
  last_second_ = face_.seconds_left;

  const QString since = sinceStop();
  if (since != since_stop_) {
    since_stop_ = since;
    Q_EMIT sinceStopChanged();
  }
  if (items_.pages > 1 && !page_timer_.isActive())
    page_timer_.start();
  else if (items_.pages <= 1)
    page_timer_.stop();
}

void WallView::place_chevrons(bool second_passed) {
  QList<QList<QPolygonF>> ahead;
  QList<QList<QPolygonF>> behind;
  if (rail_of(face_) == WallRail::chevrons) {
    const int k = items_.chevrons;
    const double gap = 360.0 / static_cast<double>(items_.gaps.size());
    // One more on the far side where the disc hides it: it comes out as the others step on.
    const bool extra = (k + 1) / 2.0 * chevron_step > gap / 2 - 8.5;
    for (double middle : items_.gaps) {
      ahead.emplace_back();
      behind.emplace_back();
      for (int i = 0; i < k + (extra ? 1 : 0); ++i) {
        const double angle = middle + (i - (k - 1) / 2.0) * chevron_step;
        (std::fmod(angle + 360, 360) > hand_ ? ahead : behind)
            .back()
            .append(chevron(angle, wheel::rail, 8.5, 16.5));
      }
    }
  }
  const bool steps = !ahead.isEmpty();
  if (ahead != ahead_ || behind != behind_) {
    ahead_ = ahead;
    behind_ = behind;
    Q_EMIT chevronsChanged();
  }
  if (steps && second_passed && moves_ && !face_.held) Q_EMIT chevronsStepped();
}

QString WallView::state() const {
  static constexpr std::array names{"nobody", "gather", "ready", "show",      "warm-up",  "lead-in", "work",
                                    "last",   "change", "pause", "cool-down", "past-end", "stopped"};
  return QString::fromLatin1(names[static_cast<std::size_t>(face_.state)]);
}

QString WallView::rail() const {
  switch (rail_of(face_)) {
    case WallRail::plain:
      return QStringLiteral("plain");
    case WallRail::sleepers:
      return QStringLiteral("sleepers");
    case WallRail::beads:
      return QStringLiteral("beads");
    case WallRail::chevrons:
      return QStringLiteral("chevrons");
  }
  return {};
}

QString WallView::tone() const {
  switch (tone_of(face_)) {
    case WallTone::active:
      return QStringLiteral("active");
    case WallTone::go:
      return QStringLiteral("go");
    case WallTone::held:
      return QStringLiteral("held");
  }
  return {};
}

bool WallView::smallChevrons() const {
  return face_.ring && (face_.state == WallState::work || face_.state == WallState::last);
}

bool WallView::pointing() const {
  return face_.state != WallState::nobody && face_.state != WallState::gather &&
         face_.state != WallState::ready && face_.state != WallState::stopped;
}

QVariant WallView::lists(const QList<QPolygonF>& lines) { return QVariant::fromValue(lines); }

QVariantList WallView::many(const QList<QList<QPolygonF>>& all) {
  QVariantList all_lists;
  for (const QList<QPolygonF>& one : all) all_lists.append(lists(one));
  return all_lists;
}

QVariantList WallView::railCuts() const {
  QVariantList cuts;
  for (double a : items_.rail) cuts.append(a);
  return cuts;
}

QVariantList WallView::chevronsSmall() const {
  QList<QList<QPolygonF>> small;
  for (double angle : items_.gaps) small.append({chevron(angle, wheel::rail - 40, 5.3, 9.5)});
  return many(small);
}

QString WallView::sinceStop() const {
  return QStringLiteral("%1:%2")
      .arg(face_.seconds_since_stop / 60)
      .arg(face_.seconds_since_stop % 60, 2, 10, QLatin1Char('0'));
}

QVariantList WallView::emergency() const {
  QVariantList all;
  for (std::size_t i = 0; i < site_.emergency.size(); ++i)
    all.append(QVariantMap{{QStringLiteral("head"), site_.emergency[i].head},
                           {QStringLiteral("text"), site_.emergency[i].text},
                           {QStringLiteral("firstAid"), static_cast<int>(i) == site_.first_aid}});
  return all;
}

}  // namespace floorwheel::screens
