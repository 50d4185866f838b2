// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/touch_visit.h"

#include <QCoreApplication>
#include <QEvent>
#include <algorithm>
#include <utility>

#include "kiosk/screens/class_time.h"
#include "kiosk/screens/hub_link.h"

namespace floorwheel::screens {
namespace {

constexpr int cells_of_a_page = 25;
constexpr int leave_ms = 15'000;  // without a touch; the warning comes after two thirds of it

QString q(const std::string& s) { return QString::fromStdString(s); }

QString alias_of(const wire::ClassView& c, const std::string& member) {
  const auto* m = wire::find_member(c, member);
  return q(m == nullptr || m->shown_as.empty() ? member : m->shown_as);
}

}  // namespace

TouchVisit::TouchVisit(QObject* parent)
    : QObject(parent),
      kept_([](const QString& kind, const QJsonObject& body) { return hub_link().tell(kind, body); }),
      week_([](const QString& kind, const QJsonObject& body) { return hub_link().ask(kind, body); },
            [](const QString& kind, const QJsonObject& body) { return hub_link().tell(kind, body); }) {
  for (QTimer* t : {&warn_, &leave_}) t->setSingleShot(true);
  setLeaveMs(leave_ms);
  connect(&warn_, &QTimer::timeout, this,
          [this] { set_warning(!page_.isEmpty() || !check_in_.prefix().isEmpty()); });
  connect(&leave_, &QTimer::timeout, this, &TouchVisit::done);

  HubLink& hub = hub_link();
  connect(&hub, &HubLink::hallChanged, this, [this] {
    kept_.on_hall(hub_link().hall().reached);
    week_.on_hall(hub_link().hall().pages_shown.contains(member_));
    refresh();
  });
  connect(&hub, &HubLink::answer, this,
          [this](const QString& id, const QJsonObject& body) { week_.on_answer(id, body); });
  connect(&hub, &HubLink::receipt, this, [this](const QString& id, qint64 seq, const QJsonObject& body) {
    kept_.on_receipt(id, seq);
    kept_.on_hall(hub_link().hall().reached);
    on_receipt(id, body);
  });
  connect(&hub, &HubLink::refused, this,
          [this](const QString& id, const QString& code, const QString& text, const QString& hint,
                 const QJsonObject& body) {
            kept_.on_refused(id, text, hint);
            week_.on_refused(id, code, trouble_line(text, hint));
            on_refused(id, trouble_line(text, hint), body);
          });
  connect(&check_in_, &TouchCheckIn::draftChanged, this, [this] {  // another alias, another answer
    new_known_.clear();
    new_trouble_.clear();
    Q_EMIT newChanged();
  });
  connect(&kept_, &TouchKept::told, this, &TouchVisit::refresh);
  connect(&class_time(), &ClassTime::phaseChanged, this, &TouchVisit::refresh);
  connect(&class_time(), &ClassTime::secondChanged, this, [this] {
    if (stage_ == touch::Stage::check_in) refresh();  // the minutes to the start
  });
  QCoreApplication::instance()->installEventFilter(this);
  refresh();
}

const wire::ClassView* TouchVisit::at_hand() const {
  const HubLink& hub = hub_link();
  return touch::class_at_hand(hub.hall(), hub.civilNowMs(), hub.utcOffsetS());
}

wire::Moment TouchVisit::moment(const wire::ClassView& c) const {
  if (c.id == hub_link().hall().current) return class_time().moment();
  return wire::moment_at(c.clock, hub_link().classNowMs());
}

bool TouchVisit::is_kept(const wire::ClassView& c, const std::string& member, int slot) const {
  return kept_.record_of(c, member, slot) != nullptr;
}

TouchMark TouchVisit::mark_of(const wire::ClassView& c, const std::string& member, int slot) const {
  const auto* r = kept_.record_of(c, member, slot);
  return r == nullptr ? TouchMark::none : r->done ? TouchMark::kept : TouchMark::not_done;
}

void TouchVisit::refresh() {
  const QString page_before = page();
  const auto* c = at_hand();
  moment_ = c == nullptr ? wire::Moment{} : moment(*c);
  stage_ = touch::stage_of(c, moment_);
  slot_ended_ = 0;
  working_ = false;
  if (c != nullptr) {
    working_ = touch::at_work(*c, moment_);
    const int begun = touch::slot_begun(*c, moment_);
    moves_one_on_ = touch::moves_one_on(*c, begun);
    slot_ended_ = working_ ? std::max(1, begun - 1) : begun;
    const HubLink& hub = hub_link();
    check_in_.show(facts_of(*c, hub.civilNowMs(), hub.utcOffsetS(),
                            [&](const wire::MemberView& m) { return kept_.here(*c, m); }));
    refresh_people(*c, moment_);
    refresh_card(*c, moment_);
  } else {
    check_in_.show({});
    people_.show({});
    beside_.show({});
  }
  Q_EMIT stageChanged();
  if (page() != page_before) Q_EMIT pageChanged();
}

// By station in the floor's order, so that those who come from one place stand together. Whether a set is
// kept already changes its tick only: a key must not jump while a finger is on its way.
void TouchVisit::refresh_people(const wire::ClassView& c, const wire::Moment& m) {
  const std::vector<std::string> order = touch::station_order(c);
  const auto& hall = hub_link().hall();
  std::vector<std::pair<std::size_t, TouchKey>> keys;
  for (const auto& row : c.sheet.rows) {
    TouchKey key{q(row.member), alias_of(c, row.member), {}, {}};
    std::size_t place = order.size();
    if (const auto slot = touch::slot_to_record(c, m, row.member, [](int) { return false; }))
      if (const auto set = touch::planned_set(hall, c, row.member, *slot)) {
        key.letter = q(set->letter);
        key.mark = mark_of(c, row.member, *slot);
        place = static_cast<std::size_t>(std::ranges::find(order, set->station) - order.begin());
      }
    keys.emplace_back(place, std::move(key));
  }
  std::ranges::stable_sort(keys, {}, [](const auto& k) { return k.first; });
  std::vector<TouchKey> sorted;
  for (auto& [place, key] : keys) sorted.push_back(std::move(key));
  // One more key turns the page where not all fit.
  people_.setPageSize(sorted.size() > cells_of_a_page ? cells_of_a_page - 1 : cells_of_a_page);
  people_.show(sorted);
  beside_.show(std::move(sorted));
}

void TouchVisit::refresh_card(const wire::ClassView& c, const wire::Moment& m) {
  if (member_.empty()) return;
  const auto& hall = hub_link().hall();
  const int slot = chosen_slot_;
  std::vector<TouchKey> others;
  const std::vector<int> worked = touch::worked_slots(c, member_, touch::slot_begun(c, m));
  for (auto at = worked.rbegin(); at != worked.rend(); ++at)
    if (const auto set = touch::planned_set(hall, c, member_, *at))
      others.push_back({QString::number(*at), tr("Slot %1, %2").arg(*at).arg(q(set->exercise_name)),
                        q(set->letter), mark_of(c, member_, *at)});
  card_.refresh(slot > 0 ? touch::planned_set(hall, c, member_, slot) : std::nullopt,
                mark_of(c, member_, slot), touch::next_place(hall, c, m, member_), std::move(others));
}

QString TouchVisit::page() const {
  if (stage_ == touch::Stage::stopped) return QStringLiteral("stop");
  if (!page_.isEmpty()) return page_;
  if (stage_ == touch::Stage::check_in) return QStringLiteral("arrive");
  if (stage_ == touch::Stage::record) return QStringLiteral("who");
  return QStringLiteral("none");
}

QString TouchVisit::stage() const {
  switch (stage_) {
    case touch::Stage::none:
      return QStringLiteral("none");
    case touch::Stage::check_in:
      return QStringLiteral("check-in");
    case touch::Stage::record:
      return QStringLiteral("record");
    case touch::Stage::stopped:
      return QStringLiteral("stopped");
  }
  return {};
}

bool TouchVisit::started() const { return moment_.state != wire::Running::not_started; }
bool TouchVisit::ended() const { return moment_.past_end || moment_.state == wire::Running::over; }
bool TouchVisit::working() const { return working_; }
int TouchVisit::slotEnded() const { return slot_ended_; }

void TouchVisit::go(const QString& page) {
  const QString before = this->page();
  if (page != QLatin1String("week")) week_.close();
  page_ = page;
  touched();
  if (before != this->page() || !page.isEmpty()) Q_EMIT pageChanged();
}

void TouchVisit::arrive(const QString& member) {
  const auto* c = at_hand();
  const auto* m = c == nullptr ? nullptr : wire::find_member(*c, member.toStdString());
  if (m == nullptr) return;
  member_ = m->id;
  alias_ = alias_of(*c, m->id);
  chosen_slot_ = 0;
  answer_id_.clear();
  card_.open(alias_, {});
  if (!kept_.here(*c, *m)) kept_.check_in(c->id, m->id, alias_);
  refresh();
  go(QStringLiteral("question"));
}

void TouchVisit::tell_answer(const QString& answer, const QString& spot) {
  const auto* c = at_hand();
  if (c == nullptr || member_.empty()) return;
  QJsonObject body{{"class", q(c->id)}, {"member", q(member_)}, {"answer", answer}};
  if (!spot.isEmpty()) body["spot"] = spot;
  answer_confirmed_ = false;
  answer_trouble_.clear();
  answer_id_ = hub_link().tell(QStringLiteral("answer.today"), body);
  Q_EMIT answerChanged();
}

void TouchVisit::answer(const QString& answer) {
  tell_answer(answer, {});
  go(QStringLiteral("in"));
}

void TouchVisit::askWhere() { go(QStringLiteral("spot")); }

void TouchVisit::hurtsAt(const QString& group) {
  tell_answer(QStringLiteral("hurts"), group);
  go(QStringLiteral("hurts"));
}

void TouchVisit::notMe() {
  kept_.not_me();
  done();
}

void TouchVisit::showEverybody() { go(QStringLiteral("everybody")); }

void TouchVisit::newHere() {
  new_trouble_.clear();
  new_known_.clear();
  add_id_.clear();
  Q_EMIT newChanged();
  go(QStringLiteral("new"));
}

void TouchVisit::takeAlias() {
  if (newWaits() || !check_in_.draftTrouble().isEmpty()) return;
  new_alias_ = check_in_.draft().trimmed();
  new_trouble_.clear();
  new_known_.clear();
  add_id_ = hub_link().tell(QStringLiteral("member.add"),
                            {{"shown_as", new_alias_}, {"level", q(std::string(id_of(Level::novice)))}});
  Q_EMIT newChanged();
}

void TouchVisit::lateHere() { go(QStringLiteral("arrive")); }

void TouchVisit::openCard(const QString& member) {
  const auto* c = at_hand();
  if (c == nullptr) return;
  member_ = member.toStdString();
  alias_ = alias_of(*c, member_);
  chosen_slot_ = touch::slot_to_record(*c, moment_, member_, [&](int slot) {
                   return is_kept(*c, member_, slot);
                 }).value_or(0);
  card_.open(alias_, touch::planned_set(hub_link().hall(), *c, member_, chosen_slot_));
  card_.others()->first();
  beside_.turn_to(member);
  refresh();
  go(QStringLiteral("card"));
}

void TouchVisit::showSets() { go(QStringLiteral("sets")); }

bool TouchVisit::hasWeek() const {
  const auto* c = at_hand();
  const auto* m = c == nullptr ? nullptr : wire::find_member(*c, member_);
  return !member_.empty() && (m == nullptr || !m->guest);
}

void TouchVisit::showWeek() {
  if (!hasWeek() || page_ == QLatin1String("week")) return;
  week_from_ = page_;
  week_.open(member(), alias_, hub_link().hall().pages_shown.contains(member_));
  go(QStringLiteral("week"));
}

void TouchVisit::chooseSet(const QString& slot) {
  const auto* c = at_hand();
  if (c == nullptr) return;
  chosen_slot_ = slot.toInt();
  card_.open(alias_, touch::planned_set(hub_link().hall(), *c, member_, chosen_slot_));
  refresh();
  go(QStringLiteral("card"));
}

void TouchVisit::keep(wire::SetRecord r) {
  const auto* c = at_hand();
  if (c == nullptr || !card_.hasSet()) return;
  kept_.keep(*c, std::move(r), alias_);
  done();
}

void TouchVisit::asPlanned() {
  if (!card_.loadAsked()) keep(card_.as_planned());
}
void TouchVisit::keepThis() {
  if (!card_.loadAsked()) keep(card_.as_shown());
}
void TouchVisit::didNot() { keep(card_.not_done()); }

void TouchVisit::back() {
  if (page_ == QLatin1String("sets"))
    go(QStringLiteral("card"));
  else if (page_ == QLatin1String("week"))
    go(std::exchange(week_from_, {}));
  else if (page_ == QLatin1String("spot"))
    go(card_.hasSet() ? QStringLiteral("card") : QStringLiteral("question"));
  else
    done();
}

void TouchVisit::done() {
  check_in_.clear();
  people_.first();
  member_.clear();
  alias_.clear();
  chosen_slot_ = 0;
  add_id_.clear();
  new_trouble_.clear();
  new_known_.clear();
  Q_EMIT newChanged();
  go({});
}

void TouchVisit::on_receipt(const QString& id, const QJsonObject& body) {
  if (id == answer_id_) {
    answer_confirmed_ = true;
    Q_EMIT answerChanged();
  }
  if (id.isEmpty() || id != add_id_) return;
  add_id_.clear();
  Q_EMIT newChanged();
  seat(body["member"].toString());
}

void TouchVisit::thatIsMe() {
  const QString member = std::exchange(new_known_, {});
  if (!member.isEmpty()) seat(member);
}

// Somebody who stands on no list of this class takes a seat under the alias just typed.
void TouchVisit::seat(const QString& member) {
  const auto* c = at_hand();
  if (c == nullptr || page_ != QLatin1String("new")) return;
  member_ = member.toStdString();
  alias_ = new_alias_;
  chosen_slot_ = 0;
  card_.open(alias_, {});
  kept_.check_in(c->id, member_, alias_);
  go(QStringLiteral("question"));
}

void TouchVisit::on_refused(const QString& id, const QString& trouble, const QJsonObject& body) {
  if (!answer_id_.isEmpty() && id == answer_id_) {
    answer_trouble_ = trouble;
    Q_EMIT answerChanged();
  }
  if (!add_id_.isEmpty() && id == add_id_) {
    add_id_.clear();
    new_known_ = body["member"].toString();
    new_trouble_ = trouble;
    Q_EMIT newChanged();
  }
  // A refused check-in: nothing of this visit holds.
  if (kept_.what() == QLatin1String("refused") && kept_.alias() == alias_ &&
      page_ == QLatin1String("question"))
    done();
}

void TouchVisit::setLeaveMs(int ms) {
  leave_.setInterval(ms);
  warn_.setInterval(ms * 2 / 3);
  Q_EMIT leaveMsChanged();
  touched();
}

void TouchVisit::touched() {
  set_warning(false);
  warn_.start();
  leave_.start();
}

void TouchVisit::set_warning(bool on) {
  if (on == warning_) return;
  warning_ = on;
  Q_EMIT warningChanged();
}

bool TouchVisit::eventFilter(QObject* watched, QEvent* event) {
  switch (event->type()) {
    case QEvent::TouchBegin:
    case QEvent::MouseButtonPress:
    case QEvent::KeyPress:
      touched();
      break;
    default:
      break;
  }
  return QObject::eventFilter(watched, event);
}

}  // namespace floorwheel::screens
