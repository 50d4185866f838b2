// SPDX-License-Identifier: GPL-3.0-or-later
// One visit of one person at the shared touch screen: which page is shown, who it is about, what a tap does,
// and when the screen goes back to rest by itself. It joins the hub link and the class time to the parts that
// hold what is shown (check-in, keys of people, hand card) and to what was kept. Everything a tap decides is
// here; QML forwards taps.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QString>
#include <QTimer>

#include "kiosk/screens/touch_card.h"
#include "kiosk/screens/touch_check_in.h"
#include "kiosk/screens/touch_kept.h"
#include "kiosk/screens/touch_keys.h"
#include "kiosk/screens/touch_rules.h"
#include "kiosk/screens/touch_week.h"

namespace floorwheel::screens {

class TouchVisit : public QObject {
  Q_OBJECT
  QML_ELEMENT
  // At rest: "none" (no class), "arrive" (find yourself), "who" (whose set), "stop" (stop and help).
  // During a visit: "everybody", "question", "spot", "hurts", "in", "new", "card", "sets", "week".
  Q_PROPERTY(QString page READ page NOTIFY pageChanged FINAL)
  Q_PROPERTY(QString alias READ alias NOTIFY pageChanged FINAL)  // whom the visit is about
  Q_PROPERTY(QString member READ member NOTIFY pageChanged FINAL)
  Q_PROPERTY(bool hasWeek READ hasWeek NOTIFY pageChanged FINAL)   // a member, not a guest
  Q_PROPERTY(QString stage READ stage NOTIFY stageChanged FINAL)   // "none", "check-in", "record", "stopped"
  Q_PROPERTY(bool started READ started NOTIFY stageChanged FINAL)  // the class has been started
  Q_PROPERTY(bool ended READ ended NOTIFY stageChanged FINAL)      // and is over: sets are still recorded
  Q_PROPERTY(bool working READ working NOTIFY stageChanged FINAL)  // a slot is being worked
  Q_PROPERTY(int slotEnded READ slotEnded NOTIFY stageChanged FINAL)  // whose sets are asked for; 0: none yet
  Q_PROPERTY(
      bool movesOneOn READ movesOneOn NOTIFY stageChanged FINAL)     // a changeover of a ring, nobody waits
  Q_PROPERTY(bool warning READ warning NOTIFY warningChanged FINAL)  // leaves in 5 s
  Q_PROPERTY(int leaveMs READ leaveMs WRITE setLeaveMs NOTIFY leaveMsChanged FINAL)  // 15 s
  Q_PROPERTY(bool answerConfirmed READ answerConfirmed NOTIFY answerChanged FINAL)
  Q_PROPERTY(QString answerTrouble READ answerTrouble NOTIFY answerChanged FINAL)
  Q_PROPERTY(QString newTrouble READ newTrouble NOTIFY newChanged FINAL)
  // The member who has this alias already, though not in this class; "" for none.
  Q_PROPERTY(QString newKnown READ newKnown NOTIFY newChanged FINAL)
  Q_PROPERTY(bool newWaits READ newWaits NOTIFY newChanged FINAL)  // the alias is on its way to the hub
  Q_PROPERTY(floorwheel::screens::TouchCheckIn* checkIn READ checkIn CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::TouchCard* card READ card CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::TouchKept* kept READ kept CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::TouchWeek* week READ week CONSTANT FINAL)
  Q_PROPERTY(floorwheel::screens::TouchKeys* people READ people CONSTANT
                 FINAL)  // whose sets: by station, nearest first
  Q_PROPERTY(floorwheel::screens::TouchKeys* beside READ beside CONSTANT
                 FINAL)  // the same, in the pages that stand beside a card

 public:
  explicit TouchVisit(QObject* parent = nullptr);

