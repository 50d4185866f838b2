// SPDX-License-Identifier: GPL-3.0-or-later
// What was kept at this screen: tells the hub of check-ins and records, remembers them until the hall shows
// them (so that a tick is there at once, also while the hub is away), and holds the last one for an undo.
// The line it gives QML names the person and never a value: the next person may read it.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QJsonObject>
#include <QObject>
#include <QString>
#include <QTimer>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <tuple>

#include "kiosk/wire/hall.h"

namespace floorwheel::screens {

/// What was wrong and what would be right, as the hub says it, in one line.
QString trouble_line(const QString& text, const QString& hint);

class TouchKept : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by TouchVisit")
  // "" (nothing), "record", "not_done", "check_in", "undone", "refused"
  Q_PROPERTY(QString what READ what NOTIFY changed FINAL)
  Q_PROPERTY(QString alias READ alias NOTIFY changed FINAL)
  Q_PROPERTY(
      QString trouble READ trouble NOTIFY changed FINAL)  // of "refused": what was wrong, what is right
  Q_PROPERTY(bool undoable READ undoable NOTIFY changed FINAL)
  Q_PROPERTY(int lineMs READ lineMs WRITE setLineMs NOTIFY changed FINAL)  // how long the line stays, 8 s

 public:
  /// Sends a command and returns its UUID, as HubLink::tell does.
  using Tell = std::function<QString(const QString& kind, const QJsonObject& body)>;
  explicit TouchKept(Tell, QObject* parent = nullptr);

  void check_in(const std::string& class_id, const std::string& member, const QString& alias);
  /// Takes the last check-in back ('I am not ...').
  void not_me();
  /// Records a set, or corrects the record that now counts for this member and slot.
  void keep(const wire::ClassView&, wire::SetRecord, const QString& alias);
  /// The record that counts: what this screen told last, else what the hall has. Null: none.
  [[nodiscard]] const wire::SetRecord* record_of(const wire::ClassView&, const std::string& member,
                                                 int slot) const;
  /// Checked in by the hall or, not yet confirmed, at this screen.
  [[nodiscard]] bool here(const wire::ClassView&, const wire::MemberView&) const;

  Q_INVOKABLE void undo();

  void on_receipt(const QString& id, qint64 seq);
  void on_refused(const QString& id, const QString& text, const QString& hint);
  void on_hall(qint64 reached);

  [[nodiscard]] QString what() const { return what_; }
  [[nodiscard]] QString alias() const { return alias_; }
  [[nodiscard]] QString trouble() const { return trouble_; }
  [[nodiscard]] bool undoable() const { return last_.has_value(); }
  [[nodiscard]] int lineMs() const { return line_.interval(); }
  void setLineMs(int ms);

 Q_SIGNALS:
  void changed();
  void told();  // what record_of or here say has changed

 private:
  using Key = std::tuple<std::string, std::string, int>;  // class, member, slot (0: the check-in)
  struct Pending {
    QString id{};  // of the command
    QString alias{};
    qint64 seq = 0;  // once confirmed
    wire::SetRecord record{};
    bool here = false;
  };
  struct Undoable {
    Key key;
    QString record;  // "" for a check-in
    std::optional<wire::SetRecord> before;
  };
  QString send(const Key&, Pending, const QString& kind, const QJsonObject& body);
  void say(const QString& what, const QString& alias);

  Tell tell_;
  std::map<Key, Pending> pending_;
  std::optional<Undoable> last_;
  QString what_, alias_, trouble_;
  QTimer line_;
};

}  // namespace floorwheel::screens
