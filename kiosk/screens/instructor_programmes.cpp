// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/instructor_programmes.h"

#include <QJsonArray>
#include <algorithm>

#include "kiosk/screens/hub_link.h"
#include "kiosk/screens/instructor_words.h"
#include "kiosk/screens/json_fields.h"

namespace floorwheel::screens {

namespace {

constexpr int page_names = 9;
constexpr int page_findings = 3;

QString severity_word(const QString& id) {
  if (id == QLatin1String("must")) return InstructorProgrammes::tr("Must change");
  if (id == QLatin1String("should")) return InstructorProgrammes::tr("Should change");
  return InstructorProgrammes::tr("Worth knowing");
}

}  // namespace

InstructorProgrammes::InstructorProgrammes(InstructorFlow& flow, InstructorExercises& exercises,
                                           QObject* parent)
    : QObject(parent),
      flow_(flow),
      exercises_(exercises),
      names_(new RowModel({"name"}, this)),
      findings_(new RowModel({"severity", "grave", "place", "found", "wanted", "mend", "source"}, this)) {
  connect(&hub_link(), &HubLink::answer, this, [this](const QString& id, const QJsonObject& body) {
    if (id == names_question_) {
      all_.clear();
      for (const auto v : body.value(QLatin1String("programmes")).toArray()) all_ << v.toString();
      answered_ = true;
    } else if (id == check_question_) {
      checked_ = body;
    } else {
      return;
    }
    trouble_.clear();
    show();
  });
  connect(&hub_link(), &HubLink::refused, this,
          [this](const QString& id, const QString&, const QString& text, const QString& hint) {
            if (id != names_question_ && id != check_question_) return;
            trouble_ = hint.isEmpty() ? text : tr("%1; %2").arg(text, hint);
            Q_EMIT changed();
          });
  connect(&exercises_, &InstructorExercises::changed, this, &InstructorProgrammes::show);
}

void InstructorProgrammes::open() {
  names_question_ = hub_link().ask(QStringLiteral("programmes"));
  flow_.open(QStringLiteral("programmes"));
}

void InstructorProgrammes::check(const QString& name) {
  name_ = name;
  checked_ = {};
  page_ = 0;
  check_question_ = hub_link().ask(QStringLiteral("programme.check"), {{QStringLiteral("name"), name}});
  show();
  flow_.open(QStringLiteral("findings"));
}

void InstructorProgrammes::again() { check(name_); }

void InstructorProgrammes::nextNames() {
  name_page_ = (name_page_ + 1) % namePages();
  show();
}

void InstructorProgrammes::nextPage() {
  page_ = (page_ + 1) % pages();
  show();
}

int InstructorProgrammes::namePages() const { return pages_of(all_.size(), page_names); }
int InstructorProgrammes::pages() const {
  return pages_of(checked_.value(QLatin1String("findings")).toArray().size(), page_findings);
}
QString InstructorProgrammes::namePageText() const { return words::page_text(name_page_, namePages()); }
QString InstructorProgrammes::pageText() const { return words::page_text(page_, pages()); }

QString InstructorProgrammes::namesEmpty() const {
  if (!trouble_.isEmpty()) return trouble_;
  if (!all_.isEmpty()) return {};
  return answered_
             ? tr("No file NAME.programme.toml lies in the folder 'programmes' of the hub's data folder.")
             : tr("One moment …");
}

QString InstructorProgrammes::title() const {
  const QString title = text_in(checked_, "title");
  return title.isEmpty() ? name_ : title;
}

QString InstructorProgrammes::error() const {
  return trouble_.isEmpty() ? text_in(checked_, "error") : trouble_;
}

int InstructorProgrammes::count(const char* severity) const {
  const QJsonArray all = checked_.value(QLatin1String("findings")).toArray();
  return static_cast<int>(std::ranges::count_if(all, [severity](const QJsonValue& f) {
    return text_in(f.toObject(), "severity") == QLatin1String(severity);
  }));
}

QString InstructorProgrammes::summary() const {
  if (!error().isEmpty()) return tr("This file cannot be read.");
  if (!checked_.contains(QLatin1String("findings"))) return tr("One moment …");
  const auto level = level_from(text_in(checked_, "level").toStdString());
  const int days = checked_.value(QLatin1String("days")).toInt();
  const QString what = tr("%1, %2 a week")
                           .arg(words::level_word(level.value_or(Level::novice)),
                                days == 1 ? tr("1 day") : tr("%1 days").arg(days));
  if (checked_.value(QLatin1String("findings")).toArray().isEmpty())
    return tr("%1: no finding by these rules").arg(what);
  return tr("%1: %2 must change, %3 should, %4 worth knowing")
      .arg(what)
      .arg(count("must"))
      .arg(count("should"))
      .arg(count("note"));
}

QVariantMap InstructorProgrammes::row_of(const QJsonObject& f) const {
  const QString severity = text_in(f, "severity");
  const QString exercise = text_in(f, "exercise");
  const QString group = text_in(f, "group");
  QStringList place;
  if (!text_in(f, "day").isEmpty()) place << text_in(f, "day");
  if (!exercise.isEmpty()) place << exercises_.name_of(exercise);
  if (exercise.isEmpty() && !group.isEmpty()) place << words::group_word(group.toStdString());
  if (place.isEmpty()) place << tr("the week");
  return {{QStringLiteral("severity"), severity_word(severity)},
          {QStringLiteral("grave"), severity == QLatin1String("must")},
          {QStringLiteral("place"), place.join(QStringLiteral(", "))},
          {QStringLiteral("found"), text_in(f, "found")},
          {QStringLiteral("wanted"), text_in(f, "wanted")},
          {QStringLiteral("mend"), text_in(f, "mend")},
          {QStringLiteral("source"), text_in(f, "source")}};
}

void InstructorProgrammes::show() {
  name_page_ = std::clamp(name_page_, 0, namePages() - 1);
  QList<QVariantMap> names;
  for (const QString& name : all_.mid(qsizetype{name_page_} * page_names, page_names))
    names.append({{QStringLiteral("name"), name}});
  show_in_places(*names_, names);

  // The grave first; within one severity in the order of the file.
  QList<QJsonObject> sorted;
  for (const char* severity : {"must", "should", "note"})
    for (const auto f : checked_.value(QLatin1String("findings")).toArray())
      if (text_in(f.toObject(), "severity") == QLatin1String(severity)) sorted.append(f.toObject());
  page_ = std::clamp(page_, 0, pages() - 1);
  QList<QVariantMap> rows;
  for (const QJsonObject& f : sorted.mid(qsizetype{page_} * page_findings, page_findings))
    rows.append(row_of(f));
  show_in_places(*findings_, rows);
  Q_EMIT changed();
}

}  // namespace floorwheel::screens
