// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/instructor_pen.h"

#include <QTextBoundaryFinder>

namespace floorwheel::screens {

namespace {

// 24 keys of 22 mm are all that fit above the bar; Z has a key there, Q the first place of the other face.
const QStringList letter_keys = QStringLiteral("A B C D E F G H I J K L M N O P R S T U V W X Y").split(' ');
const QStringList other_keys = QStringLiteral("1 2 3 4 5 6 7 8 9 0 Q . , - ? ! / + Ä Ö Ü É Ñ ß").split(' ');

qsizetype characters(const QString& s) { return s.toUcs4().size(); }

bool begins_sentence(const QString& before) {
  const QString text = before.trimmed();
  if (text.isEmpty()) return true;
  const QChar last = text.back();
  return before.endsWith(' ') && (last == '.' || last == '?' || last == '!');
}

}  // namespace

InstructorPen::InstructorPen(InstructorFlow& flow, QObject* parent) : QObject(parent), flow_(flow) {}

QString InstructorPen::room() const {
  const qsizetype left = most - characters(draft_);
  return left == 1 ? tr("1 character left") : tr("%1 characters left").arg(left);
}

QStringList InstructorPen::keys() const { return letters_ ? letter_keys : other_keys; }

bool InstructorPen::canKeep() const { return !waits_ && draft_.trimmed() != stands_; }

void InstructorPen::open(const QString& key, const QString& title, const QString& stands,
                         std::function<void(const QString&)> kept, std::function<void()> left) {
  key_ = key;
  title_ = title;
  stands_ = stands;
  draft_ = drafts_.value(key, stands);
  kept_ = std::move(kept);
  left_ = std::move(left);
  letters_ = true;
  waits_ = false;
  flow_.open(QStringLiteral("write"));
  Q_EMIT changed();
}

void InstructorPen::set(const QString& draft) {
  if (waits_ || characters(draft) > most) return;
  draft_ = draft;
  drafts_[key_] = draft;
  Q_EMIT changed();
}

void InstructorPen::press(const QString& key) {
  set(draft_ + (begins_sentence(draft_) ? key.toUpper() : key.toLower()));
}

void InstructorPen::type(const QString& text) {
  QString clean;
  for (const QChar c : text)
    if (c.isPrint()) clean += c;
  if (!clean.isEmpty()) set(draft_ + clean);
}

void InstructorPen::back() {
  // A letter with its accents goes as one.
  QTextBoundaryFinder finder(QTextBoundaryFinder::Grapheme, draft_);
  finder.toEnd();
  const qsizetype from = finder.toPreviousBoundary();
  if (from >= 0) set(draft_.left(from));
}

void InstructorPen::otherKeys() {
  letters_ = !letters_;
  Q_EMIT changed();
}

void InstructorPen::keep() {
  if (!canKeep()) return;
  waits_ = true;
  Q_EMIT changed();
  kept_(draft_.trimmed());
}

void InstructorPen::done() {
  drafts_.remove(key_);
  waits_ = false;
  if (flow_.page() == QLatin1String("write")) left_();
  Q_EMIT changed();
}

void InstructorPen::not_done() {
  waits_ = false;
  Q_EMIT changed();
}

void InstructorPen::leave() {
  waits_ = false;
  left_();
  Q_EMIT changed();
}

}  // namespace floorwheel::screens
