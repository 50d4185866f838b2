// SPDX-License-Identifier: GPL-3.0-or-later
// Figures of the training rules on a hub's store of 1,000 members with two years of records (1,040,000 sets,
// made by chance from a printed seed):
//   member_page       dose of the week, next loads, trends of one member from a warm store   limit 20 ms
//   weekly_table      dose of all members in one week from a warm store                      limit 1000 ms
//   dose_two_years    dose of all members and weeks from records in memory                   limit 1000 ms
//   check             `floorwheel check` of seven days of twelve exercises, whole process     limit 50 ms
// Both wall time and the CPU time of this process and those it ran are printed; the limit is held against the
// wall.
// Use: bench_training [SEED]; floorwheel lies in ../bin beside this program's folder, or in $FLOORWHEEL_BIN
#include <fcntl.h>
#include <spawn.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <functional>
#include <random>
#include <string>
#include <vector>

#include "kiosk/files/exercise_table.h"
#include "kiosk/hub/command.h"
#include "kiosk/store/journal.h"
#include "kiosk/store/people.h"
#include "kiosk/store/store.h"
#include "kiosk/store/training_sets.h"
#include "kiosk/wire/kinds.h"
#include "scheduler/training/dose.h"

namespace {

using namespace floorwheel;
namespace fs = std::filesystem;

constexpr int members = 1000;
constexpr int weeks = 104;
constexpr std::int32_t first_monday = 19'793;  // 2024-03-11

double cpu_ms() {
  const auto ms = [](const timeval& t) {
    return 1e3 * static_cast<double>(t.tv_sec) + 1e-3 * static_cast<double>(t.tv_usec);
  };
  double all = 0;
  for (const auto who : {RUSAGE_SELF, RUSAGE_CHILDREN}) {
    rusage usage{};
    ::getrusage(who, &usage);
    all += ms(usage.ru_utime) + ms(usage.ru_stime);
  }
  return all;
}

struct Figure {
  std::string name;
  double limit_ms;
  std::vector<double> wall{};
  std::vector<double> cpu{};

