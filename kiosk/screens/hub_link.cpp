// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/hub_link.h"

#include <QCoreApplication>
#include <QJSEngine>
#include <QJsonDocument>
#include <QRandomGenerator>
#include <QSet>
#include <QTimer>
#include <QUuid>
#include <QWebSocket>
#include <algorithm>

#include "kiosk/screens/link_clock.h"
#include "kiosk/screens/outbox.h"
#include "kiosk/wire/message.h"

namespace floorwheel::screens {

namespace {

constexpr int retry_first_ms = 100;
constexpr int retry_most_ms = 5000;
constexpr int ping_every_ms = 2000;
constexpr int silence_most_ms = 7000;  // then the link counts as lost: three pings went unanswered
constexpr int probe_every_ms = 30000;
constexpr int busy_again_ms = 1000;

QString new_uuid() { return QUuid::createUuid().toString(QUuid::WithoutBraces); }

std::string compact(const QJsonObject& o) {
  return QJsonDocument(o).toJson(QJsonDocument::Compact).toStdString();
}

QJsonObject object_of(const std::string& text) {
  return QJsonDocument::fromJson(QByteArray::fromStdString(text)).object();
}

bool never_to_be_lost(const QString& kind) {
  return kind.startsWith(QLatin1String("check_in")) || kind.startsWith(QLatin1String("record.")) ||
         kind == QLatin1String("answer.today");
}

}  // namespace

class HubLink::Impl {
 public:
  explicit Impl(HubLink& owner) : link(owner) {
    QObject::connect(&socket, &QWebSocket::connected, &link, [this] { say_hello(); });
    QObject::connect(&socket, &QWebSocket::disconnected, &link, [this] { lost(); });
    QObject::connect(&socket, &QWebSocket::textMessageReceived, &link, [this](const QString& t) { read(t); });
    QObject::connect(&socket, &QWebSocket::pong, &link, [this] { silence.start(); });
    for (QTimer* t : {&retry, &silence, &busy}) t->setSingleShot(true);
    silence.setInterval(silence_most_ms);
    ping.setInterval(ping_every_ms);
    probe.setInterval(probe_every_ms);
    QObject::connect(&retry, &QTimer::timeout, &link, [this] { socket.open(url); });
    QObject::connect(&silence, &QTimer::timeout, &link, [this] { socket.abort(); });
    QObject::connect(&ping, &QTimer::timeout, &link, [this] { socket.ping(); });
    QObject::connect(&probe, &QTimer::timeout, &link, [this] { send_probes(); });
    QObject::connect(&busy, &QTimer::timeout, &link, [this] {
      if (connected) tell_outbox();
    });
  }

  void send(const wire::Message& m) { socket.sendTextMessage(QString::fromStdString(wire::encode(m))); }

  void say_hello() {
    silence.start();
    ping.start();
    send(wire::Hello{role, screen.toStdString(), hall.reached});
  }

  // A connection that failed and one that broke end here alike; the next try comes by itself.
  void lost() {
    ping.stop();
    probe.stop();
    silence.stop();
    const bool was = connected;
    connected = false;
    const int ceiling = std::min(retry_most_ms, retry_first_ms << std::min(failures, 10));
    ++failures;
    retry.start(QRandomGenerator::global()->bounded(ceiling + 1));
    const QSet<QString> unanswered = std::exchange(on_the_way, {});
    if (was) Q_EMIT link.connectedChanged();
    for (const QString& id : unanswered) refuse_away(id);
  }

  void refuse_away(const QString& id) {
    Q_EMIT link.refused(id, QStringLiteral("away"), HubLink::tr("The hub is away"),
                        HubLink::tr("It connects by itself; try again then"), {});
  }

  void read(const QString& text) {
    silence.start();
    const auto decoded = wire::decode(text.toStdString());
    const auto* message = std::get_if<wire::Message>(&decoded);
    if (message == nullptr) {
      const auto& t = std::get<wire::Trouble>(decoded);
      qWarning("hub at %s: %s; %s", qPrintable(url.toString()), t.text.c_str(), t.hint.c_str());
      return;
    }
    std::visit([this](const auto& m) { take(m); }, *message);
  }

  void take(const wire::Welcome& w) {
    // Another data folder: numbers reached in the old one say nothing about it.
    const bool another = !hub_id.empty() && hub_id != w.hub;
    hub_id = w.hub;
    clock.welcome(w, mono_now_ms());
    if (another && hall.reached > 0) {
      hall = {};
      Q_EMIT link.hallChanged();
      socket.close();
      return;
    }
    failures = 0;
    connected = true;
    ever = true;
    Q_EMIT link.connectedChanged();
    probe.start();
    send_probes();
    tell_outbox();
  }

  void take(const wire::Rows& rows) {
    for (const wire::Row& row : rows.rows) wire::fold(hall, row);
    hall.reached = std::max(hall.reached, rows.reached);
    Q_EMIT link.hallChanged();
  }

  void take(const wire::Receipt& r) {
    const QString id = QString::fromStdString(r.id);
    on_the_way.remove(id);
    const bool waited = outbox.holds(id);
    outbox.confirmed(id);
    if (waited) Q_EMIT link.waitingChanged();
    Q_EMIT link.receipt(id, r.seq, object_of(r.body));
  }

  void take(const wire::Answer& a) {
    const QString id = QString::fromStdString(a.id);
    on_the_way.remove(id);
    Q_EMIT link.answer(id, object_of(a.body));
  }

