// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/touch_keys.h"

#include <algorithm>

namespace floorwheel::screens {

TouchKeys::TouchKeys(int page_size, QObject* parent)
    : QAbstractListModel(parent), page_size_(std::max(1, page_size)) {}

int TouchKeys::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(shown_.size());
}

QVariant TouchKeys::data(const QModelIndex& index, int role) const {
  if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
  const TouchKey& p = shown_[static_cast<std::size_t>(index.row())];
  switch (role) {
    case Role::key:
      return p.id;
    case Qt::DisplayRole:
    case Role::label:
      return p.label;
    case Role::letter:
      return p.letter;
    case Role::mark:
      return p.mark == TouchMark::kept       ? QStringLiteral("kept")
             : p.mark == TouchMark::not_done ? QStringLiteral("not done")
                                             : QString();
    default:
      return {};
  }
}

QHash<int, QByteArray> TouchKeys::roleNames() const {
  return {{Role::key, "key"}, {Role::label, "label"}, {Role::letter, "letter"}, {Role::mark, "mark"}};
}

void TouchKeys::show(std::vector<TouchKey> keys) {
  const auto pages_before = pages();
  const auto count_before = all_.size();
  all_ = std::move(keys);
  const int page_before = page_;
  page_ = std::min(page_, pages() - 1);
  lay();
  if (page_ != page_before || pages() != pages_before || all_.size() != count_before) Q_EMIT pageChanged();
}

int TouchKeys::pages() const {
  return std::max(1, (static_cast<int>(all_.size()) + page_size_ - 1) / page_size_);
}

void TouchKeys::setPageSize(int size) {
  size = std::max(1, size);
  if (size == page_size_) return;
  page_size_ = size;
  page_ = std::min(page_, pages() - 1);
  lay();
  Q_EMIT pageChanged();
}

void TouchKeys::turn() {
  page_ = (page_ + 1) % pages();
  lay();
  Q_EMIT pageChanged();
}

void TouchKeys::first() {
  if (page_ == 0) return;
  page_ = 0;
  lay();
  Q_EMIT pageChanged();
}

void TouchKeys::turn_to(const QString& id) {
  const auto at = std::ranges::find(all_, id, &TouchKey::id);
  if (at == all_.end()) return;
  page_ = static_cast<int>(at - all_.begin()) / page_size_;
  lay();
  Q_EMIT pageChanged();
}

// Brings shown_ to the present page by single removals, moves, insertions and changes.
void TouchKeys::lay() {
  const auto from =
      all_.begin() + std::min<std::ptrdiff_t>(std::ptrdiff_t{page_} * page_size_, std::ssize(all_));
  const std::vector<TouchKey> want(from, from + std::min<std::ptrdiff_t>(page_size_, all_.end() - from));

  for (int i = rowCount() - 1; i >= 0; --i) {
    if (std::ranges::find(want, shown_[static_cast<std::size_t>(i)].id, &TouchKey::id) != want.end())
      continue;
    beginRemoveRows({}, i, i);
    shown_.erase(shown_.begin() + i);
    endRemoveRows();
  }
  for (int i = 0; i < std::ssize(want); ++i) {
    const TouchKey& p = want[static_cast<std::size_t>(i)];
    const auto at = std::ranges::find(shown_.begin() + i, shown_.end(), p.id, &TouchKey::id);
    const int old = static_cast<int>(at - shown_.begin());
    if (at == shown_.end()) {
      beginInsertRows({}, i, i);
      shown_.insert(shown_.begin() + i, p);
      endInsertRows();
    } else if (old != i) {
      beginMoveRows({}, old, old, {}, i);
      std::rotate(shown_.begin() + i, at, at + 1);
      endMoveRows();
    }
    TouchKey& now = shown_[static_cast<std::size_t>(i)];
    if (now == p) continue;
    now = p;
    Q_EMIT dataChanged(index(i), index(i));
  }
}

}  // namespace floorwheel::screens
