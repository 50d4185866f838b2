// SPDX-License-Identifier: GPL-3.0-or-later
// 'My week': a member's own page at the shared touch screen, with the dose ring of this week, next loads and
// three trends. The screen has no PIN, so the hub answers only where the member has asked for the page at the
// desk; else it says how to get it. What was answered is forgotten when the page is left.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QJsonArray>
#include <QJsonObject>
#include <QObject>
#include <QString>
#include <functional>

#include "kiosk/screens/row_model.h"

namespace floorwheel::screens {

class TouchWeek : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by TouchVisit")
  // "" (closed), "off" (not asked for), "asking", "shown", "away" (no hub), "refused" (see trouble)
  Q_PROPERTY(QString state READ state NOTIFY changed FINAL)
  Q_PROPERTY(QString alias READ alias NOTIFY changed FINAL)
  Q_PROPERTY(bool justOff READ justOff NOTIFY changed FINAL)  // switched off here a moment ago
  Q_PROPERTY(QString trouble READ trouble NOTIFY changed FINAL)
  Q_PROPERTY(int week READ week NOTIFY changed FINAL)  // ISO week, 48
  Q_PROPERTY(int workingSets READ workingSets NOTIFY changed FINAL)
  // Geometry as in touch_ring.h: from, sweep, band, word, said, atRight, rowY, x1, y1, x2, y2
  Q_PROPERTY(floorwheel::screens::RowModel* sectors READ sectors CONSTANT FINAL)
  Q_PROPERTY(double rowHeight READ rowHeight NOTIFY changed FINAL)
  // A page of next loads: name, load, reason
  Q_PROPERTY(floorwheel::screens::RowModel* loads READ loads CONSTANT FINAL)
  Q_PROPERTY(int page READ page NOTIFY changed FINAL)    // from 0
  Q_PROPERTY(int pages READ pages NOTIFY changed FINAL)  // at least 1
  // name, said, points (in a box of 1 x 1)
  Q_PROPERTY(floorwheel::screens::RowModel* trends READ trends CONSTANT FINAL)

 public:
  static constexpr int loads_a_page = 3;

  /// Sends a question or a command and returns its id, as HubLink does.
  using Send = std::function<QString(const QString& kind, const QJsonObject& body)>;
  TouchWeek(Send ask, Send tell, QObject* parent = nullptr);

  /// `asked_for`: the hall says that the member wants the page shown.
  void open(const QString& member, const QString& alias, bool asked_for);
  void close();
  void on_hall(bool asked_for);
  void on_answer(const QString& id, const QJsonObject& body);
  void on_refused(const QString& id, const QString& code, const QString& trouble);
  [[nodiscard]] bool is_open() const { return !state_.isEmpty(); }

  /// 'Do not show my numbers here'.
  Q_INVOKABLE void dontShow();
  /// Turns to the next loads, from the last to the first.
  Q_INVOKABLE void turn();

  [[nodiscard]] QString state() const { return state_; }
  [[nodiscard]] QString alias() const { return alias_; }
  [[nodiscard]] bool justOff() const { return just_off_; }
  [[nodiscard]] QString trouble() const { return trouble_; }
  [[nodiscard]] int week() const { return week_; }
  [[nodiscard]] int workingSets() const { return working_sets_; }
  [[nodiscard]] RowModel* sectors() { return &sectors_; }
  [[nodiscard]] double rowHeight() const { return row_height_; }
  [[nodiscard]] RowModel* loads() { return &loads_; }
  [[nodiscard]] int page() const { return page_; }
  [[nodiscard]] int pages() const;
  [[nodiscard]] RowModel* trends() { return &trends_; }

 Q_SIGNALS:
  void changed();

 private:
  void forget();
  void ask();
  void lay_ring(const QJsonArray& dose);
  void lay_loads();
  void lay_trends(const QJsonArray& trends);

  Send ask_, tell_;
  QString state_, member_, alias_, trouble_;
  QString asked_id_, told_id_;
  bool asked_for_ = false;
  bool just_off_ = false;
  int week_ = 0;
  int working_sets_ = 0;
  int page_ = 0;
  double row_height_ = 0;
  QJsonArray next_;
  RowModel sectors_, loads_, trends_;
};

}  // namespace floorwheel::screens
