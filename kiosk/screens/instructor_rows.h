// SPDX-License-Identifier: GPL-3.0-or-later
// A list for QML that changes by rows: comparing new with old, so that a check-in that arrives while a finger
// lies on a key does not replace the key. Every row is a map with the roles named at construction.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <QByteArray>
#include <QList>
#include <QVariantMap>

namespace floorwheel::screens {

class InstructorRows : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the instructor's view models")
  Q_PROPERTY(int count READ count NOTIFY countChanged FINAL)

 public:
  InstructorRows(const QList<QByteArray>& roles, QObject* parent);

  void show(const QList<QVariantMap>& rows);
  [[nodiscard]] const QList<QVariantMap>& rows() const { return rows_; }
  [[nodiscard]] int count() const { return static_cast<int>(rows_.size()); }

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
