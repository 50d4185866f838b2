// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/instructor_new.h"

#include <QJsonObject>
#include <algorithm>

#include "kiosk/screens/hub_link.h"
#include "kiosk/screens/instructor_words.h"
#include "kiosk/screens/json_fields.h"

namespace floorwheel::screens {

namespace {

constexpr int page_rows = 6;

QString where(const QJsonObject& o) {
  if (o.value(QLatin1String("here")).toBool()) return InstructorNew::tr("here");
  if (o.value(QLatin1String("expected")).toBool()) return InstructorNew::tr("expected");
  return InstructorNew::tr("last on %1").arg(words::day_text(text_in(o, "last_day")));
}

}  // namespace

InstructorNew::InstructorNew(InstructorFlow& flow, QObject* parent)
    : QObject(parent),
      flow_(flow),
      members_(new RowModel({"member", "alias", "visit", "where", "purpose", "more"}, this)) {
  connect(&hub_link(), &HubLink::answer, this, [this](const QString& id, const QJsonObject& body) {
    if (id != question_) return;
    rows_ = body.value(QLatin1String("rows")).toArray();
    answered_ = true;
    trouble_.clear();
    show();
  });
  connect(&hub_link(), &HubLink::refused, this,
          [this](const QString& id, const QString&, const QString& text) {
            if (id != question_) return;
            trouble_ = text;
            Q_EMIT changed();
          });
  connect(&hub_link(), &HubLink::connectedChanged, this, &InstructorNew::ask);
  connect(&hub_link(), &HubLink::hallChanged, this, &InstructorNew::read_hall);
  ask();
}

void InstructorNew::ask() {
  if (hub_link().connected()) question_ = hub_link().ask(QStringLiteral("members.new"));
}

void InstructorNew::read_hall() {
  const wire::ClassView* c = flow_.view();
  QString now = flow_.class_id();
  if (c != nullptr)
    now += QStringLiteral(" %1").arg(std::ranges::count_if(c->members, [](const auto& m) { return m.here; }));
  if (now == asked_for_) return;
  asked_for_ = now;
  ask();
}

void InstructorNew::open() {
  page_ = 0;
  ask();
  show();
  flow_.open(QStringLiteral("new"));
}

void InstructorNew::nextPage() {
  page_ = (page_ + 1) % pages();
  show();
}

int InstructorNew::pages() const { return pages_of(rows_.size(), page_rows); }

QString InstructorNew::pageText() const { return words::page_text(page_, pages()); }

QString InstructorNew::heading() const { return tr("On the first four visits: %1").arg(rows_.size()); }

QString InstructorNew::empty() const {
  if (!trouble_.isEmpty()) return trouble_;
  if (!rows_.isEmpty()) return {};
  return answered_ ? tr("Everybody has been here more than four times.") : tr("One moment …");
}

QString InstructorNew::visit_word(const QString& member) const {
  const int visit = visit_of_.value(member);
  return visit == 0 ? QString() : tr("visit %1").arg(visit);
}

void InstructorNew::show() {
  visit_of_.clear();
  for (const auto v : rows_)
    visit_of_.insert(text_in(v.toObject(), "member"), v.toObject().value(QLatin1String("visit")).toInt());
  page_ = std::clamp(page_, 0, pages() - 1);
  QList<QVariantMap> rows;
  const auto end = std::min<qsizetype>(rows_.size(), qsizetype{page_ + 1} * page_rows);
  for (qsizetype i = qsizetype{page_} * page_rows; i < end; ++i) {
    const QJsonObject o = rows_.at(i).toObject();
    const QJsonArray look_at = o.value(QLatin1String("look_at")).toArray();
    QStringList more;
    for (qsizetype s = 1; s < look_at.size(); ++s) more << look_at.at(s).toString();
    rows.append({{QStringLiteral("member"), text_in(o, "member")},
                 {QStringLiteral("alias"), text_in(o, "shown_as")},
                 {QStringLiteral("visit"), visit_word(text_in(o, "member"))},
                 {QStringLiteral("where"), where(o)},
                 {QStringLiteral("purpose"), look_at.at(0).toString()},
                 {QStringLiteral("more"), more.join(QLatin1Char(' '))}});
  }
  show_in_places(*members_, rows);
  Q_EMIT changed();
}

}  // namespace floorwheel::screens
