// SPDX-License-Identifier: GPL-3.0-or-later
// The wall's view model: from the hub link's hall and the class time to what QML places. Texts, tags and
// discs are models compared by key; lines are lists of points for PathMultiline. Only `hand` changes ten
// times a second; everything else at most once a second.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QPolygonF>
#include <QTimer>
#include <QVariant>

#include "kiosk/screens/wall_face.h"
#include "kiosk/screens/wall_items.h"
#include "kiosk/screens/wall_rows.h"
#include "kiosk/screens/wall_site.h"

namespace floorwheel::screens {

class WallView : public QObject {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QString state READ state NOTIFY faceChanged FINAL)  // "work", "change", ... as WallState
  Q_PROPERTY(bool held READ held NOTIFY faceChanged FINAL)
  Q_PROPERTY(bool stopped READ stopped NOTIFY faceChanged FINAL)
  Q_PROPERTY(bool goFace READ goFace NOTIFY faceChanged FINAL)
  Q_PROPERTY(bool inShow READ inShow NOTIFY faceChanged FINAL)
  Q_PROPERTY(bool moves READ moves NOTIFY faceChanged FINAL)   // texts may move to their new places
  Q_PROPERTY(bool grows READ grows NOTIFY faceChanged FINAL)   // last seconds: tags grow
  Q_PROPERTY(QString rail READ rail NOTIFY faceChanged FINAL)  // plain | sleepers | beads | chevrons
  Q_PROPERTY(QString tone READ tone NOTIFY faceChanged FINAL)  // active | go | held
  Q_PROPERTY(bool plate READ plate NOTIFY faceChanged FINAL)   // the waiting place is shown
  Q_PROPERTY(bool smallChevrons READ smallChevrons NOTIFY faceChanged FINAL)  // ring, while people work
  Q_PROPERTY(bool pointing READ pointing NOTIFY faceChanged FINAL)            // there is a hand
  Q_PROPERTY(double hand READ hand NOTIFY handChanged FINAL)  // degrees, 0 at the gate, clockwise

  Q_PROPERTY(QString headline READ headline NOTIFY faceChanged FINAL)
  Q_PROPERTY(double headlineX READ headlineX NOTIFY faceChanged FINAL)
  Q_PROPERTY(double headlineWidth READ headlineWidth NOTIFY faceChanged FINAL)
  Q_PROPERTY(double headlineTracking READ headlineTracking NOTIFY faceChanged FINAL)
  Q_PROPERTY(double headlineSpace READ headlineSpace NOTIFY faceChanged FINAL)

  Q_PROPERTY(QAbstractItemModel* texts READ texts CONSTANT FINAL)    // columns and corners
  Q_PROPERTY(QAbstractItemModel* middle READ middle CONSTANT FINAL)  // inside the wheel
  Q_PROPERTY(QAbstractItemModel* tags READ tags CONSTANT FINAL)
  Q_PROPERTY(QAbstractItemModel* discs READ discs CONSTANT FINAL)
  // lists of poly-lines, for PathMultiline
  Q_PROPERTY(QVariantList lines READ lines NOTIFY linesChanged FINAL)      // brackets and leaders
  Q_PROPERTY(QVariant shownLine READ shownLine NOTIFY linesChanged FINAL)  // of the station in turn
  Q_PROPERTY(QVariantList dots READ dots NOTIFY linesChanged FINAL)
  Q_PROPERTY(QVariantList railCuts READ railCuts NOTIFY wheelChanged FINAL)  // angles, 0 to 360
  Q_PROPERTY(
      QVariantList chevronsSmall READ chevronsSmall NOTIFY wheelChanged FINAL)  // ring, while people work
  // of each gap, a list of chevrons
  Q_PROPERTY(QVariantList chevronsAhead READ chevronsAhead NOTIFY chevronsChanged FINAL)
  Q_PROPERTY(QVariantList chevronsBehind READ chevronsBehind NOTIFY chevronsChanged FINAL)

