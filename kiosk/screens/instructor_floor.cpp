// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/instructor_floor.h"

#include <algorithm>
#include <array>

#include "kiosk/screens/hub_link.h"
#include "kiosk/screens/instructor_words.h"

namespace floorwheel::screens {

using words::text;

namespace {

// The cells round a page of five columns and three lines, clockwise from its upper left.
struct Cell {
  int column;
  int line;
};
constexpr std::array<Cell, 12> round = {
    {{0, 0}, {1, 0}, {2, 0}, {3, 0}, {4, 0}, {4, 1}, {4, 2}, {3, 2}, {2, 2}, {1, 2}, {0, 2}, {0, 1}}};
constexpr int page_stations = static_cast<int>(round.size());

QString kg(int hg) { return QLocale().toString(hg / 10.0, 'g', 4); }

}  // namespace

InstructorFloor::InstructorFloor(InstructorFlow& flow, InstructorPicker& picker,
                                 InstructorExercises& exercises, QObject* parent)
    : QObject(parent),
      flow_(flow),
      picker_(picker),
      exercises_(exercises),
      rows_(new RowModel({"id", "letter", "text", "note", "closed", "chosen", "column", "line"}, this)) {
  connect(&hub_link(), &HubLink::hallChanged, this, &InstructorFloor::show);
  connect(&hub_link(), &HubLink::receipt, this, [this](const QString& id, qint64, const QJsonObject& body) {
    if (id == undoing_) undo_.removeLast();
    if (const auto told = waiting_.constFind(id); told != waiting_.constEnd()) {
      Undo back = *told;
      // Only the hub knows the id of a station that was added.
      if (back.fields.value(QStringLiteral("station")).toString().isEmpty())
        back.fields.insert(QStringLiteral("station"), body.value(QStringLiteral("station")));
      undo_.append(back);
      waiting_.remove(id);
    }
    show();
  });
}

void InstructorFloor::open() {
  touched_ = false;
  show();
  flow_.open(QStringLiteral("floor"));
}

const wire::StationView* InstructorFloor::chosen() const {
  return flow_.view() != nullptr ? wire::find_station(*flow_.view(), chosen_.toStdString()) : nullptr;
}

QString InstructorFloor::letter_of(const QString& id) const {
  const wire::StationView* s =
      flow_.view() != nullptr ? wire::find_station(*flow_.view(), id.toStdString()) : nullptr;
  return s != nullptr ? text(s->letter) : id;
}

void InstructorFloor::show() {
  const wire::ClassView* c = flow_.view();
  if (class_ != flow_.class_id()) {
    class_ = flow_.class_id();
    undo_.clear();
    waiting_.clear();
    chosen_.clear();
    page_ = 0;
  }
  if (c == nullptr) return;
  if (chosen() == nullptr && !c->stations.empty()) chosen_ = text(c->stations.front().id);
  page_ = std::clamp(page_, 0, pages() - 1);
  QList<QVariantMap> rows;
  const int all = static_cast<int>(c->stations.size());
  for (int i = page_ * page_stations; i < std::min(all, (page_ + 1) * page_stations); ++i) {
    const wire::StationView& s = c->stations[static_cast<std::size_t>(i)];
    const Cell cell = round[static_cast<std::size_t>(i % page_stations)];
    const QString places = s.capacity == 1 ? tr("1 place") : tr("%1 places").arg(s.capacity);
    rows.append({{QStringLiteral("id"), text(s.id)},
                 {QStringLiteral("letter"), text(s.letter)},
                 {QStringLiteral("text"), text(s.exercise_name)},
                 {QStringLiteral("note"), s.closed_now ? tr("closed") : places},
                 {QStringLiteral("closed"), s.closed_now},
                 {QStringLiteral("chosen"), text(s.id) == chosen_},
                 {QStringLiteral("column"), cell.column},
                 {QStringLiteral("line"), cell.line}});
  }
  show_in_places(*rows_, rows);
  Q_EMIT changed();
}

int InstructorFloor::pages() const {
  const int all = flow_.view() != nullptr ? static_cast<int>(flow_.view()->stations.size()) : 0;
  return std::max(1, (all + page_stations - 1) / page_stations);
}

QString InstructorFloor::pageText() const { return words::page_text(page_, pages()); }
QString InstructorFloor::letter() const { return chosen() != nullptr ? text(chosen()->letter) : QString(); }
QString InstructorFloor::name() const {
  return chosen() != nullptr ? text(chosen()->exercise_name) : QString();
}
bool InstructorFloor::closed() const { return chosen() != nullptr && chosen()->closed_now; }

QString InstructorFloor::note() const {
  const wire::StationView* s = chosen();
  if (s == nullptr) return {};
  const QString places = s->capacity == 1 ? tr("1 place") : tr("%1 places").arg(s->capacity);
  if (s->offers_hg.empty()) return tr("%1, no load").arg(places);
  return tr("%1, %2 to %3 kg").arg(places, kg(s->offers_hg.front()), kg(s->offers_hg.back()));
}

QString InstructorFloor::heading() const {
  if (flow_.view() == nullptr) return {};
  const auto& all = flow_.view()->stations;
  const auto shut = std::ranges::count_if(all, [](const wire::StationView& s) { return s.closed_now; });
  const QString stations = all.size() == 1 ? tr("1 station") : tr("%1 stations").arg(all.size());
  return shut == 0 ? stations : tr("%1, %2 closed").arg(stations).arg(shut);
}

QString InstructorFloor::told() const {
  QStringList done;
  for (const Undo& u : undo_) done << u.told;
  QString order = tr("The order round the room is the order of the wheel.");
  if (done.isEmpty()) return order;
  return tr("%1\n%2.").arg(order,
                           done.mid(std::max<qsizetype>(0, done.size() - 3)).join(QStringLiteral(", ")));
}

QString InstructorFloor::effect() const {
  if (flow_.view() == nullptr) return {};
  int open = 0;
  int places = 0;
  for (const wire::StationView& s : flow_.view()->stations)
    if (!s.closed_now) {
      ++open;
      places += s.capacity;
    }
  const auto here =
      std::ranges::count_if(flow_.view()->members, [](const wire::MemberView& m) { return m.here; });
  const QString made = tr("The proposal is made anew when you say that the floor is right.");
  return here == 0
             ? made
             : tr("%1 %2 people have %3 stations with %4 places.").arg(made).arg(here).arg(open).arg(places);
}

void InstructorFloor::choose(const QString& id) {
  chosen_ = id;
  show();
}

void InstructorFloor::tell(const QString& kind, const QJsonObject& fields, const Undo& back) {
  touched_ = true;
  waiting_.insert(flow_.tell(kind, fields), back);
}

void InstructorFloor::setExercise() {
  const wire::StationView* s = chosen();
  if (s == nullptr) return;
  const QString station = text(s->id);
  const Undo back{QStringLiteral("station.set"),
                  {{QStringLiteral("station"), station}, {QStringLiteral("exercise"), text(s->exercise)}},
                  tr("%1 was changed").arg(text(s->letter))};
  picker_.open(
      tr("What stands at %1?").arg(text(s->letter)), exercises_.options_for(s),
      [this, station, back](const QString& exercise) {
        tell(QStringLiteral("station.set"),
             {{QStringLiteral("station"), station}, {QStringLiteral("exercise"), exercise}}, back);
        flow_.open(QStringLiteral("floor"));
      },
      [this] { flow_.open(QStringLiteral("floor")); });
}

void InstructorFloor::swap() {
  const wire::StationView* s = chosen();
  if (s == nullptr) return;
  const QString station = text(s->id);
  const QString letter = text(s->letter);
  QList<InstructorPicker::Option> options;
  for (const wire::StationView& o : flow_.view()->stations)
    if (o.id != s->id) options.append({text(o.id), text(o.exercise_name), {}, text(o.letter)});
  picker_.open(
      tr("Swap %1 with which station?").arg(letter), options,
      [this, station, letter](const QString& with) {
        const QJsonObject fields{{QStringLiteral("station"), station}, {QStringLiteral("with"), with}};
        tell(QStringLiteral("station.swap"), fields,
             {QStringLiteral("station.swap"), fields, tr("%1 and %2 swapped").arg(letter, letter_of(with))});
        flow_.open(QStringLiteral("floor"));
      },
      [this] { flow_.open(QStringLiteral("floor")); });
}

void InstructorFloor::toggle() {
  const wire::StationView* s = chosen();
  if (s == nullptr) return;
  const QJsonObject fields{{QStringLiteral("station"), text(s->id)}};
  const QString shut = QStringLiteral("station.close");
  const QString opened = QStringLiteral("station.open");
  if (s->closed_now)
    tell(opened, fields, {shut, fields, tr("%1 opened").arg(text(s->letter))});
  else
    tell(shut, fields, {opened, fields, tr("%1 closed").arg(text(s->letter))});
}

void InstructorFloor::add() {
  const wire::StationView* s = chosen();
  if (s == nullptr) return;
  const QString after = text(s->id);
  const QString letter = text(s->letter);
  picker_.open(
      tr("What stands after %1?").arg(letter), exercises_.options_for(nullptr),
      [this, after, letter](const QString& exercise) {
        // Nothing takes a station away again; closed, it is as good as gone.
        tell(QStringLiteral("station.add"),
             {{QStringLiteral("exercise"), exercise}, {QStringLiteral("after"), after}},
             {QStringLiteral("station.close"), {}, tr("one added after %1").arg(letter)});
        flow_.open(QStringLiteral("floor"));
      },
      [this] { flow_.open(QStringLiteral("floor")); });
}

void InstructorFloor::undo() {
  if (undo_.isEmpty()) return;
  touched_ = true;
  undoing_ = flow_.tell(undo_.last().kind, undo_.last().fields);
}

void InstructorFloor::asInFile() {
  touched_ = true;
  flow_.tell(QStringLiteral("floor.as_in_file"));
  undo_.clear();
  waiting_.clear();
  Q_EMIT changed();
}

void InstructorFloor::right() {
  if (touched_ && flow_.stage() == QLatin1String("start")) flow_.want_proposal();
  flow_.leave();
}

void InstructorFloor::nextPage() {
  page_ = (page_ + 1) % pages();
  show();
}

}  // namespace floorwheel::screens
