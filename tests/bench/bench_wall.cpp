// SPDX-License-Identifier: GPL-3.0-or-later
// What the wall costs as it is used: a real hub, a class of 12 stations and 20 members, the wall process at
// 1920 x 1080 with the software renderer, at the usual speed of the class clock. For each phase: the work of
// a frame (afterAnimating to frameSwapped), frames a second, and the process's share of one core.
//   changeover   p99 of a frame's work   limit 33 ms
//   work         share of one core       limit 15 %
// Use: FLOORWHEEL_BIN=build/bin bench_wall [SLOTS]
#include <QCoreApplication>
#include <QFile>
#include <QJsonArray>
#include <QProcess>
#include <QTemporaryDir>
#include <QThread>
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <map>
#include <vector>

#include "tests/support/hub_process.h"

namespace {

constexpr int stations = 12;
constexpr int members = 20;
constexpr int lead_in_s = 5;
constexpr int work_s = 30;
constexpr int change_s = 25;
constexpr int slots_watched_by_default = 2;

QString class_toml() {
  const QStringList exercises{"goblet-squat", "seated-row",  "press-up",    "side-plank",
                              "deadlift",     "split-squat", "pull-down",   "bench-press",
                              "dead-bug",     "leg-curl",    "biceps-curl", "shoulder-press"};
  const QString letters = QStringLiteral("ABCDEFGHJKLM");
  QString toml =
      QStringLiteral(
          "[class]\nname = \"Bench ring\"\nwork_s = %1\nchange_s = %2\nlead_in_s = %3\nslots = 12\n")
          .arg(work_s)
          .arg(change_s)
          .arg(lead_in_s);
  for (int s = 0; s < stations; ++s)
    toml += QStringLiteral(
                "\n[[station]]\nid = \"%1\"\nexercise = \"bench-%3\"\ncapacity = 2\nat = [%2.0, 1.0]\n")
                .arg(letters[s])
                .arg(2 * s)
                .arg(s);
  const QStringList groups{"chest", "quadriceps", "lats"};
  for (int s = 0; s < stations; ++s)
    toml += QStringLiteral(
                "\n[[exercise]]\nid = \"bench-%1\"\nname = \"%2\"\nprimary = [\"%3\"]\nassisting = []\n"
                "kind = \"compound\"\n")
                .arg(s)
                .arg(QString(exercises[s]).replace(QLatin1Char('-'), QLatin1Char(' ')))
                .arg(groups[s % groups.size()]);
  for (int m = 1; m <= members; ++m)
    toml +=
        QStringLiteral("\n[[member]]\nid = \"m%1\"\nshown_as = \"Member %1.\"\nlevel = \"novice\"\n").arg(m);
  return toml;
}

struct Phase {
  std::vector<std::pair<double, double>> worst;  // ms, and seconds since the phase began
  std::vector<double> work_ms;
  std::vector<double> cpu_ms;  // of the process from frame to frame: tells a slow frame from a busy machine
  double seconds = 0;          // of wall time between its frames
  double cpu_s = 0;
};

std::map<QString, Phase> read_frames(const QString& file) {
  std::map<QString, Phase> phases;
  QFile in(file);
  if (!in.open(QIODevice::ReadOnly)) return phases;
  in.readLine();
  QString last_phase;
  double last_at = 0;
  double last_cpu = 0;
  double begun = 0;
  while (!in.atEnd()) {
    const QList<QByteArray> cells = in.readLine().trimmed().split(',');
    if (cells.size() < 4) continue;
    const QString phase = QString::fromUtf8(cells[3]);
    const double at = cells[0].toDouble() / 1e6;
    const double cpu = cells[2].toDouble() / 1e6;
    Phase& p = phases[phase];
    if (phase != last_phase) begun = at;
    p.worst.emplace_back(cells[1].toDouble() / 1e3, at - begun);
    p.work_ms.push_back(cells[1].toDouble() / 1e3);
    if (phase == last_phase) {
      p.seconds += at - last_at;
      p.cpu_s += cpu - last_cpu;
      p.cpu_ms.push_back((cpu - last_cpu) * 1e3);
    }
    last_phase = phase;
    last_at = at;
    last_cpu = cpu;
  }
  return phases;
}

double percentile(std::vector<double> all, double part) {
  if (all.empty()) return 0;
  std::sort(all.begin(), all.end());
  return all[std::min(all.size() - 1, static_cast<std::size_t>(part * static_cast<double>(all.size())))];
}

int fail(const QString& text) {
  std::fprintf(stderr, "bench_wall: %s\n", qPrintable(text));
  return 1;
}

}  // namespace

