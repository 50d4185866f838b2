// SPDX-License-Identifier: GPL-3.0-or-later
// Which page the instructor sees and what is done at one press: the class decides (chosen, counted,
// published, running, held, stopped, run out), and a page the instructor opened beside it lies on top until
// it is left or the class moves on. Commands that need no preview are told here.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QElapsedTimer>
#include <QJsonObject>
#include <QObject>
#include <QSet>
#include <QString>
#include <QTimer>

#include "kiosk/wire/hall.h"

namespace floorwheel::screens {

class InstructorFlow : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Instructor.flow")
  // Of the class: "class", "heads", "proposal", "start", "run", "held", "stopped", "ended".
  // Opened beside it: "classes", "floor", "compare", "change", "pick", "preview", "end", "training", "talk",
  // "write", "new", "programmes", "findings".
  Q_PROPERTY(QString page READ page NOTIFY pageChanged FINAL)
  Q_PROPERTY(
      QString stage READ stage NOTIFY pageChanged FINAL)  // the page of the class, whatever lies on top
  Q_PROPERTY(
      int step READ step NOTIFY pageChanged FINAL)  // of the four words: 0 Class .. 3 Start, 4 all done
  Q_PROPERTY(bool live READ live NOTIFY pageChanged FINAL)  // the class was started and has not been closed
  Q_PROPERTY(bool held READ held NOTIFY pageChanged FINAL)
  Q_PROPERTY(QString title READ title NOTIFY changed FINAL)
  Q_PROPERTY(QString subtitle READ subtitle NOTIFY changed FINAL)
  Q_PROPERTY(QString notice READ notice NOTIFY noticeChanged FINAL)  // what was refused and why; else ""
  Q_PROPERTY(QString screensText READ screensText NOTIFY changed FINAL)
  Q_PROPERTY(QString screensNote READ screensNote NOTIFY changed FINAL)
  Q_PROPERTY(QString readyText READ readyText NOTIFY changed FINAL)  // before a class: what is connected
  // What the site says is to be done, as its walls show it: "head: text".
  Q_PROPERTY(QList<QString> emergency READ emergency CONSTANT FINAL)
  // Stopped, and long enough that a second press in the same fright does not end it.
  Q_PROPERTY(bool canBeOver READ canBeOver NOTIFY pageChanged FINAL)
  Q_PROPERTY(int sinceStop READ sinceStop NOTIFY sinceStopChanged FINAL)  // s
  Q_PROPERTY(int stepSeconds READ stepSeconds CONSTANT FINAL)             // of 'give them time'

 public:
  explicit InstructorFlow(QObject* parent);

  /// The class at hand, or null.
  [[nodiscard]] const wire::ClassView* view() const;
  [[nodiscard]] QString class_id() const;
  [[nodiscard]] int saw() const;

  [[nodiscard]] QString page() const { return page_; }
  [[nodiscard]] QString stage() const { return stage_; }
  [[nodiscard]] int step() const;
  [[nodiscard]] bool live() const;
  [[nodiscard]] bool held() const;
  [[nodiscard]] QString title() const;
  [[nodiscard]] QString subtitle() const;
  [[nodiscard]] QString notice() const { return notice_; }
  [[nodiscard]] QString screensText() const { return screens_text_; }
  [[nodiscard]] QString screensNote() const { return screens_note_; }
  [[nodiscard]] QString readyText() const { return ready_text_; }
  [[nodiscard]] bool canBeOver() const;
  [[nodiscard]] QList<QString> emergency() const;
  [[nodiscard]] int sinceStop() const;
  [[nodiscard]] static int stepSeconds() { return 15; }

  /// Tells a command of the class at hand and shows a refusal as a notice. `saw` is added.
  QString tell(const QString& kind, QJsonObject fields = {});
  /// What stood on the published sheet no longer fits: a proposal is wanted before the start.
  void want_proposal();
  void set_notice(const QString& text);

  Q_INVOKABLE void open(const QString& page);
  Q_INVOKABLE void leave();  // back to the page of the class
  Q_INVOKABLE void start();
  Q_INVOKABLE void hold();
  Q_INVOKABLE void resume();
  Q_INVOKABLE void skip();
  Q_INVOKABLE void giveTime();
  Q_INVOKABLE void repeatSlot();
  Q_INVOKABLE void stop();
  Q_INVOKABLE void over();
  Q_INVOKABLE void end();

 Q_SIGNALS:
  void pageChanged();
  void changed();  // anything that is shown of the class
  void noticeChanged();
  void sinceStopChanged();

 private:
  void look();  // reads the hall and the clock and decides the page
  void show(const QString& page);
  [[nodiscard]] QString stage_now() const;
  [[nodiscard]] bool sheet_fits() const;
  void ask_health();
  void take_health(const QJsonObject& body);

  QString page_ = QStringLiteral("class");
  QString stage_ = QStringLiteral("class");
  QString over_it_;  // the page on top, or ""
  QString class_;
  bool wanted_ = false;        // want_proposal
  int wanted_at_version_ = 0;  // ... until a later one is published
  bool local_stop_ = false;    // stop and help pressed here; the hub may not know
  QElapsedTimer since_stop_;
  QString notice_;
  QString health_;
  QString screens_text_;
  QString screens_note_;
  QString ready_text_;
  QSet<QString> told_;
  QTimer health_timer_;
  QTimer fright_timer_;
};

}  // namespace floorwheel::screens
