// SPDX-License-Identifier: GPL-3.0-or-later
// What can be changed while a class runs: the questions before a preview (who, which station, which exercise)
// and the ways out that each change offers.
#include <QJsonArray>
#include <algorithm>

#include "kiosk/screens/hub_link.h"
#include "kiosk/screens/instructor_change.h"
#include "kiosk/screens/instructor_words.h"

namespace floorwheel::screens {

using words::text;

namespace {

constexpr const char* guest_id = "";

QJsonObject change_of(const char* kind, QJsonObject fields) {
  fields.insert(QStringLiteral("kind"), QLatin1String(kind));
  return fields;
}

}  // namespace

int InstructorChange::open_slot() const {
  return flow_.view() != nullptr ? wire::first_open_slot(flow_.view()->clock, hub_link().classNowMs()) : 1;
}

bool InstructorChange::anyClosed() const {
  return flow_.view() != nullptr &&
         std::ranges::any_of(flow_.view()->stations, [](const wire::StationView& s) { return s.closed_now; });
}

void InstructorChange::late() {
  if (flow_.view() == nullptr) return;
  QList<InstructorPicker::Option> options;
  for (const wire::MemberView& m : flow_.view()->members)
    if (!m.here && !m.guest) options.append({text(m.id), text(m.shown_as), tr("expected"), {}});
  options.append({QLatin1String(guest_id), tr("A guest"), tr("without a name"), {}});
  picker_.open(
      tr("Who came late?"), options,
      [this](const QString& id) {
        const QString name = id.isEmpty() ? tr("A guest") : name_of(id);
        QJsonObject fields;
        if (!id.isEmpty()) fields.insert(QStringLiteral("member"), id);
        preview(tr("%1 comes, from slot %2").arg(name).arg(open_slot()),
                {{tr("Place %1").arg(name), change_of("class.late", fields), {}, {}, {}, {}, {}}}, 0);
      },
      [this] { flow_.open(QStringLiteral("change")); });
  // Members who are not on the list come after those who are.
  members_ = hub_link().ask(QStringLiteral("members"));
  auto* const once = new QObject(this);
  connect(&hub_link(), &HubLink::answer, once,
          [this, once, options](const QString& id, const QJsonObject& body) {
            if (id != members_) return;
            once->deleteLater();
            if (flow_.page() != QLatin1String("pick") || flow_.view() == nullptr) return;
            QList<InstructorPicker::Option> all = options;
            for (const auto v : body.value(QStringLiteral("members")).toArray()) {
              const QString member = v.toObject().value(QStringLiteral("member")).toString();
              if (wire::find_member(*flow_.view(), member.toStdString()) == nullptr)
                all.append({member,
                            v.toObject().value(QStringLiteral("shown_as")).toString(),
                            tr("not on the list"),
                            {}});
            }
            picker_.refill(all);
          });
}

void InstructorChange::left() {
  if (flow_.view() == nullptr) return;
  QList<InstructorPicker::Option> options;
  for (const wire::MemberView& m : flow_.view()->members)
    if (m.here && m.present.last >= open_slot()) options.append({text(m.id), text(m.shown_as), {}, {}});
  picker_.open(
      tr("Who leaves?"), options,
      [this](const QString& id) {
        preview(tr("%1 leaves, from slot %2").arg(name_of(id)).arg(open_slot()),
                {{tr("Let %1 go").arg(name_of(id)),
                  change_of("class.leave", {{QStringLiteral("member"), id}}),
                  {},
                  {},
                  {},
                  {},
                  {}}},
                0);
      },
      [this] { flow_.open(QStringLiteral("change")); });
}

void InstructorChange::pick_station(const QString& title, bool closed, const QString& without,
                                    std::function<void(const wire::StationView&)> then) {
  if (flow_.view() == nullptr) return;
  QList<InstructorPicker::Option> options;
  for (const wire::StationView& s : flow_.view()->stations)
    if (s.closed_now == closed && text(s.id) != without)
      options.append({text(s.id), text(s.exercise_name), {}, text(s.letter)});
  picker_.open(
      title, options,
      [this, then = std::move(then)](const QString& id) {
        if (flow_.view() == nullptr) return;
        if (const wire::StationView* s = wire::find_station(*flow_.view(), id.toStdString())) then(*s);
      },
      [this] { flow_.open(QStringLiteral("change")); });
}

void InstructorChange::close() {
  pick_station(tr("Which station closes?"), false, {}, [this](const wire::StationView& s) {
    const QString letter = text(s.letter);
    const QString id = text(s.id);
    QList<Choice> ways;
    const QString other = exercises_.first_substitute(*flow_.view(), s);
    if (!other.isEmpty())
      ways.append(
          {tr("%1 instead").arg(exercises_.name_of(other)),
           change_of("station.set", {{QStringLiteral("station"), id}, {QStringLiteral("exercise"), other}}),
           {},
           {},
           {},
           {},
           {}});
    ways.append({tr("Close %1 to the end").arg(letter),
                 change_of("station.close", {{QStringLiteral("station"), id}}),
                 {},
                 {},
                 {},
                 {},
                 {}});
    const int close_way = static_cast<int>(ways.size()) - 1;
    if (open_slot() + 1 < flow_.view()->sheet.timing.slots)
      ways.append({tr("Close %1 for two slots").arg(letter),
                   change_of("station.close", {{QStringLiteral("station"), id},
                                               {QStringLiteral("until_slot"), open_slot() + 1}}),
                   {},
                   {},
                   {},
                   {},
                   {}});
    preview(tr("%1 closes from slot %2").arg(letter).arg(open_slot()), ways, close_way);
  });
}

void InstructorChange::reopen() {
  pick_station(tr("Which station is used again?"), true, {}, [this](const wire::StationView& s) {
    preview(tr("%1 opens from slot %2").arg(text(s.letter)).arg(open_slot()),
            {{tr("Open %1 again").arg(text(s.letter)),
              change_of("station.open", {{QStringLiteral("station"), text(s.id)}}),
              {},
              {},
              {},
              {},
              {}}},
            0);
  });
}

void InstructorChange::swap() {
  pick_station(tr("Swap which station?"), false, {}, [this](const wire::StationView& first) {
    const QString a = text(first.id);
    const QString letter = text(first.letter);
    pick_station(tr("Swap %1 with which station?").arg(letter), false, a,
                 [this, a, letter](const wire::StationView& b) {
                   preview(tr("%1 and %2 change places").arg(letter, text(b.letter)),
                           {{tr("Swap %1 and %2").arg(letter, text(b.letter)),
                             change_of("station.swap", {{QStringLiteral("station"), a},
                                                        {QStringLiteral("with"), text(b.id)}}),
                             {},
                             {},
                             {},
                             {},
                             {}}},
                           0);
                 });
  });
}

void InstructorChange::exercise() {
  pick_station(tr("Another exercise at which station?"), false, {}, [this](const wire::StationView& s) {
    const QString station = text(s.id);
    const QString letter = text(s.letter);
    picker_.open(
        tr("What stands at %1 now?").arg(letter), exercises_.options_for(&s),
        [this, station, letter](const QString& exercise) {
          preview(tr("Another exercise at %1").arg(letter),
                  {{exercises_.name_of(exercise),
                    change_of("station.set",
                              {{QStringLiteral("station"), station}, {QStringLiteral("exercise"), exercise}}),
                    {},
                    {},
                    {},
                    {},
                    {}}},
                  0);
        },
        [this] { flow_.open(QStringLiteral("change")); });
  });
}

}  // namespace floorwheel::screens
