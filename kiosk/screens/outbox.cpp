// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/outbox.h"

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <sys/file.h>
#include <unistd.h>

#include <QDir>
#include <QFile>
#include <QJsonDocument>
#include <algorithm>

namespace floorwheel::screens {

namespace {

constexpr int gone_lines_max = 64;  // then the file is written anew

QByteArray line_of(const QJsonObject& object) {
  return QJsonDocument(object).toJson(QJsonDocument::Compact) + '\n';
}

QByteArray put_line(const Outbox::Entry& e) {
  return line_of(
      {{QStringLiteral("put"), e.id}, {QStringLiteral("kind"), e.kind}, {QStringLiteral("body"), e.body}});
}

bool write_all(int fd, const QByteArray& bytes) {
  qsizetype done = 0;
  while (done < bytes.size()) {
    const ssize_t n = ::write(fd, bytes.constData() + done, static_cast<size_t>(bytes.size() - done));
    if (n < 0 && errno == EINTR) continue;
    if (n <= 0) return false;
    done += n;
  }
  return true;
}

void sync_folder(const QString& folder) {
  const int fd = ::open(QFile::encodeName(folder).constData(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (fd < 0) return;
  ::fsync(fd);
  ::close(fd);
}

QString why() { return QString::fromLocal8Bit(strerror(errno)); }

}  // namespace

Outbox::~Outbox() {
  if (fd_ >= 0) ::close(fd_);
  if (lock_fd_ >= 0) ::close(lock_fd_);
}

QString Outbox::open(const QString& folder) {
  folder_ = folder;
  if (!QDir().mkpath(folder))
    return QStringLiteral("%1: cannot make this folder; give another with --state").arg(folder);
  lock_fd_ = ::open(QFile::encodeName(folder + QStringLiteral("/lock")).constData(),
                    O_RDWR | O_CREAT | O_CLOEXEC, 0600);
  if (lock_fd_ < 0)
    return QStringLiteral("%1: %2; the outbox needs a folder it may write").arg(folder, why());
  if (::flock(lock_fd_, LOCK_EX | LOCK_NB) != 0)
    return QStringLiteral("%1: another screen has this outbox open; give this one its own with --state")
        .arg(folder);

  const QString path = folder + QStringLiteral("/outbox.jsonl");
  QFile file(path);
  qint64 whole_bytes = 0;
  if (file.open(QIODevice::ReadOnly)) {
    while (!file.atEnd()) {
      const QByteArray line = file.readLine();
      if (!line.endsWith('\n')) break;  // cut short: it was never shown as kept
      whole_bytes += line.size();
      const QJsonObject o = QJsonDocument::fromJson(line).object();
      if (o.contains(QLatin1String("put"))) {
        entries_.append({o.value(QLatin1String("put")).toString(), o.value(QLatin1String("kind")).toString(),
                         o.value(QLatin1String("body")).toObject()});
      } else if (o.contains(QLatin1String("gone"))) {
        ++gone_lines_;
        drop(o.value(QLatin1String("gone")).toString());
      }
    }
    file.close();
  }
  fd_ = ::open(QFile::encodeName(path).constData(), O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600);
  if (fd_ < 0) return QStringLiteral("%1: %2; the outbox needs a file it may write").arg(path, why());
  if (::ftruncate(fd_, whole_bytes) != 0) return QStringLiteral("%1: %2").arg(path, why());
  sync_folder(folder_);
  return {};
}

bool Outbox::holds(const QString& id) const {
  return std::any_of(entries_.begin(), entries_.end(), [&](const Entry& e) { return e.id == id; });
}

bool Outbox::put(const Entry& entry) {
  if (fd_ < 0) return false;
  if (!append(put_line(entry))) return false;
  entries_.append(entry);
  return true;
}

void Outbox::confirmed(const QString& id) {
  if (fd_ < 0 || !holds(id)) return;
  drop(id);
  // Losing this line only means telling the hub once more, which changes nothing there.
  append(line_of({{QStringLiteral("gone"), id}}));
  if (++gone_lines_ > gone_lines_max) write_anew();
}

void Outbox::refused(const QString& id, const QString& code, const QString& text) {
  const auto entry =
      std::find_if(entries_.begin(), entries_.end(), [&](const Entry& e) { return e.id == id; });
  if (entry == entries_.end()) return;
  QFile file(folder_ + QStringLiteral("/refused.jsonl"));
  if (file.open(QIODevice::WriteOnly | QIODevice::Append)) {
    file.write(line_of({{QStringLiteral("id"), id},
                        {QStringLiteral("kind"), entry->kind},
                        {QStringLiteral("body"), entry->body},
                        {QStringLiteral("code"), code},
                        {QStringLiteral("text"), text}}));
    file.flush();
    ::fsync(file.handle());
  }
  confirmed(id);
}

bool Outbox::append(const QByteArray& line) {
  const off_t before = ::lseek(fd_, 0, SEEK_END);
  if (write_all(fd_, line) && ::fsync(fd_) == 0) {
    trouble_.clear();
    return true;
  }
  trouble_ = QStringLiteral("%1/outbox.jsonl: %2").arg(folder_, why());
  // Half a line must not swallow the next one.
  if (::ftruncate(fd_, before) != 0) trouble_ += QStringLiteral("; %1").arg(why());
  return false;
}

void Outbox::drop(const QString& id) {
  entries_.removeIf([&](const Entry& e) { return e.id == id; });
}

void Outbox::write_anew() {
  const QString path = folder_ + QStringLiteral("/outbox.jsonl");
  const QByteArray fresh = QFile::encodeName(path + QStringLiteral(".new"));
  const int fd = ::open(fresh.constData(), O_WRONLY | O_CREAT | O_TRUNC | O_APPEND | O_CLOEXEC, 0600);
  if (fd < 0) return;  // the long file still holds everything
  QByteArray all;
  for (const Entry& e : entries_) all += put_line(e);
  if (!write_all(fd, all) || ::fsync(fd) != 0 ||
      ::rename(fresh.constData(), QFile::encodeName(path).constData()) != 0) {
    ::close(fd);
    ::unlink(fresh.constData());
    return;
  }
  sync_folder(folder_);
  ::close(fd_);
  fd_ = fd;
  gone_lines_ = 0;
}

}  // namespace floorwheel::screens
