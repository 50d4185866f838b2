// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/instructor_classes.h"

#include <QJsonArray>
#include <algorithm>

#include "kiosk/screens/class_time.h"
#include "kiosk/screens/hub_link.h"
#include "kiosk/screens/instructor_words.h"

namespace floorwheel::screens {

namespace {
constexpr int page_rows = 6;
const QList<QByteArray> roles = {"row", "time", "name", "when", "people", "chosen"};
}  // namespace

InstructorClasses::InstructorClasses(InstructorFlow& flow, QObject* parent)
    : QObject(parent), flow_(flow), others_(new RowModel(roles, this)), all_(new RowModel(roles, this)) {
  connect(&hub_link(), &HubLink::hallChanged, this, [this] {
    show();
    if (flow_.view() == nullptr) ask();
  });
  connect(&hub_link(), &HubLink::connectedChanged, this, &InstructorClasses::ask);
  connect(&hub_link(), &HubLink::answer, this, [this](const QString& id, const QJsonObject& body) {
    if (id == question_) take_answer(body);
  });
  connect(&class_time(), &ClassTime::secondChanged, this, [this] {
    if (flow_.view() == nullptr) show();
  });
  ask();
}

void InstructorClasses::ask() {
  if (hub_link().connected()) question_ = hub_link().ask(QStringLiteral("classes"));
}

void InstructorClasses::take_answer(const QJsonObject& body) {
  items_.clear();
  for (const auto v : body.value(QStringLiteral("classes")).toArray()) {
    const QJsonObject c = v.toObject();
    items_.append({c.value(QStringLiteral("class")).toString(), c.value(QStringLiteral("name")).toString(),
                   c.value(QStringLiteral("start")).toString(), c.value(QStringLiteral("state")).toString(),
                   c.value(QStringLiteral("expected")).toInt(), c.value(QStringLiteral("here")).toInt()});
  }
  show();
}

const InstructorClasses::Item* InstructorClasses::big() const {
  for (const Item& i : items_)
    if (i.id == chosen_) return &i;
  for (const Item& i : items_)
    if (i.state != QLatin1String("ended")) return &i;
  return nullptr;
}

const wire::ClassView* InstructorClasses::view_of(const Item& i) const {
  const auto& classes = hub_link().hall().classes;
  const auto found = classes.find(i.id.toStdString());
  return found == classes.end() ? nullptr : &found->second;
}

QString InstructorClasses::when(const Item& i) const {
  if (i.state == QLatin1String("ended")) return tr("ended");
  if (i.state == QLatin1String("running") || i.state == QLatin1String("held") ||
      i.state == QLatin1String("stopped"))
    return tr("is under way");
  return words::starts_in(words::start_ms(i.start.toStdString()), hub_link().civilNowMs());
}

QVariantMap InstructorClasses::row(int index) const {
  const Item& i = items_.at(index);
  const QString time = words::start_text(i.start.toStdString());
  QString count = tr("%1 expected").arg(i.expected);
  if (i.state == QLatin1String("ended"))
    count = tr("%1 came").arg(i.here);
  else if (i.here > 0)
    count = tr("%1 of %2 are here").arg(i.here).arg(i.expected);
  return {{QStringLiteral("row"), index},    {QStringLiteral("time"), time.isEmpty() ? tr("any time") : time},
          {QStringLiteral("name"), i.name},  {QStringLiteral("when"), when(i)},
          {QStringLiteral("people"), count}, {QStringLiteral("chosen"), big() == &i}};
}

void InstructorClasses::show() {
  QList<QVariantMap> beside;
  for (int i = 0; i < items_.size() && beside.size() < 2; ++i)
    if (big() != &items_.at(i)) beside.append(row(i));
  show_in_places(*others_, beside);
  page_ = std::clamp(page_, 0, pages() - 1);
  QList<QVariantMap> here;
  for (int i = page_ * page_rows; i < std::min<int>(static_cast<int>(items_.size()), (page_ + 1) * page_rows);
       ++i)
    here.append(row(i));
  show_in_places(*all_, here);
  Q_EMIT changed();
}

int InstructorClasses::pages() const { return pages_of(items_.size(), page_rows); }

QString InstructorClasses::bigTime() const {
  if (big() == nullptr) return {};
  const QString time = words::start_text(big()->start.toStdString());
  return time.isEmpty() ? tr("Begin") : time;
}
QString InstructorClasses::bigName() const { return big() != nullptr ? big()->name : QString(); }
QString InstructorClasses::bigWhen() const { return big() != nullptr ? when(*big()) : QString(); }

QString InstructorClasses::people() const {
  if (big() == nullptr) return tr("The hub knows no class yet. Add one with: floorwheel tell class.add");
  const wire::ClassView* c = view_of(*big());
  if (c == nullptr) return tr("%1 expected.").arg(big()->expected);
  const auto here = std::ranges::count_if(c->members, [](const wire::MemberView& m) { return m.here; });
  const QString count = here == 0 ? tr("%1 expected").arg(big()->expected)
                                  : tr("%1 of %2 are here").arg(here).arg(big()->expected);
  int places = 0;
  for (const wire::StationView& s : c->stations) places += s.capacity;
  const auto noted = std::ranges::count_if(
      c->members, [](const wire::MemberView& m) { return !m.notes.empty() || m.today.has_value(); });
  return tr("%1. %2 %3 with a note.").arg(count, words::seats_text(places - big()->expected)).arg(noted);
}

QString InstructorClasses::plan() const {
  const wire::ClassView* c = big() != nullptr ? view_of(*big()) : nullptr;
  if (c == nullptr) return {};
  return tr("%1 stations, %2 laps, %3 s work and %4 s changeover.")
      .arg(c->stations.size())
      .arg(c->timing.laps)
      .arg(c->timing.work_s)
      .arg(c->timing.change_s);
}

void InstructorClasses::choose(int index) {
  if (index < 0 || index >= items_.size()) return;
  chosen_ = items_.at(index).id;
  show();
  flow_.leave();
}

void InstructorClasses::nextPage() {
  page_ = (page_ + 1) % pages();
  show();
}

void InstructorClasses::take() {
  if (big() == nullptr) return;
  hub_link().tell(QStringLiteral("class.open"), {{QStringLiteral("class"), big()->id}});
}

}  // namespace floorwheel::screens
