// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/instructor_picker.h"

#include <algorithm>

#include "kiosk/screens/instructor_words.h"

namespace floorwheel::screens {

namespace {
constexpr int page_options = 18;
}

InstructorPicker::InstructorPicker(InstructorFlow& flow, QObject* parent)
    : QObject(parent), flow_(flow), rows_(new RowModel({"id", "text", "note", "letter"}, this)) {}

void InstructorPicker::open(const QString& title, const QList<Option>& options,
                            std::function<void(const QString&)> picked, std::function<void()> left) {
  title_ = title;
  all_ = options;
  picked_ = std::move(picked);
  left_ = std::move(left);
  page_ = 0;
  show();
  flow_.open(QStringLiteral("pick"));
}

void InstructorPicker::refill(const QList<Option>& options) {
  all_ = options;
  show();
}

int InstructorPicker::pages() const { return pages_of(all_.size(), page_options); }

QString InstructorPicker::pageText() const { return words::page_text(page_, pages()); }

void InstructorPicker::show() {
  page_ = std::clamp(page_, 0, pages() - 1);
  QList<QVariantMap> rows;
  for (const Option& o : all_.mid(qsizetype{page_} * page_options, page_options))
    rows.append({{QStringLiteral("id"), o.id},
                 {QStringLiteral("text"), o.text},
                 {QStringLiteral("note"), o.note},
                 {QStringLiteral("letter"), o.letter}});
  show_in_places(*rows_, rows);
  Q_EMIT changed();
}

void InstructorPicker::pick(const QString& id) {
  // The answer may open this page again with another question: let go of the old one first.
  const auto picked = std::exchange(picked_, {});
  if (picked) picked(id);
}

void InstructorPicker::leave() {
  picked_ = {};
  const auto left = std::exchange(left_, {});
  if (left)
    left();
  else
    flow_.leave();
}

void InstructorPicker::nextPage() {
  page_ = (page_ + 1) % pages();
  show();
}

}  // namespace floorwheel::screens
