// SPDX-License-Identifier: GPL-3.0-or-later
// The hand card: one set of one person, as the class plans it, with what the steppers show. It holds values
// and tells nobody; TouchVisit keeps what it gives. Loads are whole hectograms, shown as kilograms.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QString>
#include <optional>

#include "kiosk/screens/touch_keys.h"
#include "kiosk/screens/touch_rules.h"

namespace floorwheel::screens {

class TouchCard : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by TouchVisit")
  Q_PROPERTY(QString alias READ alias NOTIFY changed FINAL)
  Q_PROPERTY(bool hasSet READ hasSet NOTIFY changed FINAL)  // false: nothing to record yet
  Q_PROPERTY(QString letter READ letter NOTIFY changed FINAL)
  Q_PROPERTY(QString exercise READ exercise NOTIFY changed FINAL)
  Q_PROPERTY(int slot READ slot NOTIFY changed FINAL)
  Q_PROPERTY(int set READ set NOTIFY changed FINAL)
  Q_PROPERTY(int sets READ sets NOTIFY changed FINAL)
  Q_PROPERTY(QString mark READ mark NOTIFY changed FINAL)         // "", "kept" or "not done"
  Q_PROPERTY(bool hold READ hold NOTIFY changed FINAL)            // repetitions are seconds, no reserve
  Q_PROPERTY(bool loadLine READ loadLine NOTIFY changed FINAL)    // loads stand at this station
  Q_PROPERTY(bool loadAsked READ loadAsked NOTIFY changed FINAL)  // no load is planned: choose one first
  Q_PROPERTY(QString load READ load NOTIFY changed FINAL)         // "16", "27.5"; "" where none
  Q_PROPERTY(QString plannedLoad READ plannedLoad NOTIFY changed FINAL)  // of 'As planned'; "" where none
  Q_PROPERTY(int reps READ reps NOTIFY changed FINAL)
  Q_PROPERTY(int plannedReps READ plannedReps NOTIFY changed FINAL)
  Q_PROPERTY(int rir READ rir NOTIFY changed FINAL)  // 0 to 4; 4 is '4 or more'
  Q_PROPERTY(int plannedRir READ plannedRir NOTIFY changed FINAL)
  Q_PROPERTY(bool heavier READ heavier NOTIFY changed FINAL)  // a heavier load stands there
  Q_PROPERTY(bool lighter READ lighter NOTIFY changed FINAL)
  Q_PROPERTY(bool fewer READ fewer NOTIFY changed FINAL)
  Q_PROPERTY(bool more READ more NOTIFY changed FINAL)
  // "unknown", "station", "waits" or "nothing more", with the place's letter and exercise
  Q_PROPERTY(QString next READ next NOTIFY changed FINAL)
  Q_PROPERTY(QString nextLetter READ nextLetter NOTIFY changed FINAL)
  Q_PROPERTY(QString nextExercise READ nextExercise NOTIFY changed FINAL)
  Q_PROPERTY(floorwheel::screens::TouchKeys* loads READ loads CONSTANT
                 FINAL)  // the lightest first; id is the load in hectograms
  Q_PROPERTY(floorwheel::screens::TouchKeys* others READ others CONSTANT
                 FINAL)  // this member's sets begun, the latest first; id is the slot

 public:
  explicit TouchCard(QObject* parent = nullptr);

  /// Another person's set, or none; the steppers start from the plan.
  void open(const QString& alias, std::optional<touch::PlannedSet>);
  /// The same set after the hall changed: the steppers stay unless the plan of this set is another one.
  void refresh(std::optional<touch::PlannedSet>, TouchMark, const touch::NextPlace&,
               std::vector<TouchKey> others);
  [[nodiscard]] const std::optional<touch::PlannedSet>& planned() const { return set_; }

  /// What 'As planned', 'Keep this' and 'Did not do this set' record.
  [[nodiscard]] wire::SetRecord as_planned() const;
  [[nodiscard]] wire::SetRecord as_shown() const;
  [[nodiscard]] wire::SetRecord not_done() const;

  Q_INVOKABLE void stepLoad(int direction);
  Q_INVOKABLE void stepReps(int direction);
  Q_INVOKABLE void setRir(int rir);
  Q_INVOKABLE void chooseLoad(const QString& hg);  // "" is no load

  [[nodiscard]] QString alias() const { return alias_; }
  [[nodiscard]] bool hasSet() const { return set_.has_value(); }
  [[nodiscard]] QString letter() const;
  [[nodiscard]] QString exercise() const;
  [[nodiscard]] int slot() const { return set_ ? set_->slot : 0; }
  [[nodiscard]] int set() const { return set_ ? set_->set : 0; }
  [[nodiscard]] int sets() const { return set_ ? set_->sets : 0; }
  [[nodiscard]] QString mark() const;
  [[nodiscard]] bool hold() const { return set_ && set_->hold; }
  [[nodiscard]] bool loadLine() const;
  [[nodiscard]] bool loadAsked() const;
  [[nodiscard]] QString load() const;
  [[nodiscard]] QString plannedLoad() const;
  [[nodiscard]] int reps() const { return reps_; }
  [[nodiscard]] int plannedReps() const { return set_ ? set_->reps : 0; }
  [[nodiscard]] int rir() const { return rir_; }
  [[nodiscard]] int plannedRir() const;
  [[nodiscard]] bool heavier() const;
  [[nodiscard]] bool lighter() const;
  [[nodiscard]] bool fewer() const;
  [[nodiscard]] bool more() const;
  [[nodiscard]] QString next() const;
  [[nodiscard]] QString nextLetter() const { return QString::fromStdString(next_.letter); }
  [[nodiscard]] QString nextExercise() const { return QString::fromStdString(next_.exercise_name); }
  [[nodiscard]] TouchKeys* loads() { return &loads_; }
  [[nodiscard]] TouchKeys* others() { return &others_; }

 Q_SIGNALS:
  void changed();

 private:
  void start_from_plan();
  [[nodiscard]] int reps_step() const { return hold() ? 5 : 1; }
  [[nodiscard]] wire::SetRecord record_with(std::optional<int> load_hg, int reps, int rir) const;

  QString alias_;
  std::optional<touch::PlannedSet> set_;
  TouchMark mark_ = TouchMark::none;
  touch::NextPlace next_;
  std::optional<int> load_hg_;
  std::optional<int> chosen_hg_;  // in place of a planned load
  bool load_chosen_ = false;
  int reps_ = 0;
  int rir_ = 0;
  TouchKeys loads_{20};
  TouchKeys others_{15};
};

}  // namespace floorwheel::screens