  // Taps. A member or a slot is named by the id of its key.
  Q_INVOKABLE void arrive(const QString& member);  // 'I am ...': checks in and asks about today
  Q_INVOKABLE void answer(const QString& answer);  // fine | take_it_easy | wants_a_word
  Q_INVOKABLE void askWhere();                     // 'Something hurts'
  Q_INVOKABLE void hurtsAt(const QString& group);  // "": somewhere else
  Q_INVOKABLE void notMe();
  Q_INVOKABLE void showEverybody();
  Q_INVOKABLE void newHere();
  Q_INVOKABLE void takeAlias();
  Q_INVOKABLE void thatIsMe();  // the member of newKnown takes a seat
  Q_INVOKABLE void lateHere();  // check in while the class runs
  Q_INVOKABLE void openCard(const QString& member);
  Q_INVOKABLE void showSets();
  Q_INVOKABLE void showWeek();  // the member's own page
  Q_INVOKABLE void chooseSet(const QString& slot);
  Q_INVOKABLE void asPlanned();
  Q_INVOKABLE void keepThis();
  Q_INVOKABLE void didNot();
  Q_INVOKABLE void back();
  Q_INVOKABLE void done();  // to rest

  [[nodiscard]] QString page() const;
  [[nodiscard]] QString alias() const { return alias_; }
  [[nodiscard]] QString member() const { return QString::fromStdString(member_); }
  [[nodiscard]] bool hasWeek() const;
  [[nodiscard]] QString stage() const;
  [[nodiscard]] bool started() const;
  [[nodiscard]] bool ended() const;
  [[nodiscard]] bool working() const;
  [[nodiscard]] int slotEnded() const;
  [[nodiscard]] bool movesOneOn() const { return moves_one_on_; }
  [[nodiscard]] bool warning() const { return warning_; }
  [[nodiscard]] int leaveMs() const { return leave_.interval(); }
  void setLeaveMs(int ms);
  [[nodiscard]] bool answerConfirmed() const { return answer_confirmed_; }
  [[nodiscard]] QString answerTrouble() const { return answer_trouble_; }
  [[nodiscard]] QString newTrouble() const { return new_trouble_; }
  [[nodiscard]] QString newKnown() const { return new_known_; }
  [[nodiscard]] bool newWaits() const { return !add_id_.isEmpty(); }
  [[nodiscard]] TouchCheckIn* checkIn() { return &check_in_; }
  [[nodiscard]] TouchCard* card() { return &card_; }
  [[nodiscard]] TouchKept* kept() { return &kept_; }
  [[nodiscard]] TouchWeek* week() { return &week_; }
  [[nodiscard]] TouchKeys* people() { return &people_; }
  [[nodiscard]] TouchKeys* beside() { return &beside_; }

  bool eventFilter(QObject*, QEvent*) override;

 Q_SIGNALS:
  void pageChanged();
  void stageChanged();
  void warningChanged();
  void leaveMsChanged();
  void answerChanged();
  void newChanged();

 private:
  void refresh();
  void refresh_people(const wire::ClassView&, const wire::Moment&);
  void refresh_card(const wire::ClassView&, const wire::Moment&);
  void go(const QString& page);
  void touched();
  void set_warning(bool);
  void keep(wire::SetRecord);
  void tell_answer(const QString& answer, const QString& spot);
  void on_receipt(const QString& id, const QJsonObject& body);
  void on_refused(const QString& id, const QString& trouble, const QJsonObject& body);
  void seat(const QString& member);
  [[nodiscard]] const wire::ClassView* at_hand() const;
  [[nodiscard]] wire::Moment moment(const wire::ClassView&) const;
  [[nodiscard]] bool is_kept(const wire::ClassView&, const std::string& member, int slot) const;
  [[nodiscard]] TouchMark mark_of(const wire::ClassView&, const std::string& member, int slot) const;

  TouchKept kept_;
  TouchCheckIn check_in_;
  TouchCard card_;
  TouchWeek week_;
  TouchKeys people_{25};
  TouchKeys beside_{11};
  QString page_;       // "": at rest
  QString week_from_;  // the page that 'My week' was opened from
  std::string member_;
  QString alias_;
  int chosen_slot_ = 0;  // of the card; 0: the one due
  touch::Stage stage_ = touch::Stage::none;
  wire::Moment moment_;
  int slot_ended_ = 0;
  bool working_ = false;
  bool moves_one_on_ = false;
  bool warning_ = false;
  QTimer warn_, leave_;
  QString answer_id_;
  bool answer_confirmed_ = false;
  QString answer_trouble_;
  QString add_id_;
  QString new_alias_;
  QString new_trouble_;
  QString new_known_;
};

}  // namespace floorwheel::screens
