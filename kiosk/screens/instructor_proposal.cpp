// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/instructor_proposal.h"

#include <QJsonArray>

#include "kiosk/screens/hub_link.h"
#include "kiosk/screens/instructor_as_if.h"
#include "kiosk/screens/instructor_words.h"

namespace floorwheel::screens {

namespace {

/// Everything a proposal depends on that a screen can see, as one text to compare.
QString ground_of(const wire::ClassView& c) {
  QStringList parts{words::text(c.id)};
  for (const wire::MemberView& m : c.members)
    if (m.here)
      parts << words::text(m.id) + (m.today ? words::text(m.today->answer + "/" + m.today->spot) : QString());
  for (const wire::StationView& s : c.stations)
    parts << words::text(s.id) + QLatin1Char('=') + words::text(s.exercise) +
                 (s.closed_now ? QStringLiteral("x") : QString::number(s.capacity));
  return parts.join(QLatin1Char(' '));
}

}  // namespace

InstructorProposal::InstructorProposal(InstructorFlow& flow, QObject* parent)
    : QObject(parent), flow_(flow), rows_(new RowModel({"slots", "end", "gain", "shown", "fits"}, this)) {
  connect(&flow_, &InstructorFlow::pageChanged, this, &InstructorProposal::look);
  connect(&hub_link(), &HubLink::answer, this, [this](const QString& id, const QJsonObject& body) {
    if (id == question_) take_answer(body);
  });
  connect(&hub_link(), &HubLink::underway, this, [this](const QString& id) {
    if (id != question_) return;
    progress_ = tr("Looking for the best order …");
    Q_EMIT changed();
  });
  connect(&hub_link(), &HubLink::refused, this,
          [this](const QString& id, const QString& code, const QString& text, const QString& hint) {
            if (id == published_ && code != QLatin1String("away")) {
              askAnew();
              return;
            }
            if (id != question_) return;
            question_.clear();
            progress_.clear();
            refusal_ = hint.isEmpty() ? text : tr("%1; %2").arg(text, hint);
            Q_EMIT changed();
          });
}

void InstructorProposal::look() {
  const wire::ClassView* c = flow_.view();
  if (c == nullptr || flow_.live() || flow_.stage() != QLatin1String("proposal")) {
    asked_for_.clear();
    Q_EMIT changed();
    return;
  }
  if (flow_.page() == QLatin1String("floor")) return;  // made anew once the floor is right
  if (const QString ground = ground_of(*c); ground != asked_for_) {
    asked_for_ = ground;
    ask(0);
  }
}

void InstructorProposal::askAnew() {
  asked_for_.clear();
  look();
}

void InstructorProposal::ask(int slot_count) {
  if (!question_.isEmpty()) hub_link().cancel(question_);
  refusal_.clear();
  progress_ = tr("Looking for the best order …");
  QJsonObject body{{QStringLiteral("class"), flow_.class_id()}};
  if (slot_count > 0) body.insert(QStringLiteral("slots"), slot_count);
  question_ = hub_link().ask(QStringLiteral("proposal"), body);
  Q_EMIT changed();
}

void InstructorProposal::choose(int slot_count) {
  if (slot_count != slotCount()) ask(slot_count);
}

void InstructorProposal::take_answer(const QJsonObject& body) {
  question_.clear();
  progress_.clear();
  if (const QJsonObject refusal = body.value(QStringLiteral("refusal")).toObject(); !refusal.isEmpty()) {
    then_.reset();
    refusal_ = refusal.value(QStringLiteral("reason")).toString();
    Q_EMIT changed();
    return;
  }
  proposal_ = body.value(QStringLiteral("proposal")).toString();
  then_ = as_if(hub_link().hall(), flow_.class_id().toStdString(), body);
  show_rows(body);
  Q_EMIT changed();
}

void InstructorProposal::show_rows(const QJsonObject& body) {
  // Asked with a number of slots the hub may answer that row alone: the table before it still holds.
  const bool whole = body.value(QStringLiteral("rows")).toArray().size() > 1;
  if (whole) table_ = body;
  const QJsonArray rows = (whole ? body : table_).value(QStringLiteral("rows")).toArray();
  if (!then_) return;
  const qint64 now = hub_link().civilNowMs();
  const qint64 begin = std::max(now, words::start_ms(then_->start));
  QList<QVariantMap> out;
  for (const auto v : rows) {
    const QJsonObject r = v.toObject();
    const int slot_count = r.value(QStringLiteral("slots")).toInt();
    const bool shown = slot_count == slotCount();
    const bool fits = r.value(QStringLiteral("fits")).toBool(true);
    out.append({{QStringLiteral("slots"), slot_count},
                {QStringLiteral("end"),
                 words::clock_text(begin + r.value(QStringLiteral("class_s")).toInteger() * 1000,
                                   hub_link().utcOffsetS())},
                {QStringLiteral("gain"),
                 words::row_gain(words::cost_from(r.value(QStringLiteral("cost")).toObject()),
                                 then_->sheet.cost, shown, fits)},
                {QStringLiteral("shown"), shown},
                {QStringLiteral("fits"), fits}});
  }
  show_in_places(*rows_, out);
}

const wire::ClassView* InstructorProposal::shown() const {
  return flow_.stage() == QLatin1String("proposal") ? then() : flow_.view();
}

int InstructorProposal::slotCount() const {
  const wire::ClassView* c = shown();
  return c != nullptr ? c->sheet.timing.slots : 0;
}

QString InstructorProposal::title() const {
  const wire::ClassView* c = shown();
  if (c == nullptr) return {};
  const QString how = c->sheet.style == Style::ring ? tr("a ring") : tr("a free rotation");
  return flow_.stage() == QLatin1String("proposal") ? tr("Proposal: %1").arg(how)
                                                    : tr("Run sheet %1: %2").arg(c->sheet.version).arg(how);
}

QString InstructorProposal::order() const {
  const wire::ClassView* c = shown();
  if (c == nullptr) return {};
  return c->sheet.style == Style::ring ? tr("Everybody moves one on.")
                                       : tr("Everybody reads the next letter.");
}

QStringList InstructorProposal::cost() const {
  return shown() != nullptr ? words::cost_sentences(shown()->sheet.cost) : QStringList();
}

QStringList InstructorProposal::proof() const {
  QStringList out;
  if (shown() != nullptr)
    for (const std::string& reason : shown()->sheet.reasons) out << words::text(reason);
  return out;
}

QString InstructorProposal::showTime() const {
  const wire::ClassView* c = shown();
  if (c == nullptr) return {};
  const auto segments = wire::lay_out(c->sheet.timing);
  if (segments.empty()) return {};
  const QString word = words::segment_word(segments.front(), c->sheet.style);
  return tr("first: %1, %2").arg(word, words::minutes_text(segments.front().length_ms / 1000));
}

void InstructorProposal::publish() {
  if (!ready()) return;
  published_ = flow_.tell(QStringLiteral("class.publish"), {{QStringLiteral("proposal"), proposal_}});
}

}  // namespace floorwheel::screens
