// SPDX-License-Identifier: GPL-3.0-or-later
// A list model of keyed rows for the wall's repeated parts (discs, texts, tags). A new list is compared with
// the old by key: rows come, go or change, never a reset, so that a text keeps its item and can move.
#pragma once

#include <QAbstractListModel>
#include <QString>
#include <QVariantList>
#include <vector>

namespace floorwheel::screens {

class WallRows : public QAbstractListModel {
  Q_OBJECT
 public:
  struct Row {
    QString key;
    QVariantList values;  // one for each role
  };
  WallRows(QList<QByteArray> roles, QObject* parent);

  /// Takes rows in any order; keys must differ.
  void assign(std::vector<Row>);

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex&, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;
  [[nodiscard]] const std::vector<Row>& rows() const { return rows_; }
  /// The value of a role in a row, for tests.
  [[nodiscard]] QVariant value(const QString& key, const QByteArray& role) const;

 private:
  QList<QByteArray> roles_;
  std::vector<Row> rows_;  // by key
};

}  // namespace floorwheel::screens
