// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/instructor_rows.h"

#include <algorithm>

namespace floorwheel::screens {

InstructorRows::InstructorRows(const QList<QByteArray>& roles, QObject* parent) : QAbstractListModel(parent) {
  int role = Qt::UserRole;
  for (const QByteArray& name : roles) roles_.insert(++role, name);
}

int InstructorRows::rowCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : count(); }

QVariant InstructorRows::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= count()) return {};
  return rows_.at(index.row()).value(QString::fromLatin1(roles_.value(role)));
}

void InstructorRows::show(const QList<QVariantMap>& rows) {
  const int before = count();
  const int after = static_cast<int>(rows.size());
  const int both = std::min(before, after);
  for (int i = 0; i < both; ++i) {
    if (rows_.at(i) == rows.at(i)) continue;
    rows_[i] = rows.at(i);
    Q_EMIT dataChanged(index(i), index(i));
  }
  if (after > before) {
    beginInsertRows({}, before, after - 1);
    rows_.append(rows.mid(before));
    endInsertRows();
  } else if (after < before) {
    beginRemoveRows({}, after, before - 1);
    rows_.remove(after, before - after);
    endRemoveRows();
  }
  if (after != before) Q_EMIT countChanged();
}

}  // namespace floorwheel::screens
