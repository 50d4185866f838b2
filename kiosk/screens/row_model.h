// SPDX-License-Identifier: GPL-3.0-or-later
// A list model that changes by rows: the new rows are compared with the old by their key, and removals,
// moves, insertions and changed data are told one by one. A reset would lose scroll, touch and animation.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <QByteArrayList>
#include <QVariantMap>
#include <algorithm>

namespace floorwheel::screens {

/// How many pages so many rows take; at least one.
inline int pages_of(qsizetype rows, int rows_a_page) {
  return std::max(1, (static_cast<int>(rows) + rows_a_page - 1) / rows_a_page);
}

class RowModel : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by a view model")
  Q_PROPERTY(int count READ count NOTIFY countChanged FINAL)

 public:
  /// (In another class write Q_PROPERTY(floorwheel::screens::RowModel* ...) in full, or qmllint cannot find
  /// it.) Role names; each row is a map with these and "key", which is unique among the rows.
  explicit RowModel(const QByteArrayList& roles, QObject* parent);

  void set_rows(const QList<QVariantMap>& rows);
  [[nodiscard]] const QList<QVariantMap>& rows() const { return rows_; }
  [[nodiscard]] int count() const { return static_cast<int>(rows_.size()); }
  /// The row's place, or -1.
  Q_INVOKABLE [[nodiscard]] int indexOf(const QString& key) const;
  Q_INVOKABLE [[nodiscard]] QString keyAt(int row) const;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override { return roles_; }

 Q_SIGNALS:
  void countChanged();

 private:
  QHash<int, QByteArray> roles_;
  QList<QVariantMap> rows_;
};

}  // namespace floorwheel::screens
