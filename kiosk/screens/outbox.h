// SPDX-License-Identifier: GPL-3.0-or-later
// The outbox: what this screen recorded and the hub has not yet confirmed, safe on this machine's disk
// before anything is shown as kept. One file of JSON lines, appended and fsynced: {"put":UUID,"kind","body"},
// later {"gone":UUID}. A last line cut short by a crash is ignored. Once most lines are gone the file is
// written anew beside itself, fsynced and renamed over. One owner: the folder is locked while it is open.
// What the hub refused for good is not told again but kept in refused.jsonl, so that a person can look.
#pragma once

#include <QJsonObject>
#include <QList>
#include <QString>

namespace floorwheel::screens {

class Outbox {
 public:
  struct Entry {
    QString id;  // the command's UUID
    QString kind;
    QJsonObject body;
  };

  Outbox() = default;
  ~Outbox();
  Outbox(const Outbox&) = delete;
  Outbox& operator=(const Outbox&) = delete;

  /// Opens or makes `folder` and reads what waits there. Returns what is wrong and what to do, or "".
  QString open(const QString& folder);
  [[nodiscard]] bool is_open() const { return fd_ >= 0; }

  /// True once the entry is on disk. False: nothing was kept (disk full, say), and `trouble` says why.
  bool put(const Entry&);
  /// The hub has confirmed it.
  void confirmed(const QString& id);
  /// The hub has refused it for good, with its reason.
  void refused(const QString& id, const QString& code, const QString& text);

  [[nodiscard]] const QList<Entry>& entries() const { return entries_; }
  [[nodiscard]] bool holds(const QString& id) const;
  [[nodiscard]] QString trouble() const { return trouble_; }

 private:
  bool append(const QByteArray& line);
  void drop(const QString& id);
  void write_anew();

  QString folder_;
  QList<Entry> entries_;  // in the order they were recorded
  QString trouble_;
  int fd_ = -1;
  int lock_fd_ = -1;
  int gone_lines_ = 0;
};

}  // namespace floorwheel::screens
