// SPDX-License-Identifier: GPL-3.0-or-later
// Finding oneself before a class: by the first letters of the alias or on its key; and the alias of somebody
// new. It holds what is shown and tells nobody; TouchVisit sends what is decided here.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QString>
#include <functional>

#include "kiosk/screens/touch_keys.h"
#include "kiosk/wire/hall.h"

namespace floorwheel::screens {

/// Upper case without accents, so that Zoë is found by Z, O, E.
QString folded(const QString& alias);
/// Width in pixels of an alias as the wall writes it, and the widest that fits its column.
double width_on_wall(const QString& alias);
inline constexpr double widest_on_wall = 370;

class TouchCheckIn : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by TouchVisit")
  Q_PROPERTY(QString className READ className NOTIFY changed FINAL)
  Q_PROPERTY(QString times READ times NOTIFY changed FINAL)                // "18:30 – 19:10", "18:30" or ""
  Q_PROPERTY(int minutesToStart READ minutesToStart NOTIFY changed FINAL)  // -1: past, or no time said
  Q_PROPERTY(int stations READ stations NOTIFY changed FINAL)
  Q_PROPERTY(int here READ here NOTIFY changed FINAL)
  Q_PROPERTY(int expected READ expected NOTIFY changed FINAL)  // on the list or walked in
  Q_PROPERTY(QString prefix READ prefix NOTIFY changed FINAL)
  Q_PROPERTY(QString liveLetters READ liveLetters NOTIFY changed FINAL)  // "ABCE": the others lead nowhere
  Q_PROPERTY(floorwheel::screens::TouchKeys* arrivals READ arrivals CONSTANT
                 FINAL)  // not yet here, or whoever the letters find
  Q_PROPERTY(floorwheel::screens::TouchKeys* everybody READ everybody CONSTANT
                 FINAL)                                           // expected and here; a tick: is in
  Q_PROPERTY(QString draft READ draft NOTIFY draftChanged FINAL)  // the alias being typed
  Q_PROPERTY(
      QString draftTrouble READ draftTrouble NOTIFY draftChanged FINAL)  // "", "empty", "taken", "wide"

 public:
  explicit TouchCheckIn(QObject* parent = nullptr);

  struct Arrival {
    QString member;
    QString alias;
    bool here = false;
    friend bool operator==(const Arrival&, const Arrival&) = default;
  };
  struct Facts {
    QString class_name, times;
    int minutes_to_start = -1;
    int stations = 0;
    std::vector<Arrival> people;
    friend bool operator==(const Facts&, const Facts&) = default;
  };
  void show(Facts);

  Q_INVOKABLE void type(const QString& letter);
  Q_INVOKABLE void back();
  void clear();
  Q_INVOKABLE void typeDraft(const QString& letter);
  Q_INVOKABLE void backDraft();

  [[nodiscard]] QString className() const { return facts_.class_name; }
  [[nodiscard]] QString times() const { return facts_.times; }
  [[nodiscard]] int minutesToStart() const { return facts_.minutes_to_start; }
  [[nodiscard]] int stations() const { return facts_.stations; }
  [[nodiscard]] int here() const;
  [[nodiscard]] int expected() const { return static_cast<int>(facts_.people.size()); }
  [[nodiscard]] QString prefix() const { return prefix_; }
  [[nodiscard]] QString liveLetters() const;
  [[nodiscard]] TouchKeys* arrivals() { return &arrivals_; }
  [[nodiscard]] TouchKeys* everybody() { return &everybody_; }
  [[nodiscard]] QString draft() const { return draft_; }
  [[nodiscard]] QString draftTrouble() const;

 Q_SIGNALS:
  void changed();
  void draftChanged();

 private:
  void lay();
  Facts facts_;
  QString prefix_;
  QString draft_;
  TouchKeys arrivals_{8};
  TouchKeys everybody_{25};
};

/// What the check-in pages say of a class; `here` is asked for each member, as the outbox counts too.
TouchCheckIn::Facts facts_of(const wire::ClassView&, qint64 civil_now_ms, int utc_offset_s,
                             const std::function<bool(const wire::MemberView&)>& here);

}  // namespace floorwheel::screens
