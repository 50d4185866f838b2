// SPDX-License-Identifier: GPL-3.0-or-later
// A page of keys of one kind (people's aliases, a member's sets, the loads of a station), changed by rows so
// that a key under a finger never jumps without need. What is in it, in which order, is the caller's to say.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <QString>
#include <vector>

namespace floorwheel::screens {

/// What a key says beside its label.
enum class TouchMark { none, kept, not_done };

/// One key; the id is unique in the list.
struct TouchKey {
  QString id;
  QString label;
  QString letter;  // of the station whose set is due; "" shows no disc
  TouchMark mark = TouchMark::none;
  friend bool operator==(const TouchKey&, const TouchKey&) = default;
};

class TouchKeys : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by TouchVisit")
  Q_PROPERTY(int page READ page NOTIFY pageChanged FINAL)    // from 0
  Q_PROPERTY(int pages READ pages NOTIFY pageChanged FINAL)  // at least 1
  Q_PROPERTY(int count READ count NOTIFY pageChanged FINAL)  // on all pages
  Q_PROPERTY(int pageSize READ pageSize WRITE setPageSize NOTIFY pageChanged FINAL)

 public:
  enum Role { key = Qt::UserRole + 1, label, letter, mark };
  explicit TouchKeys(int page_size, QObject* parent = nullptr);

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex&, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

  /// The whole list; the page stays where it is as far as there is one.
  void show(std::vector<TouchKey>);
  [[nodiscard]] const std::vector<TouchKey>& all() const { return all_; }

  [[nodiscard]] int page() const { return page_; }
  [[nodiscard]] int pages() const;
  [[nodiscard]] int count() const { return static_cast<int>(all_.size()); }
  [[nodiscard]] int pageSize() const { return page_size_; }
  void setPageSize(int);
  /// Turns to the next page, from the last to the first.
  Q_INVOKABLE void turn();
  Q_INVOKABLE void first();
  /// The page on which a key stands.
  void turn_to(const QString& id);

 Q_SIGNALS:
  void pageChanged();

 private:
  void lay();
  std::vector<TouchKey> all_;
  std::vector<TouchKey> shown_;
  int page_size_;
  int page_ = 0;
};

}  // namespace floorwheel::screens
