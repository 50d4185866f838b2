// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/touch_check_in.h"

#include <QDateTime>
#include <QFont>
#include <QFontMetricsF>
#include <algorithm>

namespace floorwheel::screens {
namespace {

constexpr int prefix_most = 4;
constexpr int draft_most = 20;

QString clock(const QDateTime& at) { return at.toString(QStringLiteral("HH:mm")); }

}  // namespace

QString folded(const QString& alias) {
  QString out;
  for (const QChar c : alias.normalized(QString::NormalizationForm_D))
    if (c.isLetterOrNumber()) out += c.toUpper();
  return out;
}

double width_on_wall(const QString& alias) {
  // Capitals of 71 px, 0.70 of the size, in the wall's bold narrow cut.
  QFont font(QStringLiteral("PT Sans Narrow"));
  font.setBold(true);
  font.setPixelSize(101);
  return QFontMetricsF(font).horizontalAdvance(alias);
}

TouchCheckIn::TouchCheckIn(QObject* parent) : QObject(parent) {}

void TouchCheckIn::show(Facts facts) {
  // By letters without accents, as the letter keys find them; the same on every machine.
  std::ranges::stable_sort(facts.people, {}, [](const Arrival& a) { return folded(a.alias); });
  if (facts == facts_) return;
  facts_ = std::move(facts);
  lay();
}

void TouchCheckIn::type(const QString& letter) {
  if (prefix_.size() >= prefix_most || !liveLetters().contains(letter)) return;
  prefix_ += letter;
  arrivals_.first();
  lay();
}

void TouchCheckIn::back() {
  prefix_.chop(1);
  lay();
}

void TouchCheckIn::clear() {
  prefix_.clear();
  draft_.clear();
  arrivals_.first();
  everybody_.first();
  lay();
  Q_EMIT draftChanged();
}

void TouchCheckIn::typeDraft(const QString& letter) {
  if (draft_.size() >= draft_most) return;
  // A word begins with a capital: no shift key.
  const bool begins = draft_.isEmpty() || !draft_.back().isLetter();
  if (letter == QLatin1String(" ") && (draft_.isEmpty() || draft_.back() == QLatin1Char(' '))) return;
  draft_ += begins ? letter.toUpper() : letter.toLower();
  Q_EMIT draftChanged();
}

void TouchCheckIn::backDraft() {
  draft_.chop(1);
  Q_EMIT draftChanged();
}

int TouchCheckIn::here() const {
  return static_cast<int>(std::ranges::count(facts_.people, true, &Arrival::here));
}

QString TouchCheckIn::liveLetters() const {
  QString live;
  if (prefix_.size() >= prefix_most) return live;
  for (const Arrival& a : facts_.people) {
    const QString f = folded(a.alias);
    if (!f.startsWith(prefix_) || f.size() <= prefix_.size()) continue;
    const QChar next = f[prefix_.size()];
    if (!live.contains(next)) live += next;
  }
  std::sort(live.begin(), live.end());
  return live;
}

QString TouchCheckIn::draftTrouble() const {
  const QString alias = draft_.trimmed();
  if (folded(alias).isEmpty()) return QStringLiteral("empty");
  const auto same = [&](const Arrival& a) { return a.alias.compare(alias, Qt::CaseInsensitive) == 0; };
  if (std::ranges::any_of(facts_.people, same)) return QStringLiteral("taken");
  if (width_on_wall(alias) > widest_on_wall) return QStringLiteral("wide");
  return {};
}

void TouchCheckIn::lay() {
  const auto key = [](const Arrival& a) {
    return TouchKey{a.member, a.alias, {}, a.here ? TouchMark::kept : TouchMark::none};
  };
  std::vector<TouchKey> found, all;
  for (const Arrival& a : facts_.people) {
    all.push_back(key(a));
    if (prefix_.isEmpty() ? !a.here : folded(a.alias).startsWith(prefix_)) found.push_back(key(a));
  }
  std::ranges::stable_sort(found, {}, [](const TouchKey& k) { return k.mark == TouchMark::kept; });
  arrivals_.show(std::move(found));
  everybody_.show(std::move(all));
  Q_EMIT changed();
}

TouchCheckIn::Facts facts_of(const wire::ClassView& c, qint64 civil_now_ms, int utc_offset_s,
                             const std::function<bool(const wire::MemberView&)>& here) {
  TouchCheckIn::Facts f;
  f.class_name = QString::fromStdString(c.name);
  f.stations = static_cast<int>(c.stations.size());
  // The times are those the class file states, in the offset it states them in.
  const QDateTime start = QDateTime::fromString(QString::fromStdString(c.start), Qt::ISODate);
  if (start.isValid()) {
    f.times = clock(start);
    if (c.length_s > 0) f.times += QStringLiteral(" – ") + clock(start.addSecs(c.length_s));
    const QDateTime now = QDateTime::fromMSecsSinceEpoch(civil_now_ms, Qt::OffsetFromUTC, utc_offset_s);
    const qint64 ms = now.msecsTo(start);
    // A demo may carry a date long gone: only a start within half a day is counted down.
    if (ms > 0 && ms < 43'200'000) f.minutes_to_start = static_cast<int>((ms + 59'999) / 60'000);
  }
  for (const auto& m : c.members)
    if (!m.guest && (m.expected || here(m)))
      f.people.push_back({QString::fromStdString(m.id), QString::fromStdString(m.shown_as), here(m)});
  return f;
}

}  // namespace floorwheel::screens
