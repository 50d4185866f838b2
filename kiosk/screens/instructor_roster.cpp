// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/instructor_roster.h"

#include <algorithm>

#include "kiosk/screens/class_time.h"
#include "kiosk/screens/hub_link.h"
#include "kiosk/screens/instructor_words.h"

namespace floorwheel::screens {

namespace {

constexpr int window_rows = 6;

bool noted(const wire::MemberView& m) { return !m.notes.empty() || (m.today && m.today->answer != "fine"); }

/// Today's answer as two lines: what it is and what follows from it.
std::pair<QString, QString> lines_of(const wire::MemberView& m) {
  if (m.today && m.today->answer != "fine") {
    const std::string& a = m.today->answer;
    if (a == "take_it_easy")
      return {InstructorRoster::tr("take it easy"), InstructorRoster::tr("no higher loads")};
    if (a == "wants_a_word")
      return {InstructorRoster::tr("wants a word"), InstructorRoster::tr("before we start")};
    const QString spot = words::group_word(m.today->spot);
    return {spot.isEmpty() ? InstructorRoster::tr("something hurts")
                           : InstructorRoster::tr("hurts: %1").arg(spot),
            spot.isEmpty() ? InstructorRoster::tr("ask before we start")
                           : InstructorRoster::tr("left out today")};
  }
  if (m.notes.empty())
    return {QString(), m.guest ? InstructorRoster::tr("guest") : words::level_word(m.level)};
  if (m.notes.size() > 1) return {words::text(m.notes[0]), words::text(m.notes[1])};
  // 'together with Ana P.' reads best in two lines; a note that cannot be cut keeps one.
  const QString note = words::text(m.notes[0]);
  const qsizetype cut = note.indexOf(QStringLiteral(" with "));
  if (cut > 0) return {note.left(cut), note.mid(cut + 1)};
  return {note, words::level_word(m.level)};
}

}  // namespace

InstructorRoster::InstructorRoster(InstructorFlow& flow, InstructorNew& newcomers, QObject* parent)
    : QObject(parent),
      flow_(flow),
      newcomers_(newcomers),
      rows_(new RowModel({"name", "note", "follows", "chosen"}, this)) {
  connect(&newcomers_, &InstructorNew::changed, this, &InstructorRoster::show);
  connect(&hub_link(), &HubLink::hallChanged, this, &InstructorRoster::show);
  connect(&class_time(), &ClassTime::phaseChanged, this, &InstructorRoster::show);
  show();
}

std::vector<const wire::MemberView*> InstructorRoster::people() const {
  std::vector<const wire::MemberView*> out;
  if (flow_.view() == nullptr) return out;
  for (const wire::MemberView& m : flow_.view()->members)
    if (m.here && m.present.last >= class_time().slot()) out.push_back(&m);
  std::stable_partition(out.begin(), out.end(), [](const auto* m) { return noted(*m); });
  return out;
}

QString InstructorRoster::heading() const {
  const auto all = people();
  const auto with = std::ranges::count_if(all, [](const auto* m) { return noted(*m); });
  return tr("Roster: %1 of %2 with a note").arg(with).arg(all.size());
}

void InstructorRoster::show() {
  const auto all = people();
  const auto found = std::ranges::find_if(all, [&](const auto* m) { return m->id == chosen_; });
  const int at = found == all.end() || !stepped_ ? 0 : static_cast<int>(found - all.begin());
  chosen_ = all.empty() ? std::string() : all[static_cast<std::size_t>(at)]->id;
  const int size = static_cast<int>(all.size());
  // Pages rather than a sliding window: the rows stand still while the eye goes down them.
  const int first = at / window_rows * window_rows;
  QList<QVariantMap> rows;
  for (int i = first; i < std::min(size, first + window_rows); ++i) {
    const wire::MemberView& m = *all[static_cast<std::size_t>(i)];
    auto [note, follows] = lines_of(m);
    const QString visit = newcomers_.visit_word(words::text(m.id));
    if (note.isEmpty() && !visit.isEmpty()) follows = tr("%1, %2").arg(follows, visit);
    rows.append({{QStringLiteral("name"), words::text(m.shown_as)},
                 {QStringLiteral("note"), note},
                 {QStringLiteral("follows"), follows},
                 {QStringLiteral("chosen"), i == at}});
  }
  show_in_places(*rows_, rows);
  Q_EMIT changed();
}

void InstructorRoster::step(int by) {
  const auto all = people();
  if (all.empty()) return;
  stepped_ = true;
  const auto found = std::ranges::find_if(all, [&](const auto* m) { return m->id == chosen_; });
  const auto size = static_cast<std::ptrdiff_t>(all.size());
  const std::ptrdiff_t at = found == all.end() ? 0 : found - all.begin();
  chosen_ = all[static_cast<std::size_t>((at + by + size) % size)]->id;
  show();
}

void InstructorRoster::up() { step(-1); }
void InstructorRoster::down() { step(1); }

}  // namespace floorwheel::screens
