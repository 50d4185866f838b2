// SPDX-License-Identifier: GPL-3.0-or-later
// A change while the class runs: what it would do is asked and shown before it is done. Somebody comes late
// or leaves, a station closes or opens, two change places, another exercise stands there. At most three ways
// out are offered; a run sheet that changed meanwhile makes the preview ask anew by itself and say so.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QJsonObject>
#include <QObject>
#include <QString>
#include <QStringList>
#include <optional>

#include "kiosk/screens/instructor_exercises.h"
#include "kiosk/screens/instructor_flow.h"
#include "kiosk/screens/instructor_picker.h"
#include "kiosk/screens/instructor_rows.h"

namespace floorwheel::screens {

class InstructorChange : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Instructor.change")
  Q_PROPERTY(bool anyClosed READ anyClosed NOTIFY changed FINAL)
  Q_PROPERTY(QString heading READ heading NOTIFY changed FINAL)  // "F closes from slot 17"
  Q_PROPERTY(
      floorwheel::screens::RowModel* choices READ choices CONSTANT FINAL)  // title, people, cost, chosen
  Q_PROPERTY(QString progress READ progress NOTIFY changed FINAL)          // while it is looked for; else ""
  Q_PROPERTY(QString refusal READ refusal NOTIFY changed FINAL)            // why it cannot be; else ""
  Q_PROPERTY(bool ready READ ready NOTIFY changed FINAL)                   // Do it does something
  Q_PROPERTY(QString whoTitle READ whoTitle NOTIFY changed FINAL)          // "Who changes: 14 people"
  Q_PROPERTY(floorwheel::screens::RowModel* who READ who CONSTANT FINAL)   // slot, names
  Q_PROPERTY(QList<QString> cost READ cost NOTIFY changed FINAL)
  Q_PROPERTY(QList<QString> proof READ proof NOTIFY changed FINAL)
  Q_PROPERTY(QString stays READ stays NOTIFY changed FINAL)  // "Slots 1 to 16 stay as they were."
  Q_PROPERTY(QString doNote READ doNote NOTIFY changed FINAL)

 public:
  InstructorChange(InstructorFlow& flow, InstructorPicker& picker, InstructorExercises& exercises,
                   QObject* parent);

  [[nodiscard]] bool anyClosed() const;
  [[nodiscard]] QString heading() const { return heading_; }
  [[nodiscard]] RowModel* choices() const { return choice_rows_; }
  [[nodiscard]] QString progress() const;
  [[nodiscard]] QString refusal() const;
  [[nodiscard]] bool ready() const;
  [[nodiscard]] QString whoTitle() const;
  [[nodiscard]] RowModel* who() const { return who_rows_; }
  [[nodiscard]] QStringList cost() const;
  [[nodiscard]] QStringList proof() const;
  [[nodiscard]] QString stays() const;
  [[nodiscard]] QString doNote() const;
  /// The class as the chosen way would have it; null before the hub has answered.
  [[nodiscard]] const wire::ClassView* then() const;

  Q_INVOKABLE void late();
  Q_INVOKABLE void left();
  Q_INVOKABLE void close();
  Q_INVOKABLE void reopen();
  Q_INVOKABLE void swap();
  Q_INVOKABLE void exercise();
  Q_INVOKABLE void choose(int index);
  Q_INVOKABLE void doIt();
  Q_INVOKABLE void leave();

 Q_SIGNALS:
  void changed();

 private:
  struct Choice {
    QString title;
    QJsonObject change;  // {kind, ...}
    QString question;    // under way, or ""
    QString refusal;
    QString best;  // how far the hub is, in its words
    std::optional<QJsonObject> answer;
    std::optional<wire::ClassView> then;
  };
  void preview(const QString& heading, QList<Choice> choices, int chosen);
  void ask_next();
  void ask_anew();
  void look();
  void show();
  void take_answer(const QString& id, const QJsonObject& body);
  void take_refusal(const QString& id, const QString& code, const QString& text, const QString& hint);
  [[nodiscard]] Choice* of_question(const QString& id);
  [[nodiscard]] const Choice* chosen() const;
  [[nodiscard]] static int people_of(const Choice&);
  [[nodiscard]] QString end_of(const Choice&) const;
  [[nodiscard]] QString name_of(const QString& member) const;
  [[nodiscard]] int open_slot() const;
  void pick_station(const QString& title, bool closed, const QString& without,
                    std::function<void(const wire::StationView&)> then);

  InstructorFlow& flow_;
  InstructorPicker& picker_;
  InstructorExercises& exercises_;
  RowModel* choice_rows_;
  RowModel* who_rows_;
  QList<Choice> choices_;
  QString heading_;
  int chosen_ = 0;
  int previewed_version_ = 0;
  bool asked_anew_ = false;
  QString done_;     // Do it told last
  QString members_;  // the question who else there is
};

}  // namespace floorwheel::screens