  void take(const wire::Underway& u) {
    Q_EMIT link.underway(QString::fromStdString(u.id), object_of(u.body));
  }

  void take(const wire::Trouble& t) {
    const QString id = QString::fromStdString(t.id);
    if (id.isEmpty()) {
      qWarning("hub at %s: %s; %s", qPrintable(url.toString()), t.text.c_str(), t.hint.c_str());
      return;
    }
    // The hub's own trouble passes; what a person recorded is told again.
    if ((t.code == "busy" || t.code == "store") && outbox.holds(id)) {
      busy.start(busy_again_ms);
      return;
    }
    on_the_way.remove(id);
    const QString code = QString::fromStdString(t.code);
    const QString text = QString::fromStdString(t.text);
    if (outbox.holds(id)) {
      outbox.refused(id, code, text);
      Q_EMIT link.waitingChanged();
    }
    Q_EMIT link.refused(id, code, text, QString::fromStdString(t.hint), object_of(t.body));
  }

  void take(const wire::Probe& p) {
    clock.probe_back(p.sent_ms, p.hub_boot_ms, mono_now_ms());
    if (--probes_to_send > 0) send(wire::Probe{mono_now_ms(), 0});
  }

  // What only a screen says to a hub.
  void take(const wire::Hello&) {}
  void take(const wire::Tell&) {}
  void take(const wire::Ask&) {}
  void take(const wire::Cancel&) {}

  void send_probes() {
    probes_to_send = LinkClock::probes_kept;
    send(wire::Probe{mono_now_ms(), 0});
  }

  void tell_outbox() {
    for (const Outbox::Entry& e : outbox.entries()) tell_now(e.id, e.kind, e.body);
  }

  void tell_now(const QString& id, const QString& kind, const QJsonObject& body) {
    send(wire::Tell{id.toStdString(), kind.toStdString(), compact(body)});
  }

  HubLink& link;
  QWebSocket socket;
  QTimer retry, silence, ping, probe, busy;
  QUrl url;
  wire::Role role = wire::Role::wall;
  const QString screen = new_uuid();
  std::string hub_id;
  wire::Hall hall;
  LinkClock clock;
  Outbox outbox;
  QSet<QString> on_the_way;  // commands and questions that are not in the outbox, not yet answered
  bool connected = false;
  bool ever = false;
  int failures = 0;
  int probes_to_send = 0;
};

HubLink::HubLink(QObject* parent) : QObject(parent), impl_(std::make_unique<Impl>(*this)) {}

HubLink::~HubLink() {
  // The socket's last signals must not find half an object.
  impl_->socket.disconnect(this);
  impl_->socket.abort();
}

HubLink* HubLink::create(QQmlEngine*, QJSEngine*) {
  QJSEngine::setObjectOwnership(&hub_link(), QJSEngine::CppOwnership);
  return &hub_link();
}

QString HubLink::keep_outbox_in(const QString& folder) {
  const QString trouble = impl_->outbox.open(folder);
  Q_EMIT waitingChanged();
  return trouble;
}

void HubLink::start(const QUrl& hub, wire::Role role) {
  impl_->url = hub;
  impl_->role = role;
  Q_EMIT connectedChanged();  // the address is known
  impl_->socket.open(hub);
}

bool HubLink::connected() const { return impl_->connected; }
bool HubLink::everConnected() const { return impl_->ever; }
QString HubLink::url() const { return impl_->url.toString(); }
int HubLink::waiting() const { return static_cast<int>(impl_->outbox.entries().size()); }
const wire::Hall& HubLink::hall() const { return impl_->hall; }
qint64 HubLink::classNowMs() const { return impl_->clock.class_ms(mono_now_ms()); }
qint64 HubLink::civilNowMs() const { return impl_->clock.civil_ms(mono_now_ms()); }
int HubLink::utcOffsetS() const { return impl_->clock.utc_offset_s(); }
double HubLink::speed() const { return impl_->clock.speed(); }

QString HubLink::tell(const QString& kind, const QJsonObject& body) {
  const QString id = new_uuid();
  const bool on_disk = never_to_be_lost(kind) && impl_->outbox.put({id, kind, body});
  if (on_disk) {
    Q_EMIT waitingChanged();
  } else if (!impl_->connected) {
    // Later, so that the caller knows the id by then.
    QMetaObject::invokeMethod(
        this, [this, id] { impl_->refuse_away(id); }, Qt::QueuedConnection);
    return id;
  } else {
    impl_->on_the_way.insert(id);
  }
  if (impl_->connected) impl_->tell_now(id, kind, body);
  return id;
}

QString HubLink::ask(const QString& kind, const QJsonObject& body) {
  const QString id = new_uuid();
  if (!impl_->connected) {
    QMetaObject::invokeMethod(
        this, [this, id] { impl_->refuse_away(id); }, Qt::QueuedConnection);
    return id;
  }
  impl_->on_the_way.insert(id);
  impl_->send(wire::Ask{id.toStdString(), kind.toStdString(), compact(body)});
  return id;
}

void HubLink::cancel(const QString& id) {
  impl_->on_the_way.remove(id);
  if (impl_->connected) impl_->send(wire::Cancel{id.toStdString()});
}

bool HubLink::waits(const QString& id) const { return impl_->outbox.holds(id); }

HubLink& hub_link() {
  static HubLink* const link = new HubLink(QCoreApplication::instance());
  return *link;
}

}  // namespace floorwheel::screens