  void measure(const std::function<void()>& work) {
    const double cpu_before = cpu_ms();
    const auto start = std::chrono::steady_clock::now();
    work();
    wall.push_back(
        std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
    cpu.push_back(cpu_ms() - cpu_before);
  }
  bool print() {
    std::ranges::sort(wall);
    std::ranges::sort(cpu);
    const bool good = wall.back() <= limit_ms;
    std::printf("%-15s worst %8.2f ms, median %8.2f ms; CPU worst %8.2f ms; limit %.0f ms%s\n", name.c_str(),
                wall.back(), wall[wall.size() / 2], cpu.back(), limit_ms, good ? "" : "  OVER");
    return good;
  }
};

store::Uuid numbered(std::int64_t n) {
  store::Uuid id{};
  for (std::size_t i = 0; i < 8; ++i) id.bytes[i] = static_cast<std::uint8_t>(n >> (8 * i));
  return id;
}

std::string member_id(int m) { return "m" + std::to_string(10'000 + m); }

/// Two visits a week of five sets each, with loads that rise and reserves that are often not recorded.
void fill(store::Database& db, std::mt19937_64& random) {
  std::vector<const Exercise*> exercises;
  for (const auto& [id, e] : files::shipped_exercises()) exercises.push_back(&e);
  const auto below = [&](std::uint64_t n) { return static_cast<int>(random() % n); };
  store::Transaction all(db);
  const store::Uuid class_id = numbered(1);
  ClassSpec c;
  c.name = "bench";
  store::add_class(db, class_id, c);
  store::JournalRow row;
  row.kind = "class.add";
  row.body = "{}";
  const std::int64_t seq = store::append(db, row);
  std::int64_t set = 0;
  for (int m = 0; m < members; ++m) {
    MemberSpec spec;
    spec.id = spec.shown_as = member_id(m);
    store::add_member(db, spec, 0);
    const auto at = static_cast<std::size_t>(below(exercises.size()));
    for (int week = 0; week < weeks; ++week)
      for (int visit = 0; visit < 2; ++visit) {
        const training::Day day{first_monday + 7 * week + 3 * visit};
        for (std::size_t s = 0; s < 5; ++s) {
          const Exercise& e = *exercises[(at + s) % exercises.size()];
          const int load_hg =
              e.loads_hg.empty() ? 0 : e.loads_hg[static_cast<std::size_t>(week) * e.loads_hg.size() / weeks];
          ++set;
          db.statement(
                "INSERT INTO set_record(id, seq, class, member, station, exercise, slot, done, load_hg, "
                "reps, rir,"
                " civil_ms, local_day, iso_week) VALUES(?, ?, ?, ?, 'A', ?, ?, 1, ?, ?, ?, ?, ?, ?)")
              .bind(numbered(1000 + set), seq, class_id, spec.id, e.id, static_cast<int>(s) + 1, load_hg,
                    e.reps[0] + below(6), below(3) == 0 ? std::optional<int>{} : std::optional<int>{below(4)},
                    std::int64_t{day.number} * 86'400'000 + 60'000 * set % 3'600'000, text_of(day),
                    text_of(training::iso_week_of(day)))
              .run();
        }
      }
  }
  all.commit();
  std::printf("%lld sets of %d members\n", static_cast<long long>(set), members);
}

boost::json::object ask(hub::Room& room, const char* kind, const boost::json::object& body) {
  return std::get<boost::json::object>(
      hub::question_function(kind)(room, hub::Fields(body, wire::find_question(kind)->fields)));
}

bool measure(store::Database& db, std::mt19937_64& random) {
  const wire::Hall hall;
  hub::PlanShelf plans;
  hub::Room room{.database = db,
                 .hall = hall,
                 .exercises = files::shipped_exercises(),
                 .plans = plans,
                 .command = {},
                 .at_ms = 0,
                 .now = {},
                 .health = {}};
  const std::string today = text_of(training::Day{first_monday + 7 * weeks - 3});

  Figure page{"member_page", 20};
  std::size_t next = 0;
  for (int i = 0; i < 200; ++i) {
    const boost::json::object body{{"member", member_id(static_cast<int>(random() % members))},
                                   {"today", today}};
    if (i == 0) ask(room, "member.page", body);  // warm
    page.measure([&] { next += ask(room, "member.page", body).at("next").as_array().size(); });
  }
  Figure table{"weekly_table", 1000};
  std::size_t rows = 0;
  for (int i = 0; i < 6; ++i) {
    const auto work = [&] { rows = ask(room, "dose", {{"today", today}}).at("rows").as_array().size(); };
    if (i == 0) work();  // warm
    table.measure(work);
  }
  std::vector<training::SetRecord> all;
  for (int m = 0; m < members; ++m)
    for (auto& r : store::sets_of_member(db, member_id(m))) all.push_back(std::move(r));
  Figure memory{"dose_two_years", 1000};
  std::size_t all_rows = 0;
  for (int i = 0; i < 3; ++i) memory.measure([&] { all_rows = training::dose(all, room.exercises).size(); });
  const bool pages = page.print();
  const bool tables = table.print();
  const bool years = memory.print();
  std::printf("%zu next loads, %zu rows in a week, %zu rows in two years\n", next, rows, all_rows);
  return pages && tables && years && next > 0 && rows > 0;
}

/// A programme as large as anybody writes: seven days of twelve exercises.
std::string large_programme() {
  std::string toml = "[programme]\nname = \"Bench\"\nlevel = \"advanced\"\nweeks = 8\n";
  const ExerciseTable& table = files::shipped_exercises();
  auto e = table.begin();
  for (const char* day : {"Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"}) {
    toml += "[[day]]\nname = \"" + std::string(day) + "\"\n";
    for (int i = 0; i < 12; ++i) {
      toml += "[[day.exercise]]\nexercise = \"" + e->first +
              "\"\nworking_sets = 3\nreps = [8, 12]\nrir = [1, 3]\nrest_s = 90\nwarm_up_sets = 1\n";
      if (++e == table.end()) e = table.begin();
    }
  }
  return toml;
}

/// Runs a program to its end; its exit code, -1 where it did not run. Its output goes to /dev/null.
int exit_code_of(std::vector<std::string> words) {
  std::vector<char*> arguments;
  for (std::string& w : words) arguments.push_back(w.data());
  arguments.push_back(nullptr);
  posix_spawn_file_actions_t quiet;
  ::posix_spawn_file_actions_init(&quiet);
  ::posix_spawn_file_actions_addopen(&quiet, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
  pid_t child = 0;
  const int trouble = ::posix_spawn(&child, arguments[0], &quiet, nullptr, arguments.data(), environ);
  ::posix_spawn_file_actions_destroy(&quiet);
  int status = 0;
  if (trouble != 0 || ::waitpid(child, &status, 0) != child || !WIFEXITED(status)) return -1;
  return WEXITSTATUS(status);
}

bool measure_check(const fs::path& program, const fs::path& folder) {
  const fs::path file = folder / "bench.programme.toml";
  std::ofstream(file) << large_programme();
  Figure check{"check", 50};
  bool ran = true;
  for (int i = 0; i < 41; ++i) {
    const auto work = [&] {
      const int code = exit_code_of({program, "check", file});
      ran = ran && (code == 0 || code == 1);  // 1: the rules find something
    };
    if (i == 0)
      work();  // warm
    else
      check.measure(work);
  }
  if (!ran) std::printf("%s check does not run\n", program.c_str());
  return check.print() && ran;
}

}  // namespace

int main(int argc, char** argv) {
  const std::uint64_t seed = argc > 1 ? std::strtoull(argv[1], nullptr, 10) : 1;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  std::mt19937_64 random(seed);
  const fs::path folder = fs::temp_directory_path() / ("bench_training." + std::to_string(::getpid()));
  bool good = false;
  {
    auto opened = store::Store::open(folder);
    if (const auto* error = std::get_if<store::StoreError>(&opened)) {
      std::fprintf(stderr, "%s %s\n", error->what.c_str(), error->right.c_str());
      return 2;
    }
    store::Database& db = std::get<std::unique_ptr<store::Store>>(opened)->database();
    fill(db, random);
    good = measure(db, random);
  }
  const char* bin = std::getenv("FLOORWHEEL_BIN");
  const fs::path programs = bin ? fs::path(bin) : fs::absolute(argv[0]).parent_path().parent_path() / "bin";
  good = measure_check(programs / "floorwheel", folder) && good;
  std::error_code ignored;
  fs::remove_all(folder, ignored);
  return good ? 0 : 1;
}
