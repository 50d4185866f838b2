// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/row_model.h"

#include <QSet>

namespace floorwheel::screens {

namespace {
QString key_of(const QVariantMap& row) { return row.value(QStringLiteral("key")).toString(); }
}  // namespace

RowModel::RowModel(const QByteArrayList& roles, QObject* parent) : QAbstractListModel(parent) {
  int role = Qt::UserRole;
  roles_.insert(role, "key");
  for (const QByteArray& name : roles) roles_.insert(++role, name);
}

void RowModel::set_rows(const QList<QVariantMap>& fresh) {
  const int before = count();
  QSet<QString> keys;
  for (const QVariantMap& row : fresh) keys.insert(key_of(row));
  Q_ASSERT(keys.size() == fresh.size());

  for (int i = count() - 1; i >= 0; --i) {
    if (keys.contains(key_of(rows_[i]))) continue;
    beginRemoveRows({}, i, i);
    rows_.removeAt(i);
    endRemoveRows();
  }
  for (int i = 0; i < static_cast<int>(fresh.size()); ++i) {
    const int from = indexOf(key_of(fresh[i]));
    if (from < 0) {
      beginInsertRows({}, i, i);
      rows_.insert(i, fresh[i]);
      endInsertRows();
      continue;
    }
    if (from != i) {  // all before i are in place, so it comes from further down
      beginMoveRows({}, from, from, {}, i);
      rows_.move(from, i);
      endMoveRows();
    }
    if (rows_[i] != fresh[i]) {
      rows_[i] = fresh[i];
      Q_EMIT dataChanged(index(i), index(i));
    }
  }
  if (count() != before) Q_EMIT countChanged();
}

int RowModel::indexOf(const QString& key) const {
  for (int i = 0; i < count(); ++i)
    if (key_of(rows_[i]) == key) return i;
  return -1;
}

QString RowModel::keyAt(int row) const { return row >= 0 && row < count() ? key_of(rows_[row]) : QString(); }

int RowModel::rowCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : count(); }

QVariant RowModel::data(const QModelIndex& index, int role) const {
  if (!checkIndex(index, CheckIndexOption::IndexIsValid | CheckIndexOption::ParentIsInvalid)) return {};
  return rows_[index.row()].value(QString::fromUtf8(roles_.value(role)));
}

}  // namespace floorwheel::screens
