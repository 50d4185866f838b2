// SPDX-License-Identifier: GPL-3.0-or-later
// The preview of a change and doing it. What can be changed and the questions before it: instructor_ways.cpp.
#include "kiosk/screens/instructor_change.h"

#include <QJsonArray>
#include <algorithm>
#include <set>

#include "kiosk/screens/class_time.h"
#include "kiosk/screens/hub_link.h"
#include "kiosk/screens/instructor_as_if.h"
#include "kiosk/screens/instructor_words.h"

namespace floorwheel::screens {

namespace {
constexpr int who_rows_most = 5;
constexpr int names_a_row = 2;
}  // namespace

InstructorChange::InstructorChange(InstructorFlow& flow, InstructorPicker& picker,
                                   InstructorExercises& exercises, QObject* parent)
    : QObject(parent),
      flow_(flow),
      picker_(picker),
      exercises_(exercises),
      choice_rows_(new RowModel({"title", "people", "cost", "chosen"}, this)),
      who_rows_(new RowModel({"slot", "names"}, this)) {
  connect(&hub_link(), &HubLink::answer, this, &InstructorChange::take_answer);
  connect(&hub_link(), &HubLink::refused, this, &InstructorChange::take_refusal);
  connect(&hub_link(), &HubLink::underway, this, [this](const QString& id, const QJsonObject& body) {
    if (Choice* c = of_question(id)) {
      c->best = body.value(QStringLiteral("text")).toString();
      Q_EMIT changed();
    }
  });
  connect(&hub_link(), &HubLink::receipt, this, [this](const QString& id) {
    if (id == done_) flow_.leave();
  });
  connect(&hub_link(), &HubLink::hallChanged, this, &InstructorChange::look);
  connect(&flow_, &InstructorFlow::pageChanged, this, &InstructorChange::changed);
}

void InstructorChange::preview(const QString& heading, QList<Choice> choices, int chosen) {
  heading_ = heading;
  choices_ = std::move(choices);
  chosen_ = chosen;
  done_.clear();
  asked_anew_ = false;
  previewed_version_ = flow_.saw();
  flow_.open(QStringLiteral("preview"));
  ask_next();
}

/// One question at a time, the chosen way first: the planner thinks about one thing.
void InstructorChange::ask_next() {
  const bool busy = std::ranges::any_of(choices_, [](const Choice& c) { return !c.question.isEmpty(); });
  const auto open = [](const Choice& c) { return !c.answer && c.refusal.isEmpty(); };
  auto next = std::ranges::find_if(choices_, open);
  if (chosen_ < choices_.size() && open(choices_.at(chosen_))) next = choices_.begin() + chosen_;
  if (!busy && next != choices_.end())
    next->question = hub_link().ask(QStringLiteral("preview"), {{QStringLiteral("class"), flow_.class_id()},
                                                                {QStringLiteral("saw"), previewed_version_},
                                                                {QStringLiteral("change"), next->change}});
  show();
}

void InstructorChange::ask_anew() {
  for (Choice& c : choices_) {
    if (!c.question.isEmpty()) hub_link().cancel(c.question);
    c = Choice{c.title, c.change, {}, {}, {}, {}, {}};
  }
  previewed_version_ = flow_.saw();
  asked_anew_ = true;
  ask_next();
}

void InstructorChange::look() {
  // While Do it is on its way the new version is our own.
  if (flow_.page() != QLatin1String("preview") || !done_.isEmpty()) return;
  if (flow_.saw() != previewed_version_) ask_anew();
}

InstructorChange::Choice* InstructorChange::of_question(const QString& id) {
  if (id.isEmpty()) return nullptr;
  const auto found = std::ranges::find(choices_, id, &Choice::question);
  return found == choices_.end() ? nullptr : &*found;
}

const InstructorChange::Choice* InstructorChange::chosen() const {
  return chosen_ >= 0 && chosen_ < choices_.size() ? &choices_.at(chosen_) : nullptr;
}

void InstructorChange::take_answer(const QString& id, const QJsonObject& body) {
  Choice* c = of_question(id);
  if (c == nullptr) return;
  c->question.clear();
  if (const QJsonObject refusal = body.value(QStringLiteral("refusal")).toObject(); !refusal.isEmpty()) {
    c->refusal = refusal.value(QStringLiteral("reason")).toString();
  } else {
    c->answer = body;
    c->then = as_if(hub_link().hall(), flow_.class_id().toStdString(), body);
  }
  ask_next();
}

void InstructorChange::take_refusal(const QString& id, const QString& code, const QString& text,
                                    const QString& hint) {
  const bool stale = code == QLatin1String("stale");
  if (!done_.isEmpty() && id == done_) {
    done_.clear();
    if (stale) ask_anew();
    return;
  }
  Choice* c = of_question(id);
  if (c == nullptr) return;
  c->question.clear();
  // A stale preview is asked anew as soon as the hall has the new version (look).
  if (stale && flow_.saw() != previewed_version_) {
    ask_anew();
    return;
  }
  if (!stale) c->refusal = hint.isEmpty() ? text : tr("%1; %2").arg(text, hint);
  ask_next();
}

void InstructorChange::choose(int index) {
  if (index < 0 || index >= choices_.size()) return;
  chosen_ = index;
  ask_next();
}

void InstructorChange::doIt() {
  if (!ready()) return;
  QJsonObject fields = chosen()->change;
  const QString kind = fields.take(QStringLiteral("kind")).toString();
  done_ = flow_.tell(kind, fields);
}

void InstructorChange::leave() {
  for (Choice& c : choices_)
    if (!c.question.isEmpty()) hub_link().cancel(c.question);
  choices_.clear();
  flow_.leave();
}

const wire::ClassView* InstructorChange::then() const {
  return chosen() != nullptr && chosen()->then ? &*chosen()->then : nullptr;
}

bool InstructorChange::ready() const {
  return then() != nullptr && done_.isEmpty() && chosen()->question.isEmpty();
}

QString InstructorChange::progress() const {
  if (chosen() == nullptr || chosen()->answer || !chosen()->refusal.isEmpty()) return {};
  const QString doing = tr("Looking for the least change …");
  return chosen()->best.isEmpty() ? doing : tr("%1 %2").arg(doing, chosen()->best);
}

QString InstructorChange::refusal() const { return chosen() != nullptr ? chosen()->refusal : QString(); }

int InstructorChange::people_of(const Choice& c) {
  std::set<QString> people;
  for (const auto v : c.answer->value(QStringLiteral("changes")).toArray())
    for (const auto m : v.toObject().value(QStringLiteral("members")).toArray()) people.insert(m.toString());
  return static_cast<int>(people.size());
}

/// When the class would end: the end by now, and the slots more or fewer.
QString InstructorChange::end_of(const Choice& c) const {
  const wire::ClassView* now = flow_.view();
  if (now == nullptr || !c.then) return {};
  const wire::Moment m = class_time().moment();
  const int more = c.then->sheet.timing.slots - now->sheet.timing.slots;
  const qint64 left = m.total_ms - m.elapsed_ms +
                      qint64{1000} * more * (now->sheet.timing.work_s + now->sheet.timing.change_s);
  return words::clock_text(hub_link().civilNowMs() + left, hub_link().utcOffsetS());
}

QString InstructorChange::name_of(const QString& member) const {
  if (flow_.view() != nullptr)
    if (const wire::MemberView* m = wire::find_member(*flow_.view(), member.toStdString()))
      return words::text(m->shown_as);
  return member;
}

void InstructorChange::show() {
  QList<QVariantMap> rows;
  for (int i = 0; i < choices_.size(); ++i) {
    const Choice& c = choices_.at(i);
    QString people = tr("looking …");
    QString cost;
    if (!c.refusal.isEmpty()) {
      people = tr("cannot be done");
    } else if (c.answer) {
      const int count = people_of(c);
      people = count == 0   ? tr("nobody moves")
               : count == 1 ? tr("1 person changes")
                            : tr("%1 people change").arg(count);
      const Cost then = words::cost_from(c.answer->value(QStringLiteral("cost_then")).toObject());
      cost = tr("%1 missed, ends %2").arg(then[Component::missed]).arg(end_of(c));
    }
    rows.append({{QStringLiteral("title"), c.title},
                 {QStringLiteral("people"), people},
                 {QStringLiteral("cost"), cost},
                 {QStringLiteral("chosen"), i == chosen_}});
  }
  show_in_places(*choice_rows_, rows);

  QList<QVariantMap> who;
  if (chosen() != nullptr && chosen()->answer) {
    const QJsonArray changes = chosen()->answer->value(QStringLiteral("changes")).toArray();
    for (const auto v : changes) {
      if (who.size() == who_rows_most && changes.size() > who_rows_most + 1) {
        who.append(
            {{QStringLiteral("slot"), QString()},
             {QStringLiteral("names"), tr("and in %1 more slots").arg(changes.size() - who_rows_most)}});
        break;
      }
      QStringList names;
      for (const auto m : v.toObject().value(QStringLiteral("members")).toArray())
        names << name_of(m.toString());
      who.append(
          {{QStringLiteral("slot"), QString::number(v.toObject().value(QStringLiteral("slot")).toInt())},
           {QStringLiteral("names"), words::name_list(names, names_a_row)}});
    }
  }
  show_in_places(*who_rows_, who);
  flow_.set_notice(asked_anew_ && flow_.page() == QLatin1String("preview")
                       ? tr("The run sheet changed meanwhile: this is what the change would do now.")
                       : QString());
  Q_EMIT changed();
}

QString InstructorChange::whoTitle() const {
  if (chosen() == nullptr || !chosen()->answer) return {};
  const int count = people_of(*chosen());
  return count == 0   ? tr("Nobody moves")
         : count == 1 ? tr("Who changes: 1 person")
                      : tr("Who changes: %1 people").arg(count);
}

QStringList InstructorChange::cost() const {
  if (chosen() == nullptr || !chosen()->answer) return {};
  return words::cost_change_sentences(
      words::cost_from(chosen()->answer->value(QStringLiteral("cost_now")).toObject()),
      words::cost_from(chosen()->answer->value(QStringLiteral("cost_then")).toObject()));
}

/// Why it cannot be better; the two that matter most, as there is room for.
QStringList InstructorChange::proof() const {
  QStringList out;
  if (then() != nullptr)
    for (const std::string& reason : then()->sheet.reasons) out << words::text(reason);
  return out.mid(0, 2);
}

QString InstructorChange::stays() const {
  const int from = chosen() != nullptr && chosen()->answer
                       ? chosen()->answer->value(QStringLiteral("from_slot")).toInt(open_slot())
                       : open_slot();
  if (from <= 1) return {};
  return from == 2 ? tr("Slot 1 stays as it was.") : tr("Slots 1 to %1 stay as they were.").arg(from - 1);
}

QString InstructorChange::doNote() const {
  if (then() == nullptr) return tr("nothing to do yet");
  const int count = people_of(*chosen());
  const QString sheet = tr("run sheet %1").arg(flow_.saw() + 1);
  return count == 0   ? tr("nobody moves; %1").arg(sheet)
         : count == 1 ? tr("1 person changes; %1").arg(sheet)
                      : tr("%1 people change; %2").arg(count).arg(sheet);
}

}  // namespace floorwheel::screens
