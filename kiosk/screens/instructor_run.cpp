// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/instructor_run.h"

#include <algorithm>

#include "kiosk/screens/class_time.h"
#include "kiosk/screens/hub_link.h"
#include "kiosk/screens/instructor_words.h"

namespace floorwheel::screens {

using words::text;

InstructorRun::InstructorRun(InstructorFlow& flow, InstructorRoster& roster, QObject* parent)
    : QObject(parent), flow_(flow), roster_(roster) {
  connect(&flow_, &InstructorFlow::changed, this, &InstructorRun::changed);
  connect(&roster_, &InstructorRoster::changed, this, &InstructorRun::changed);
}

const wire::Segment* InstructorRun::segment(int index) const {
  const auto& all = class_time().segments();
  return index >= 0 && index < static_cast<int>(all.size()) ? &all[static_cast<std::size_t>(index)] : nullptr;
}

QString InstructorRun::state() const {
  if (flow_.view() == nullptr) return {};
  if (class_time().stopped()) return tr("Stopped");
  if (class_time().held()) return tr("Held");
  const wire::Segment* s = segment(class_time().moment().segment);
  if (s == nullptr) return class_time().phase() == QLatin1String("past-end") ? tr("Over") : tr("Ready");
  return words::segment_word(*s, flow_.view()->sheet.style);
}

QString InstructorRun::place() const {
  if (flow_.view() == nullptr) return {};
  const wire::Segment* s = segment(class_time().moment().segment);
  if (class_time().slot() > 0) {
    const QString slot = tr("Slot %1 of %2").arg(class_time().slot()).arg(class_time().slotCount());
    return class_time().lapCount() > 1 ? tr("%1, lap %2").arg(slot).arg(class_time().lap()) : slot;
  }
  if (s == nullptr) return tr("The timeline has run out");
  if (class_time().held()) return words::segment_word(*s, flow_.view()->sheet.style);
  return s->kind == wire::SegmentKind::cool_down ? tr("After the last slot") : tr("Before slot 1");
}

QString InstructorRun::sheet() const {
  if (flow_.view() == nullptr) return {};
  return tr("run sheet %1, ends %2").arg(flow_.view()->sheet.version).arg(class_time().endText());
}

QString InstructorRun::at(const std::string& member, int slot) const {
  const std::string id = wire::station_of(*flow_.view(), member, slot);
  const wire::StationView* s = wire::find_station(*flow_.view(), id);
  if (s == nullptr) return {};
  const wire::MemberView* m = wire::find_member(*flow_.view(), member);
  QString exercise = text(s->exercise_name);
  if (m != nullptr)
    if (const auto other = m->exercises.find(id); other != m->exercises.end()) {
      const auto name = hub_link().hall().exercise_names.find(other->second);
      exercise = text(name != hub_link().hall().exercise_names.end() ? name->second : other->second);
    }
  return tr("%1, %2").arg(text(s->letter), exercise.toLower());
}

QString InstructorRun::member() const {
  const wire::MemberView* m =
      flow_.view() != nullptr ? wire::find_member(*flow_.view(), roster_.chosen()) : nullptr;
  return m != nullptr ? text(m->shown_as) : QString();
}

/// The slot whose sets should be kept by now: the one left last.
int InstructorRun::last_worked_slot() const {
  const QString phase = class_time().phase();
  if (phase == QLatin1String("cool-down") || phase == QLatin1String("past-end"))
    return class_time().slotCount();
  return phase == QLatin1String("work") ? class_time().slot() - 1 : class_time().slot();
}

QStringList InstructorRun::memberLines() const {
  if (flow_.view() == nullptr || roster_.chosen().empty()) return {};
  const std::string& who = roster_.chosen();
  const int slot = class_time().slot();
  QStringList out;
  if (slot > 0) {
    const QString now = at(who, slot);
    out << (now.isEmpty() ? tr("Now: no station.") : tr("Now: %1.").arg(now));
  }
  if (slot < class_time().slotCount() && last_worked_slot() < class_time().slotCount()) {
    const QString next = at(who, slot + 1);
    out << (next.isEmpty() ? tr("Next: no station.") : tr("Next: %1.").arg(next));
  }
  int due = 0;
  int kept = 0;
  for (int t = 1; t <= last_worked_slot(); ++t) {
    due += wire::station_of(*flow_.view(), who, t).empty() ? 0 : 1;
    kept += flow_.view()->records.contains({who, t}) ? 1 : 0;
  }
  out << tr("Kept %1 of %2 sets.").arg(kept).arg(due);
  return out;
}

QStringList InstructorRun::nextLines() const {
  const wire::ClassView* c = flow_.view();
  if (c == nullptr) return {};
  const wire::Moment m = class_time().moment();
  QStringList out;
  if (class_time().held()) {
    const qint64 held_s = (hub_link().classNowMs() - c->clock.anchor_ms) / 1000;
    if (class_time().powerCut()) {
      out << tr("The machine was off. The class is held where it was.");
    } else {
      out << tr("Held for %1.").arg(words::minutes_text(std::max<qint64>(0, held_s)));
    }
    out << (class_time().slot() > 0 ? tr("Resume goes on with %1 s left of slot %2.")
                                          .arg(class_time().secondsLeft())
                                          .arg(class_time().slot())
                                    : tr("Resume goes on with %1 s left.").arg(class_time().secondsLeft()));
    out << tr("The end is %1 by now.").arg(class_time().endText());
    return out;
  }
  const wire::Segment* next = segment(m.segment + 1);
  if (next == nullptr)
    out << tr("In %1 s the class is over.").arg(class_time().secondsLeft());
  else
    out << tr("In %1 s: %2, %3 s.")
               .arg(class_time().secondsLeft())
               .arg(words::segment_word(*next, c->sheet.style).toLower())
               .arg(next->length_ms / 1000);
  qint64 until = m.left_ms;
  for (int i = m.segment + 1; segment(i) != nullptr; ++i) {
    if (i > m.segment + 1 &&
        (segment(i)->kind == wire::SegmentKind::pause || segment(i)->kind == wire::SegmentKind::cool_down)) {
      out << tr("%1 at %2.")
                 .arg(words::segment_word(*segment(i), c->sheet.style),
                      words::clock_text(hub_link().civilNowMs() + until, hub_link().utcOffsetS()));
      break;
    }
    until += segment(i)->length_ms;
  }
  return out;
}

QStringList InstructorRun::keptLines() const {
  const wire::ClassView* c = flow_.view();
  const int slot = last_worked_slot();
  if (c == nullptr || slot < 1) return {tr("No slot has been worked yet.")};
  int due = 0;
  QStringList missing;
  for (const RunSheetRow& r : c->sheet.rows) {
    if (wire::station_of(*c, r.member, slot).empty()) continue;
    ++due;
    if (!c->records.contains({r.member, slot})) {
      const wire::MemberView* m = wire::find_member(*c, r.member);
      missing << (m != nullptr ? text(m->shown_as) : text(r.member));
    }
  }
  QStringList out{tr("%1 of %2 for slot %3.").arg(due - missing.size()).arg(due).arg(slot)};
  if (!missing.isEmpty()) out << tr("Missing: %1.").arg(words::name_list(missing, 2));
  return out;
}

QStringList InstructorRun::costLines() const {
  return flow_.view() != nullptr ? words::cost_sentences(flow_.view()->sheet.cost) : QStringList();
}

QString InstructorRun::lastChange() const {
  return flow_.view() != nullptr ? text(flow_.view()->last_change) : QString();
}

QString InstructorRun::resumeNote() const {
  return tr("everybody goes on, %1 s").arg(class_time().secondsLeft());
}

QString InstructorRun::repeatNote() const {
  return class_time().slot() > 0 ? tr("slot %1 from its start").arg(class_time().slot())
                                 : tr("from its start");
}

QString InstructorRun::closeNote() const {
  if (flow_.view() == nullptr) return {};
  const auto here =
      std::ranges::count_if(flow_.view()->members, [](const wire::MemberView& m) { return m.here; });
  return tr("%1 were here, %2 sets kept").arg(here).arg(flow_.view()->records.size());
}

}  // namespace floorwheel::screens