int main(int argc, char** argv) {
  QCoreApplication app(argc, argv);
  floorwheel::tests::HubProcess hub;
  if (!hub.start()) return fail(hub.trouble());
  const auto told = [&](const char* kind, const QJsonObject& body) {
    return hub.tell(QLatin1String(kind), body);
  };
  const QJsonObject added = told("class.add", {{"toml", class_toml()}});
  const QString id = added["body"].toObject()["class"].toString();
  if (id.isEmpty()) return fail(QStringLiteral("the class was not taken: ") + added["text"].toString());
  told("class.open", {{"class", id}});
  QJsonArray here;
  for (int m = 1; m <= members; ++m) here.append(QStringLiteral("m%1").arg(m));
  told("heads.count", {{"class", id}, {"here", here}, {"guests", 0}});
  const QJsonObject answer = hub.ask(QStringLiteral("proposal"), {{"class", id}, {"slots", 12}});
  const QJsonObject proposal = answer.contains("body") ? answer["body"].toObject() : answer;
  told("class.publish", {{"class", id}, {"saw", 0}, {"proposal", proposal["proposal"]}});

  QTemporaryDir folder;
  const QString frames = folder.filePath(QStringLiteral("frames.csv"));
  QProcess wall;
  wall.setProcessChannelMode(QProcess::ForwardedErrorChannel);
  QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
  environment.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("offscreen"));
  environment.insert(QStringLiteral("QT_QUICK_BACKEND"), QStringLiteral("software"));
  wall.setProcessEnvironment(environment);
  wall.start(floorwheel::tests::bin(QStringLiteral("floorwheel-screen")),
             {"wall", "--hub", hub.url().toString(), "--size", "1920x1080", "--frames", frames, "--stay",
              "--state", folder.filePath(QStringLiteral("state"))});
  if (!wall.waitForStarted()) return fail(wall.errorString());
  QThread::sleep(3);  // a person starts a class some time after the wall is on
  const QJsonObject started = told("class.start", {{"class", id}, {"saw", 1}});
  if (started.contains("code")) return fail(started["text"].toString());
  const int slots_watched = argc > 1 ? std::max(1, std::atoi(argv[1])) : slots_watched_by_default;
  const int seconds = lead_in_s + slots_watched * (work_s + change_s) - 2;
  std::printf("watching for %d s\n", seconds);
  std::fflush(stdout);
  QThread::sleep(static_cast<unsigned long>(seconds));
  wall.terminate();
  if (!wall.waitForFinished(10000)) return fail(QStringLiteral("the wall does not leave"));
  hub.stop();

  auto phases = read_frames(frames);
  std::printf("%-10s %7s %6s %8s %8s %8s %12s %10s\n", "phase", "frames", "fps", "p50 ms", "p99 ms", "max ms",
              "cpu p99 ms", "one core");
  for (const char* name : {"lead-in", "work", "change"}) {
    const Phase& p = phases[QLatin1String(name)];
    if (p.work_ms.empty() || p.seconds <= 0) return fail(QStringLiteral("no frames of %1").arg(name));
    std::printf("%-10s %7zu %6.1f %8.2f %8.2f %8.2f %12.2f %9.1f%%\n", name, p.work_ms.size(),
                static_cast<double>(p.work_ms.size()) / p.seconds, percentile(p.work_ms, 0.5),
                percentile(p.work_ms, 0.99), percentile(p.work_ms, 1), percentile(p.cpu_ms, 0.99),
                100 * p.cpu_s / p.seconds);
  }
  auto& worst = phases[QStringLiteral("change")].worst;
  std::sort(worst.rbegin(), worst.rend());
  std::printf("slowest frames of the changeover, ms at s:");
  for (std::size_t i = 0; i < std::min<std::size_t>(10, worst.size()); ++i)
    std::printf(" %.0f at %.2f", worst[i].first, worst[i].second);
  std::printf("\n");
  const double p99 = percentile(phases[QStringLiteral("change")].work_ms, 0.99);
  const Phase& work = phases[QStringLiteral("work")];
  const double share = 100 * work.cpu_s / work.seconds;
  std::printf("changeover p99 %.2f ms (limit 33): %s\nwork %.1f %% of one core (limit 15): %s\n", p99,
              p99 <= 33 ? "kept" : "MISSED", share, share <= 15 ? "kept" : "MISSED");
  return p99 <= 33 && share <= 15 ? 0 : 1;
}