  Q_PROPERTY(QString sinceStop READ sinceStop NOTIFY sinceStopChanged FINAL)  // "2:14"
  Q_PROPERTY(QVariantList emergency READ emergency NOTIFY faceChanged FINAL)  // {head, text, firstAid}
  Q_PROPERTY(QString keep READ keep NOTIFY faceChanged FINAL)

 public:
  explicit WallView(QObject* parent = nullptr);

  /// Shows a face instead of the present one: for tests and the bench. From then on it is no longer live.
  void show(const WallFace&, const QString& note, const QString& time_of_day);
  void set_site(WallSite);

  [[nodiscard]] QString state() const;
  [[nodiscard]] bool held() const { return face_.held; }
  [[nodiscard]] bool stopped() const { return face_.state == WallState::stopped; }
  [[nodiscard]] bool goFace() const { return shows_go_face(face_); }
  [[nodiscard]] bool inShow() const { return face_.state == WallState::show; }
  [[nodiscard]] bool moves() const { return moves_; }
  [[nodiscard]] bool grows() const { return moves_ && face_.state == WallState::last; }
  [[nodiscard]] QString rail() const;
  [[nodiscard]] QString tone() const;
  [[nodiscard]] bool plate() const { return items_.plate; }
  [[nodiscard]] bool smallChevrons() const;
  [[nodiscard]] bool pointing() const;
  [[nodiscard]] double hand() const { return hand_; }
  [[nodiscard]] QString headline() const { return items_.headline.label; }
  [[nodiscard]] double headlineX() const { return items_.headline.x; }
  [[nodiscard]] double headlineWidth() const { return items_.headline.width; }
  [[nodiscard]] double headlineTracking() const { return items_.headline.spacing; }
  [[nodiscard]] double headlineSpace() const { return items_.headline.word_spacing; }
  [[nodiscard]] WallRows* texts() { return &texts_; }
  [[nodiscard]] WallRows* middle() { return &middle_; }
  [[nodiscard]] WallRows* tags() { return &tags_; }
  [[nodiscard]] WallRows* discs() { return &discs_; }
  [[nodiscard]] QVariantList lines() const { return many(items_.lines); }
  [[nodiscard]] QVariant shownLine() const { return lists(items_.shown_line); }
  [[nodiscard]] QVariantList dots() const { return many(items_.dots); }
  [[nodiscard]] QVariantList railCuts() const;
  [[nodiscard]] QVariantList chevronsSmall() const;
  [[nodiscard]] QVariantList chevronsAhead() const { return many(ahead_); }
  [[nodiscard]] QVariantList chevronsBehind() const { return many(behind_); }
  [[nodiscard]] QString sinceStop() const;
  [[nodiscard]] QVariantList emergency() const;
  [[nodiscard]] QString keep() const { return site_.keep; }
  [[nodiscard]] const WallItems& items() const { return items_; }
  [[nodiscard]] const WallFace& face() const { return face_; }

 Q_SIGNALS:
  void faceChanged();
  void handChanged();
  void linesChanged();
  void wheelChanged();
  void chevronsChanged();
  void sinceStopChanged();
  /// A second of a ring changeover has gone by: the chevrons step once.
  void chevronsStepped();

 private:
  static QVariant lists(const QList<QPolygonF>&);
  static QVariantList many(const QList<QList<QPolygonF>>&);
  void read();
  void move_hand();
  void place();
  void place_chevrons(bool second_passed);

  WallText measure_;
  WallSite site_;
  WallFace face_;
  WallItems items_;
  QString note_;
  QString time_of_day_;
  QString since_stop_;
  double hand_ = 0;
  int page_ = 0;
  int last_second_ = -1;
  bool moves_ = false;
  bool calm_before_ = true;
  bool live_ = true;
  QList<QList<QPolygonF>> ahead_;  // of each gap
  QList<QList<QPolygonF>> behind_;
  WallRows texts_;
  WallRows middle_;
  WallRows tags_;
  WallRows discs_;
  QTimer page_timer_;
};

/// The site's words for every wall of this process; set by main before the engine.
WallSite& wall_site();

}  // namespace floorwheel::screens
