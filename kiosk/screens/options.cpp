// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/options.h"

#include <QCommandLineParser>
#include <QDir>
#include <QStandardPaths>

namespace floorwheel::screens {

namespace {

Leave wrong(const QString& what, const QString& right) {
  return {2, QStringLiteral("floorwheel-screen: %1; %2").arg(what, right)};
}

// "1920x1080" in whole or broken numbers.
std::optional<QSizeF> size_from(const QString& text) {
  const QStringList parts = text.split(QLatin1Char('x'));
  if (parts.size() != 2) return std::nullopt;
  bool ok_w = false;
  bool ok_h = false;
  const QSizeF size(parts[0].toDouble(&ok_w), parts[1].toDouble(&ok_h));
  if (!ok_w || !ok_h || size.width() < 1 || size.height() < 1 || size.width() > 20000 ||
      size.height() > 20000)
    return std::nullopt;
  return size;
}

QString default_state(const QString& role) {
  // Qt 6.4 has no place for state of its own in QStandardPaths.
  const QString base =
      qEnvironmentVariable("XDG_STATE_HOME", QDir::homePath() + QStringLiteral("/.local/state"));
  return base + QStringLiteral("/floorwheel/") + role;
}

}  // namespace

std::variant<Options, Leave> options_from(const QStringList& arguments) {
  QCommandLineParser parser;
  parser.setApplicationDescription(QStringLiteral(
      "One screen of the gym floor.\n\nExample: floorwheel-screen wall --hub ws://127.0.0.1:7413\n"
      "A picture: floorwheel-screen wall --shot wall.png --at 'slot 3 work 20'"));
  parser.addPositionalArgument(QStringLiteral("ROLE"), QStringLiteral("wall, touch, instructor or desk"));
  const QCommandLineOption help(QStringLiteral("help"), QStringLiteral("This text."));
  const QCommandLineOption hub(QStringLiteral("hub"),
                               QStringLiteral("The hub's address (ws://127.0.0.1:7413)."),
                               QStringLiteral("URL"));
  const QCommandLineOption size(QStringLiteral("size"), QStringLiteral("Size of the window in px."),
                                QStringLiteral("WxH"));
  const QCommandLineOption mm(QStringLiteral("mm"), QStringLiteral("Size of the panel in mm."),
                              QStringLiteral("WxH"));
  const QCommandLineOption lang(QStringLiteral("lang"), QStringLiteral("Language, such as en."),
                                QStringLiteral("L"));
  const QCommandLineOption shot(
      QStringLiteral("shot"),
      QStringLiteral(
          "Saves a picture as PNG, its texts beside it as .txt, then leaves; each needs its --at."),
      QStringLiteral("FILE"));
  const QCommandLineOption at(
      QStringLiteral("at"),
      QStringLiteral("When: now, held, 'slot 3 work 20', 'slot 3 change 5', 'warm-up 10' (seconds elapsed)."),
      QStringLiteral("MOMENT"));
  const QCommandLineOption live(
      QStringLiteral("live"),
      QStringLiteral("Waits for each moment on the class clock, even if it could be computed."));
  const QCommandLineOption hands(
      QStringLiteral("hands"),
      QStringLiteral(
          "Plays a person: lines 'tap NAME', 'type TEXT', 'await NAME', 'shot FILE'; - reads them live."),
      QStringLiteral("FILE|-"));
  const QCommandLineOption patience(QStringLiteral("patience"),
                                    QStringLiteral("Seconds that a tap or await may take (20)."),
                                    QStringLiteral("S"));
  const QCommandLineOption stay(QStringLiteral("stay"),
                                QStringLiteral("Stays after the last step or picture."));
  const QCommandLineOption state(QStringLiteral("state"),
                                 QStringLiteral("Folder of the outbox ($XDG_STATE_HOME/floorwheel/ROLE)."),
                                 QStringLiteral("DIR"));
  const QCommandLineOption frames(QStringLiteral("frames"),
                                  QStringLiteral("Writes what each frame cost, as CSV, when leaving."),
                                  QStringLiteral("FILE"));
  const QCommandLineOption site(
      QStringLiteral("site"),
      QStringLiteral("The site's own words on the wall: in an emergency, and the last of a class (TOML)."),
      QStringLiteral("FILE"));
  parser.addOptions({site, help, hub, size, mm, lang, shot, at, live, hands, patience, stay, state, frames});
  if (!parser.parse(arguments))
    return wrong(parser.errorText(), QStringLiteral("'floorwheel-screen --help' lists the options"));
  if (parser.isSet(help)) return Leave{0, parser.helpText()};

  Options o;
  const QStringList roles = parser.positionalArguments();
  if (roles.size() != 1)
    return wrong(QStringLiteral("give one ROLE"), QStringLiteral("wall, touch, instructor or desk"));
  const auto role = wire::role_from(roles.first().toStdString());
  if (!role || *role == wire::Role::tool)
    return wrong(QStringLiteral("unknown role '%1'").arg(roles.first()),
                 QStringLiteral("wall, touch, instructor or desk"));
  o.role = *role;
  if (parser.isSet(hub)) {
    o.hub = QUrl(parser.value(hub), QUrl::StrictMode);
    if (!o.hub.isValid() || o.hub.scheme() != QLatin1String("ws") || o.hub.host().isEmpty())
      return wrong(QStringLiteral("--hub '%1' is no address of a hub").arg(parser.value(hub)),
                   QStringLiteral("ws://127.0.0.1:7413 is one"));
  }
  for (const auto& [option, name] : {std::pair(&size, "--size"), std::pair(&mm, "--mm")}) {
    if (!parser.isSet(*option)) continue;
    const auto value = size_from(parser.value(*option));
    if (!value)
      return wrong(QStringLiteral("%1 '%2' is no size").arg(QLatin1String(name), parser.value(*option)),
                   QStringLiteral("1920x1080 is one"));
    if (option == &size)
      o.size = value->toSize();
    else
      o.mm = *value;
  }
  const QStringList files = parser.values(shot);
  const QStringList moments = parser.values(at);
  if (files.size() != moments.size())
    return wrong(QStringLiteral("%1 --shot and %2 --at").arg(files.size()).arg(moments.size()),
                 QStringLiteral("each picture needs its moment"));
  for (qsizetype i = 0; i < files.size(); ++i) {
    const auto moment = moment_from(moments[i]);
    if (!moment)
      return wrong(
          QStringLiteral("--at '%1' is no moment").arg(moments[i]),
          QStringLiteral(
              "now, held, 'slot 3 work 20', 'slot 3 change 5', 'slot 3 break 5' or 'warm-up 10' are"));
    o.shots.append({files[i], moments[i], *moment});
  }
  if (parser.isSet(patience)) {
    bool ok = false;
    o.patience_s = parser.value(patience).toInt(&ok);
    if (!ok || o.patience_s < 1)
      return wrong(QStringLiteral("--patience '%1'").arg(parser.value(patience)),
                   QStringLiteral("whole seconds from 1"));
  }
  o.site = parser.value(site);
  o.lang = parser.value(lang);
  o.hands = parser.value(hands);
  o.frames = parser.value(frames);
  o.state = parser.isSet(state) ? parser.value(state) : default_state(roles.first());
  o.live = parser.isSet(live);
  o.stay = parser.isSet(stay);
  return o;
}

}  // namespace floorwheel::screens
