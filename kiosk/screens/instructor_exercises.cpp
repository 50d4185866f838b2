// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/instructor_exercises.h"

#include <QJsonArray>
#include <algorithm>

#include "kiosk/screens/hub_link.h"
#include "kiosk/screens/instructor_words.h"

namespace floorwheel::screens {

namespace {
QStringList strings(const QJsonValue& array) {
  QStringList out;
  for (const auto v : array.toArray()) out << v.toString();
  return out;
}
}  // namespace

InstructorExercises::InstructorExercises(QObject* parent) : QObject(parent) {
  connect(&hub_link(), &HubLink::connectedChanged, this, &InstructorExercises::ask);
  connect(&hub_link(), &HubLink::answer, this, [this](const QString& id, const QJsonObject& body) {
    if (id != question_) return;
    items_.clear();
    for (const auto v : body.value(QStringLiteral("exercises")).toArray()) {
      const QJsonObject e = v.toObject();
      items_.append({e.value(QStringLiteral("id")).toString(), e.value(QStringLiteral("name")).toString(),
                     strings(e.value(QStringLiteral("primary"))),
                     strings(e.value(QStringLiteral("substitutes")))});
    }
    std::ranges::stable_sort(
        items_, [](const Item& a, const Item& b) { return a.name.localeAwareCompare(b.name) < 0; });
    Q_EMIT changed();
  });
  ask();
}

void InstructorExercises::ask() {
  if (hub_link().connected()) question_ = hub_link().ask(QStringLiteral("exercises"));
}

const InstructorExercises::Item* InstructorExercises::find(const QString& id) const {
  const auto found = std::ranges::find(items_, id, &Item::id);
  return found == items_.end() ? nullptr : &*found;
}

QString InstructorExercises::name_of(const QString& id) const {
  const Item* item = find(id);
  return item != nullptr ? item->name : id;
}

QList<InstructorPicker::Option> InstructorExercises::options_for(const wire::StationView* station) const {
  const Item* present = station != nullptr ? find(words::text(station->exercise)) : nullptr;
  const auto rank = [&](const Item& i) {
    if (present == nullptr) return 2;
    if (present->substitutes.contains(i.id)) return 0;
    return std::ranges::any_of(i.primary, [&](const QString& g) { return present->primary.contains(g); }) ? 1
                                                                                                          : 2;
  };
  QList<InstructorPicker::Option> out;
  for (int wanted = 0; wanted <= 2; ++wanted)
    for (const Item& i : items_) {
      if (&i == present || rank(i) != wanted) continue;
      QStringList groups;
      for (const QString& g : i.primary) groups << words::group_word(g.toStdString());
      out.append(
          {i.id, i.name, wanted == 0 ? tr("stands in") : groups.mid(0, 2).join(QStringLiteral(", ")), {}});
    }
  return out;
}

QString InstructorExercises::first_substitute(const wire::ClassView& c,
                                              const wire::StationView& station) const {
  const Item* present = find(words::text(station.exercise));
  if (present == nullptr) return {};
  for (const QString& id : present->substitutes)
    if (find(id) != nullptr && std::ranges::none_of(c.stations, [&](const wire::StationView& s) {
          return words::text(s.exercise) == id;
        }))
      return id;
  return {};
}

}  // namespace floorwheel::screens
