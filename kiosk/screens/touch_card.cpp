// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/touch_card.h"

#include <QLocale>
#include <algorithm>

namespace floorwheel::screens {
namespace {

constexpr int rir_most = 4;     // '4 or more'
constexpr int reps_most = 999;  // also the seconds of a hold

QString kg(std::optional<int> hg) {
  if (!hg) return {};
  return QLocale().toString(*hg / 10.0, 'f', *hg % 10 == 0 ? 0 : 1);
}

}  // namespace

TouchCard::TouchCard(QObject* parent) : QObject(parent) {}

void TouchCard::open(const QString& alias, std::optional<touch::PlannedSet> set) {
  alias_ = alias;
  set_ = std::move(set);
  mark_ = TouchMark::none;
  next_ = {};
  start_from_plan();
  Q_EMIT changed();
}

void TouchCard::refresh(std::optional<touch::PlannedSet> set, TouchMark mark, const touch::NextPlace& next,
                        std::vector<TouchKey> others) {
  if (set != set_) {
    set_ = std::move(set);
    start_from_plan();
  }
  mark_ = mark;
  next_ = next;
  others_.show(std::move(others));
  Q_EMIT changed();
}

void TouchCard::start_from_plan() {
  load_chosen_ = false;
  chosen_hg_.reset();
  load_hg_ = set_ ? set_->load_hg : std::nullopt;
  reps_ = plannedReps();
  rir_ = plannedRir();
  std::vector<TouchKey> keys;
  if (set_ && set_->may_go_without && !set_->offers_hg.empty()) keys.push_back({{}, tr("No load"), {}, {}});
  if (set_)
    for (const int hg : set_->offers_hg)
      keys.push_back({QString::number(hg), tr("%1 kg").arg(kg(hg)), {}, {}});
  loads_.show(std::move(keys));
  loads_.first();
}

wire::SetRecord TouchCard::as_planned() const {
  return record_with(set_ && set_->load_hg ? set_->load_hg : chosen_hg_, plannedReps(), plannedRir());
}

wire::SetRecord TouchCard::as_shown() const { return record_with(load_hg_, reps_, rir_); }

wire::SetRecord TouchCard::not_done() const {
  wire::SetRecord r = record_with({}, 0, 0);
  r.done = false;
  r.rir.reset();
  return r;
}

wire::SetRecord TouchCard::record_with(std::optional<int> load_hg, int reps, int rir) const {
  wire::SetRecord r;
  if (!set_) return r;
  r.member = set_->member;
  r.station = set_->station;
  r.exercise = set_->exercise;
  r.slot = set_->slot;
  r.load_hg = load_hg;
  r.reps = reps;
  if (!hold()) r.rir = rir;
  return r;
}

void TouchCard::stepLoad(int direction) {
  if (!set_ || !load_hg_) return;
  load_hg_ = touch::step_load(set_->offers_hg, *load_hg_, direction);
  Q_EMIT changed();
}

void TouchCard::stepReps(int direction) {
  reps_ = std::clamp(reps_ + direction * reps_step(), 0, reps_most);
  Q_EMIT changed();
}

void TouchCard::setRir(int rir) {
  rir_ = std::clamp(rir, 0, rir_most);
  Q_EMIT changed();
}

void TouchCard::chooseLoad(const QString& hg) {
  if (!set_) return;
  chosen_hg_ = hg.isEmpty() ? std::nullopt : std::optional<int>(hg.toInt());
  load_hg_ = chosen_hg_;
  load_chosen_ = true;
  Q_EMIT changed();
}

QString TouchCard::letter() const { return set_ ? QString::fromStdString(set_->letter) : QString(); }
QString TouchCard::exercise() const { return set_ ? QString::fromStdString(set_->exercise_name) : QString(); }

QString TouchCard::mark() const {
  return mark_ == TouchMark::kept       ? QStringLiteral("kept")
         : mark_ == TouchMark::not_done ? QStringLiteral("not done")
                                        : QString();
}

bool TouchCard::loadLine() const { return load_hg_.has_value() && set_ && !set_->offers_hg.empty(); }
bool TouchCard::loadAsked() const {
  return set_ && !set_->load_hg && !set_->offers_hg.empty() && !load_chosen_;
}
QString TouchCard::load() const { return kg(load_hg_); }
QString TouchCard::plannedLoad() const { return kg(set_ && set_->load_hg ? set_->load_hg : chosen_hg_); }
int TouchCard::plannedRir() const { return set_ ? std::clamp(set_->rir, 0, rir_most) : 0; }
bool TouchCard::heavier() const {
  return set_ && load_hg_ && touch::step_load(set_->offers_hg, *load_hg_, 1) != *load_hg_;
}
bool TouchCard::lighter() const {
  return set_ && load_hg_ && touch::step_load(set_->offers_hg, *load_hg_, -1) != *load_hg_;
}
bool TouchCard::fewer() const { return reps_ > 0; }
bool TouchCard::more() const { return reps_ < reps_most; }

QString TouchCard::next() const {
  switch (next_.what) {
    case touch::NextPlace::What::unknown:
      return QStringLiteral("unknown");
    case touch::NextPlace::What::station:
      return QStringLiteral("station");
    case touch::NextPlace::What::waits:
      return QStringLiteral("waits");
    case touch::NextPlace::What::nothing_more:
      return QStringLiteral("nothing more");
  }
  return {};
}

}  // namespace floorwheel::screens
