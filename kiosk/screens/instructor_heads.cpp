// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/instructor_heads.h"

#include <QJsonArray>
#include <algorithm>

#include "kiosk/screens/hub_link.h"
#include "kiosk/screens/instructor_words.h"

namespace floorwheel::screens {

namespace {
constexpr int page_names = 18;
constexpr int guests_most = 99;
}  // namespace

InstructorHeads::InstructorHeads(InstructorFlow& flow, InstructorNew& newcomers, QObject* parent)
    : QObject(parent),
      flow_(flow),
      newcomers_(newcomers),
      names_(new RowModel({"member", "name", "here", "visit"}, this)) {
  connect(&newcomers_, &InstructorNew::changed, this, &InstructorHeads::show);
  connect(&hub_link(), &HubLink::hallChanged, this, &InstructorHeads::read_hall);
  connect(&flow_, &InstructorFlow::pageChanged, this, &InstructorHeads::show);
  connect(&hub_link(), &HubLink::receipt, this, [this](const QString& id) {
    if (id != counted_) return;
    // From here on the hall says who is here; what was tapped before must not outlive it.
    mine_.clear();
    guests_.reset();
    show();
  });
  read_hall();
}

void InstructorHeads::read_hall() {
  if (class_ != flow_.class_id()) {
    class_ = flow_.class_id();
    mine_.clear();
    guests_.reset();
    page_ = 0;
  }
  show();
}

QList<const wire::MemberView*> InstructorHeads::named() const {
  QList<const wire::MemberView*> out;
  if (flow_.view() == nullptr) return out;
  for (const wire::MemberView& m : flow_.view()->members)
    if (!m.guest) out.append(&m);
  return out;
}

bool InstructorHeads::is_here(const wire::MemberView& m) const {
  return mine_.value(words::text(m.id), m.here);
}

int InstructorHeads::tapped() const {
  const auto all = named();
  return static_cast<int>(std::ranges::count_if(all, [&](const auto* m) { return is_here(*m); }));
}

bool InstructorHeads::takes_all() const { return mine_.isEmpty() && tapped() == 0; }

int InstructorHeads::guests() const {
  if (guests_) return *guests_;
  if (flow_.view() == nullptr) return 0;
  return static_cast<int>(
      std::ranges::count_if(flow_.view()->members, [](const wire::MemberView& m) { return m.guest; }));
}

int InstructorHeads::total() const {
  return guests() + (takes_all() ? static_cast<int>(named().size()) : tapped());
}

QString InstructorHeads::summary() const {
  if (flow_.view() == nullptr) return {};
  int places = 0;
  for (const wire::StationView& s : flow_.view()->stations) places += s.closed_now ? 0 : s.capacity;
  const int left = places - total();
  const QString seats = words::seats_text(left);
  if (takes_all()) return tr("Nobody has checked in. %1 on the list. %2").arg(named().size()).arg(seats);
  return tr("%1 tapped, %2 more, %3 in all. %4").arg(tapped()).arg(guests()).arg(total()).arg(seats);
}

QString InstructorHeads::mainText() const {
  if (takes_all()) return tr("All %1 are here").arg(total());
  return total() == 1 ? tr("1 is here") : tr("%1 are here").arg(total());
}

int InstructorHeads::pages() const { return pages_of(named().size(), page_names); }

QString InstructorHeads::pageText() const { return words::page_text(page_, pages()); }

void InstructorHeads::show() {
  const auto all = named();
  page_ = std::clamp(page_, 0, pages() - 1);
  QList<QVariantMap> rows;
  for (const auto* m : all.mid(qsizetype{page_} * page_names, page_names))
    rows.append({{QStringLiteral("member"), words::text(m->id)},
                 {QStringLiteral("name"), words::text(m->shown_as)},
                 {QStringLiteral("here"), is_here(*m)},
                 {QStringLiteral("visit"), newcomers_.visit_word(words::text(m->id))}});
  show_in_places(*names_, rows);
  Q_EMIT changed();
}

void InstructorHeads::tap(const QString& member) {
  for (const auto* m : named())
    if (words::text(m->id) == member) mine_[member] = !is_here(*m);
  show();
}

void InstructorHeads::moreGuests() {
  guests_ = std::min(guests_most, guests() + 1);
  show();
}

void InstructorHeads::fewerGuests() {
  guests_ = std::max(0, guests() - 1);
  show();
}

void InstructorHeads::nextPage() {
  page_ = (page_ + 1) % pages();
  show();
}

void InstructorHeads::count() {
  QJsonArray here;
  for (const auto* m : named())
    if (takes_all() || is_here(*m)) here.append(words::text(m->id));
  counted_ = flow_.tell(QStringLiteral("heads.count"),
                        {{QStringLiteral("here"), here}, {QStringLiteral("guests"), guests()}});
  if (flow_.stage() != QLatin1String("heads")) flow_.want_proposal();
  flow_.leave();
}

}  // namespace floorwheel::screens
