// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/kiosk/hub/past_classes.h"

#include <QDateTime>
#include <QSaveFile>

#include "tests/kiosk/hub/hub_client.h"

namespace floorwheel::testing {
namespace {

constexpr qint64 day_ms = 86'400'000;

void set_clock(const QString& file, const QDate& day) {
  const qint64 civil = QDateTime(day, QTime(18, 30), Qt::UTC).toMSecsSinceEpoch();
  QSaveFile out(file);
  const QByteArray text =
      "past\n" + QByteArray::number(civil % (1000 * day_ms)) + "\n" + QByteArray::number(civil) + "\n0\n";
  if (!out.open(QIODevice::WriteOnly) || out.write(text) != text.size() || !out.commit())
    qFatal("cannot write %s", qPrintable(file));
}

void must(const Reply& r) {
  if (!r.done) qFatal("%s %s", qPrintable(r.text), qPrintable(r.hint));
}

QString play(Screen& teacher, const QString& toml, const PastClass& p) {
  const QString c = open_class(teacher, toml);
  for (const QString& m : p.here) must(teacher.tell("check_in", {{"class", c}, {"member", m}}));
  if (!p.hurts.isEmpty())
    must(teacher.tell("answer.today",
                      {{"class", c}, {"member", p.hurts}, {"answer", "hurts"}, {"spot", p.spot}}));
  must(publish(teacher, c, 0));
  must(teacher.tell("class.start", {{"class", c}, {"saw", 1}}));
  for (const PastSet& s : p.sets)
    must(teacher.tell("record.add", {{"class", c},
                                     {"member", s.member},
                                     {"station", s.station},
                                     {"slot", s.slot},
                                     {"done", true},
                                     {"load_hg", s.load_hg},
                                     {"reps", s.reps}}));
  must(teacher.tell("class.end", {{"class", c}}));
  return c;
}

}  // namespace

QStringList play_past_classes(const QString& data, const QString& toml, const QList<PastClass>& classes) {
  QStringList ids;
  if (classes.isEmpty()) return ids;
  const QTemporaryDir folder;
  const QString clock = folder.filePath("clock");
  set_clock(clock, classes.first().day);
  TestHub hub(data, {"--clock", clock});
  if (!hub.listening()) qFatal("no hub: %s", qPrintable(hub.errors()));
  Screen teacher(hub.url(), wire::Role::instructor);
  for (const PastClass& p : classes) {
    set_clock(clock, p.day);
    ids << play(teacher, toml, p);
  }
  if (!hub.end()) qFatal("the hub of the past does not end");
  return ids;
}

}  // namespace floorwheel::testing
