// SPDX-License-Identifier: GPL-3.0-or-later
// The desk's page for today: the classes, who is here and expected in the chosen one, check-in, walk-ins.
// Every action is a command told to the hub; what is shown comes back from it as rows.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QJsonArray>
#include <QObject>

#include "kiosk/screens/row_model.h"
#include "kiosk/wire/hall.h"

namespace floorwheel::screens {

class DeskToday : public QObject {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(floorwheel::screens::RowModel* classes READ classes CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::RowModel* here READ here CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::RowModel* expected READ expected CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::RowModel* last READ last CONSTANT FINAL)  // check-ins, latest first
  // Members who fit what is typed and are not on the list.
  Q_PROPERTY(floorwheel::screens::RowModel* known READ known CONSTANT FINAL)
  Q_PROPERTY(QString chosenClass READ chosenClass WRITE chooseClass NOTIFY changed FINAL)
  Q_PROPERTY(QString chosenMember READ chosenMember WRITE chooseMember NOTIFY changed FINAL)
  Q_PROPERTY(QString classTitle READ classTitle NOTIFY changed FINAL)  // "18:30 Thursday ring"
  Q_PROPERTY(QString classTime READ classTime NOTIFY changed FINAL)  // "18:30", or the name where it has none
  Q_PROPERTY(QString chosenAlias READ chosenAlias NOTIFY changed FINAL)
  Q_PROPERTY(
      bool canCheckIn READ canCheckIn NOTIFY changed FINAL)  // the chosen one is expected, the class not over
  Q_PROPERTY(bool canUndo READ canUndo NOTIFY changed FINAL)  // the chosen one is here
  // The chosen one is a member, and has asked for the own week on the touch screen.
  Q_PROPERTY(bool canShowPage READ canShowPage NOTIFY changed FINAL)
  Q_PROPERTY(bool pageShown READ pageShown NOTIFY changed FINAL)
  Q_PROPERTY(bool canSeat READ canSeat NOTIFY changed FINAL)  // a class is chosen and not over
  Q_PROPERTY(QString dateText READ dateText NOTIFY dateChanged FINAL)
  Q_PROPERTY(QString walkIn READ walkIn WRITE setWalkIn NOTIFY walkInChanged FINAL)  // the alias being typed
  Q_PROPERTY(int walkInPx READ walkInPx NOTIFY walkInChanged FINAL)  // its width on the wall, of at most 370
  Q_PROPERTY(QString said READ said NOTIFY saidChanged FINAL)        // what became of the last action

 public:
  static constexpr int alias_most_px = 370;  // on a wall of 1080 rows, at capitals of 71 px

  explicit DeskToday(QObject* parent = nullptr);

  RowModel* classes() { return &classes_; }
  RowModel* here() { return &here_; }
  RowModel* expected() { return &expected_; }
  RowModel* last() { return &last_; }
  RowModel* known() { return &known_; }
  [[nodiscard]] QString chosenClass() const { return chosen_class_; }
  [[nodiscard]] QString chosenMember() const { return chosen_member_; }
  [[nodiscard]] QString classTitle() const;
  [[nodiscard]] QString classTime() const;
  [[nodiscard]] QString chosenAlias() const;
  [[nodiscard]] bool canCheckIn() const;
  [[nodiscard]] bool canUndo() const;
  [[nodiscard]] bool canShowPage() const;
  [[nodiscard]] bool pageShown() const;
  [[nodiscard]] bool canSeat() const;
  [[nodiscard]] QString dateText() const;
  [[nodiscard]] QString walkIn() const { return walk_in_; }
  [[nodiscard]] int walkInPx() const;
  [[nodiscard]] QString said() const { return said_; }

  void chooseClass(const QString& id);
  void chooseMember(const QString& id);
  void setWalkIn(const QString& alias);

  Q_INVOKABLE void checkIn(const QString& member);
  Q_INVOKABLE void undo(const QString& member);
  /// Switches the own week on the touch screen on, at the member's word, or off.
  Q_INVOKABLE void showPage(const QString& member, bool on);
  /// A new member with the typed alias, who takes a seat at once.
  Q_INVOKABLE void seatNew(const QString& level);
  /// A known member who is not on the list takes a seat.
  Q_INVOKABLE void seatKnown(const QString& member);

 Q_SIGNALS:
  void changed();
  void dateChanged();
  void walkInChanged();
  void saidChanged();

 private:
  void fold();
  void ask_members();
  void find_known();
  void say(const QString& text);
  [[nodiscard]] const wire::ClassView* chosen() const;
  [[nodiscard]] const wire::MemberView* chosen_one() const;

  RowModel classes_, here_, expected_, last_, known_;
  QString chosen_class_;
  QString chosen_member_;
  QString walk_in_;
  QString said_;
  QString date_text_;
  QString last_added_id_;  // the member.add under way
  QString seat_in_class_;  // the class it was meant for
  QString members_ask_;    // the question under way
  QJsonArray members_;     // of the store, as last answered
};

}  // namespace floorwheel::screens
