// SPDX-License-Identifier: GPL-3.0-or-later
// The proposal for the people who are here: asked from the hub when it is wanted, asked anew when the people
// or the floor change; its cost and proof in sentences, and what one more slot buys.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QJsonObject>
#include <QObject>
#include <QString>
#include <QStringList>
#include <optional>

#include "kiosk/screens/instructor_flow.h"
#include "kiosk/screens/instructor_rows.h"

namespace floorwheel::screens {

class InstructorProposal : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Instructor.proposal")
  Q_PROPERTY(bool ready READ ready NOTIFY changed FINAL)
  Q_PROPERTY(
      QString progress READ progress NOTIFY changed FINAL)  // while it is looked for; "" once it is there
  Q_PROPERTY(QString refusal READ refusal NOTIFY changed FINAL)  // why there can be none; else ""
  Q_PROPERTY(QString title READ title NOTIFY changed FINAL)
  Q_PROPERTY(QString order READ order NOTIFY changed FINAL)
  Q_PROPERTY(QList<QString> cost READ cost NOTIFY changed FINAL)
  Q_PROPERTY(QList<QString> proof READ proof NOTIFY changed FINAL)
  Q_PROPERTY(QString firstProof READ firstProof NOTIFY changed FINAL)  // the sentence that matters most
  Q_PROPERTY(
      floorwheel::screens::RowModel* slotRows READ slotRows CONSTANT FINAL)  // slots, end, gain, shown, fits
  Q_PROPERTY(int slotCount READ slotCount NOTIFY changed FINAL)              // of the proposal shown
  Q_PROPERTY(int version READ version NOTIFY changed FINAL)                  // it would be published as
  Q_PROPERTY(QString showTime READ showTime NOTIFY changed FINAL)            // what the start begins with

 public:
  explicit InstructorProposal(InstructorFlow& flow, QObject* parent);

  [[nodiscard]] bool ready() const { return then_.has_value() && question_.isEmpty(); }
  [[nodiscard]] QString progress() const { return progress_; }
  [[nodiscard]] QString refusal() const { return refusal_; }
  [[nodiscard]] QString title() const;
  [[nodiscard]] QString order() const;
  [[nodiscard]] QStringList cost() const;
  [[nodiscard]] QStringList proof() const;
  [[nodiscard]] QString firstProof() const { return proof().value(0); }
  [[nodiscard]] RowModel* slotRows() const { return rows_; }
  [[nodiscard]] int slotCount() const;
  [[nodiscard]] int version() const { return flow_.saw() + 1; }
  [[nodiscard]] QString showTime() const;

  /// The class as the proposal would have it; null before there is one.
  [[nodiscard]] const wire::ClassView* then() const { return then_ ? &*then_ : nullptr; }

  Q_INVOKABLE void choose(int slotCount);  // another row of the table
  Q_INVOKABLE void askAnew();
  Q_INVOKABLE void publish();

 Q_SIGNALS:
  void changed();

 private:
  void look();
  void ask(int slot_count);
  void take_answer(const QJsonObject& body);
  void show_rows(const QJsonObject& body);
  /// The proposal, or once published the sheet itself.
  [[nodiscard]] const wire::ClassView* shown() const;

  InstructorFlow& flow_;
  RowModel* rows_;
  QString question_;   // under way, or ""
  QString published_;  // the publish told last
  QString proposal_;
  QString asked_for_;  // the people and floor it was asked for
  QString progress_;
  QString refusal_;
  QJsonObject table_;  // the answer that held the whole table
  std::optional<wire::ClassView> then_;
};

}  // namespace floorwheel::screens
