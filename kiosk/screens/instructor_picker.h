// SPDX-License-Identifier: GPL-3.0-or-later
// One thing out of many, as paged large keys: who, which station, which exercise. Whoever opens it says what
// happens with the answer.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QList>
#include <QObject>
#include <QString>
#include <functional>

#include "kiosk/screens/instructor_flow.h"
#include "kiosk/screens/instructor_rows.h"

namespace floorwheel::screens {

class InstructorPicker : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Instructor.picker")
  Q_PROPERTY(QString title READ title NOTIFY changed FINAL)
  Q_PROPERTY(
      floorwheel::screens::RowModel* options READ options CONSTANT FINAL)  // a page: id, text, note, letter
  Q_PROPERTY(int pages READ pages NOTIFY changed FINAL)
  Q_PROPERTY(QString pageText READ pageText NOTIFY changed FINAL)
  Q_PROPERTY(bool empty READ empty NOTIFY changed FINAL)

 public:
  struct Option {
    QString id;
    QString text;
    QString note;
    QString letter;  // of a station, else ""
  };
  explicit InstructorPicker(InstructorFlow& flow, QObject* parent);

  [[nodiscard]] QString title() const { return title_; }
  [[nodiscard]] RowModel* options() const { return rows_; }
  [[nodiscard]] int pages() const;
  [[nodiscard]] QString pageText() const;
  [[nodiscard]] bool empty() const { return all_.isEmpty(); }

  /// Opens the page; `picked` gets the id of the key pressed, `left` is what Leave as it is does.
  void open(const QString& title, const QList<Option>& options, std::function<void(const QString&)> picked,
            std::function<void()> left);
  /// Options that came later (the hub was asked); the page stays.
  void refill(const QList<Option>& options);

  Q_INVOKABLE void pick(const QString& id);
  Q_INVOKABLE void leave();
  Q_INVOKABLE void nextPage();

 Q_SIGNALS:
  void changed();

 private:
  void show();

  InstructorFlow& flow_;
  RowModel* rows_;
  QString title_;
  QList<Option> all_;
  std::function<void(const QString&)> picked_;
  std::function<void()> left_;
  int page_ = 0;
};

}  // namespace floorwheel::screens
