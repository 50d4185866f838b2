// SPDX-License-Identifier: GPL-3.0-or-later
// The plait for QML: what lay_plait says of the proposal, the run sheet or the preview, as lines and lists.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QPointF>
#include <QPolygonF>
#include <QRectF>
#include <QVariant>

#include "kiosk/screens/plait_layout.h"
#include "kiosk/wire/hall.h"

namespace floorwheel::screens {

class Instructor;

class InstructorPlait : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Instructor.plait")
  Q_PROPERTY(QVariantList letters READ letters NOTIFY changed FINAL)  // {letter, y, waiting}
  Q_PROPERTY(QVariantList numbers READ numbers NOTIFY changed FINAL)  // {slot, x, present}
  Q_PROPERTY(QVariant greyLines READ greyLines NOTIFY changed FINAL)  // for PathMultiline
  Q_PROPERTY(QVariant yellowLines READ yellowLines NOTIFY changed FINAL)
  Q_PROPERTY(QVariant skyLines READ skyLines NOTIFY changed FINAL)
  Q_PROPERTY(QList<QPointF> greyDots READ greyDots NOTIFY changed FINAL)
  Q_PROPERTY(QList<QPointF> yellowDots READ yellowDots NOTIFY changed FINAL)
  Q_PROPERTY(QList<QPointF> skyDots READ skyDots NOTIFY changed FINAL)
  Q_PROPERTY(QList<QPointF> skipped READ skipped NOTIFY changed FINAL)
  Q_PROPERTY(QVariantList closed READ closed NOTIFY changed FINAL)  // rects
  Q_PROPERTY(QVariantList laps READ laps NOTIFY changed FINAL)      // x
  Q_PROPERTY(QRectF gone READ gone NOTIFY changed FINAL)
  Q_PROPERTY(QRectF present READ present NOTIFY changed FINAL)
  Q_PROPERTY(qreal rowRight READ rowRight NOTIFY changed FINAL)
  Q_PROPERTY(QString description READ description NOTIFY changed FINAL)  // for those who do not see it

 public:
  explicit InstructorPlait(Instructor& all, QObject* parent);

  [[nodiscard]] QVariantList letters() const;
  [[nodiscard]] QVariantList numbers() const;
  [[nodiscard]] QVariant greyLines() const { return grey_lines_; }
  [[nodiscard]] QVariant yellowLines() const { return yellow_lines_; }
  [[nodiscard]] QVariant skyLines() const { return sky_lines_; }
  [[nodiscard]] QList<QPointF> greyDots() const { return grey_dots_; }
  [[nodiscard]] QList<QPointF> yellowDots() const { return yellow_dots_; }
  [[nodiscard]] QList<QPointF> skyDots() const { return sky_dots_; }
  [[nodiscard]] QList<QPointF> skipped() const { return skipped_; }
  [[nodiscard]] QVariantList closed() const;
  [[nodiscard]] QVariantList laps() const;
  [[nodiscard]] QRectF gone() const;
  [[nodiscard]] QRectF present() const;
  [[nodiscard]] qreal rowRight() const;
  [[nodiscard]] QString description() const;

 Q_SIGNALS:
  void changed();

 private:
  void look();

  Instructor& all_;
  PlaitAsk ask_;
  Plait plait_;
  // Lists even while empty: PathMultiline does not take a value of no type.
  QVariant grey_lines_ = QVariant::fromValue(QList<QPolygonF>());
  QVariant yellow_lines_ = grey_lines_;
  QVariant sky_lines_ = grey_lines_;
  QList<QPointF> grey_dots_, yellow_dots_, sky_dots_, skipped_;
};

/// What the plait of a class is asked for: rows in ring order (free: as the stations stand), members in the
/// order of the run sheet; `before`: the class before a change, or null.
PlaitAsk plait_ask(const wire::ClassView& shown, const wire::ClassView* before, const std::string& chosen);

}  // namespace floorwheel::screens
