// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/instructor_training.h"

#include <QJsonObject>
#include <algorithm>

#include "kiosk/screens/hub_link.h"
#include "kiosk/screens/instructor_words.h"
#include "kiosk/screens/json_fields.h"

namespace floorwheel::screens {

namespace {

constexpr int page_rows = 3;
const QList<QByteArray> roles = {"member", "alias", "exercise", "load", "line", "reason"};

/// What both lists say of a row; line and reason are each list's own.
QVariantMap row_of(const QJsonObject& o) {
  return {{QStringLiteral("member"), text_in(o, "member")},
          {QStringLiteral("alias"), text_in(o, "shown_as")},
          {QStringLiteral("exercise"), text_in(o, "name")},
          {QStringLiteral("load"), words::kg_text(o.value(QLatin1String("load_kg")).toDouble())}};
}

}  // namespace

InstructorTraining::InstructorTraining(InstructorFlow& flow, InstructorExercises& exercises, QObject* parent)
    : QObject(parent),
      flow_(flow),
      exercises_(exercises),
      pain_(new RowModel(roles, this)),
      stalls_(new RowModel(roles, this)) {
  connect(&hub_link(), &HubLink::answer, this, [this](const QString& id, const QJsonObject& body) {
    if (id != question_) return;
    pain_rows_ = body.value(QStringLiteral("pain")).toArray();
    stall_rows_ = body.value(QStringLiteral("stalls")).toArray();
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
  connect(&hub_link(), &HubLink::connectedChanged, this, [this] {
    if (hub_link().connected() && flow_.page() == QLatin1String("training")) ask();
  });
  connect(&exercises_, &InstructorExercises::changed, this, &InstructorTraining::show);
}

void InstructorTraining::ask() { question_ = hub_link().ask(QStringLiteral("floor.stalls")); }

void InstructorTraining::open() {
  page_ = 0;
  ask();
  show();
  flow_.open(QStringLiteral("training"));
}

void InstructorTraining::nextPage() {
  page_ = (page_ + 1) % pages();
  show();
}

int InstructorTraining::pages() const {
  return pages_of(std::max(pain_rows_.size(), stall_rows_.size()), page_rows);
}

QString InstructorTraining::pageText() const { return words::page_text(page_, pages()); }

QString InstructorTraining::painHeading() const { return tr("Pain noted: %1").arg(pain_rows_.size()); }
QString InstructorTraining::stallHeading() const { return tr("No progress: %1").arg(stall_rows_.size()); }

QString InstructorTraining::why_empty(const QString& otherwise) const {
  if (!trouble_.isEmpty()) return trouble_;
  return answered_ ? otherwise : tr("One moment …");
}

QString InstructorTraining::painEmpty() const {
  if (!pain_rows_.isEmpty()) return pain_->count() > 0 ? QString() : tr("No more on this page.");
  return why_empty(tr("Nobody of the last four weeks."));
}

QString InstructorTraining::stallEmpty() const {
  if (!stall_rows_.isEmpty()) return stalls_->count() > 0 ? QString() : tr("No more on this page.");
  return why_empty(tr("Nobody of the last four weeks."));
}

void InstructorTraining::show() {
  page_ = std::clamp(page_, 0, pages() - 1);
  const auto here = [this](const QJsonArray& all, const auto& finish) {
    QList<QVariantMap> rows;
    const auto end = std::min<qsizetype>(all.size(), qsizetype{page_ + 1} * page_rows);
    for (qsizetype i = qsizetype{page_} * page_rows; i < end; ++i) {
      const QJsonObject o = all.at(i).toObject();
      QVariantMap row = row_of(o);
      finish(o, row);
      rows.append(row);
    }
    return rows;
  };
  show_in_places(*pain_, here(pain_rows_, [this](const QJsonObject& o, QVariantMap& row) {
    const QString instead = text_in(o, "substitute");
    row.insert(QStringLiteral("line"), tr("noted on %1").arg(words::day_text(text_in(o, "last_day"))));
    row.insert(
        QStringLiteral("reason"),
        instead.isEmpty()
            ? tr("Ask before this exercise.")
            : tr("Ask before this exercise, or do %1 instead.").arg(exercises_.name_of(instead).toLower()));
  }));
  show_in_places(*stalls_, here(stall_rows_, [](const QJsonObject& o, QVariantMap& row) {
    const int visits = o.value(QLatin1String("visits_without_progress")).toInt();
    row.insert(QStringLiteral("line"), tr("%1 without progress").arg(words::visits_text(visits)));
    row.insert(QStringLiteral("reason"), text_in(o, "reason"));
  }));
  Q_EMIT changed();
}

}  // namespace floorwheel::screens
