// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/wall_rows.h"

#include <algorithm>

namespace floorwheel::screens {

WallRows::WallRows(QList<QByteArray> roles, QObject* parent)
    : QAbstractListModel(parent), roles_(std::move(roles)) {}

void WallRows::assign(std::vector<Row> fresh) {
  std::sort(fresh.begin(), fresh.end(), [](const Row& a, const Row& b) { return a.key < b.key; });
  std::size_t at = 0;
  for (Row& row : fresh) {
    while (at < rows_.size() && rows_[at].key < row.key) {
      const int i = static_cast<int>(at);
      beginRemoveRows({}, i, i);
      rows_.erase(rows_.begin() + i);
      endRemoveRows();
    }
    const int i = static_cast<int>(at);
    if (at < rows_.size() && rows_[at].key == row.key) {
      QList<int> changed;
      for (int r = 0; r < row.values.size(); ++r)
        if (rows_[at].values[r] != row.values[r]) changed.append(Qt::UserRole + r);
      if (!changed.isEmpty()) {
        rows_[at].values = std::move(row.values);
        Q_EMIT dataChanged(index(i), index(i), changed);
      }
    } else {
      beginInsertRows({}, i, i);
      rows_.insert(rows_.begin() + i, std::move(row));
      endInsertRows();
    }
    ++at;
  }
  if (at < rows_.size()) {
    beginRemoveRows({}, static_cast<int>(at), static_cast<int>(rows_.size()) - 1);
    rows_.resize(at);
    endRemoveRows();
  }
}

int WallRows::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant WallRows::data(const QModelIndex& index, int role) const {
  if (!checkIndex(index, CheckIndexOption::IndexIsValid | CheckIndexOption::ParentIsInvalid)) return {};
  const int r = role - Qt::UserRole;
  if (r < 0 || r >= roles_.size()) return {};
  return rows_[static_cast<std::size_t>(index.row())].values[r];
}

QHash<int, QByteArray> WallRows::roleNames() const {
  QHash<int, QByteArray> names;
  for (int i = 0; i < roles_.size(); ++i) names.insert(Qt::UserRole + i, roles_[i]);
  return names;
}

QVariant WallRows::value(const QString& key, const QByteArray& role) const {
  for (const Row& row : rows_)
    if (row.key == key) return row.values[roles_.indexOf(role)];
  return {};
}

}  // namespace floorwheel::screens
