// SPDX-License-Identifier: GPL-3.0-or-later
// One line of text written on the instructor's screen: by our own letter keys, each large enough for a wet
// finger, or by a keyboard where there is one. Whoever opens it says what becomes of the line. Leaving loses
// nothing, whether by a key or because the class goes on: opened again, the draft is there.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QMap>
#include <QObject>
#include <QString>
#include <functional>

#include "kiosk/screens/instructor_flow.h"

namespace floorwheel::screens {

class InstructorPen : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Instructor.pen")
  Q_PROPERTY(QString title READ title NOTIFY changed FINAL)
  Q_PROPERTY(QString draft READ draft NOTIFY changed FINAL)
  Q_PROPERTY(QString room READ room NOTIFY changed FINAL)         // "188 characters left"
  Q_PROPERTY(QList<QString> keys READ keys NOTIFY changed FINAL)  // the 24 of this face
  Q_PROPERTY(bool letters READ letters NOTIFY changed FINAL)      // this face; else figures and signs
  Q_PROPERTY(bool waits READ waits NOTIFY changed FINAL)          // kept, and the hub has not answered yet
  Q_PROPERTY(bool canKeep READ canKeep NOTIFY changed FINAL)      // something was changed

 public:
  explicit InstructorPen(InstructorFlow& flow, QObject* parent);

  [[nodiscard]] QString title() const { return title_; }
  [[nodiscard]] QString draft() const { return draft_; }
  [[nodiscard]] QString room() const;
  [[nodiscard]] QStringList keys() const;
  [[nodiscard]] bool letters() const { return letters_; }
  [[nodiscard]] bool waits() const { return waits_; }
  [[nodiscard]] bool canKeep() const;

  static constexpr int most = 200;  // characters, as the hub takes

  /// Opens the page with what stands so far, or with the draft left under this key. `kept` gets the line (it
  /// then says `done` or `not_done`), `left` is the way back.
  void open(const QString& key, const QString& title, const QString& stands,
            std::function<void(const QString&)> kept, std::function<void()> left);
  void done();
  void not_done();

  /// A letter key: small, but a capital where a sentence begins. Figures and signs as they are.
  Q_INVOKABLE void press(const QString& key);
  /// What a keyboard sends, as it is.
  Q_INVOKABLE void type(const QString& text);
  Q_INVOKABLE void back();
  Q_INVOKABLE void otherKeys();
  Q_INVOKABLE void keep();
  Q_INVOKABLE void leave();

 Q_SIGNALS:
  void changed();

 private:
  void set(const QString& draft);

  InstructorFlow& flow_;
  QMap<QString, QString> drafts_;  // by key, those not kept
  std::function<void(const QString&)> kept_;
  std::function<void()> left_;
  QString key_;
  QString title_;
  QString stands_;
  QString draft_;
  bool letters_ = true;
  bool waits_ = false;
};

}  // namespace floorwheel::screens
