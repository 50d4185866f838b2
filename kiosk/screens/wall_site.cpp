// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/wall_site.h"

#include <toml++/toml.h>
#include <QCoreApplication>
#include <QFile>
#include <string_view>

namespace floorwheel::screens {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Wall)
};

constexpr std::size_t entries_most = 4;

QString text(std::string_view s) { return QString::fromUtf8(s.data(), static_cast<qsizetype>(s.size())); }

/// What is wrong and where, thrown to the one door of this file.
struct Wrong {
  toml::source_region where;
  QString what;
};

QString string_at(const toml::table& t, std::string_view key) {
  const toml::node* n = t.get(key);
  if (n == nullptr) throw Wrong{t.source(), QStringLiteral("'%1' is missing; say it").arg(text(key))};
  const auto value = n->value<std::string>();
  if (!value || value->empty())
    throw Wrong{n->source(), QStringLiteral("'%1' is not a text; write %1 = \"...\"").arg(text(key))};
  return text(*value);
}

void only(const toml::table& t, std::initializer_list<std::string_view> keys) {
  for (const auto& [key, node] : t) {
    const std::string_view name = key.str();
    if (std::find(keys.begin(), keys.end(), name) != keys.end()) continue;
    QStringList known;
    for (std::string_view k : keys) known.append(text(k));
    throw Wrong{
        key.source(),
        QStringLiteral("unknown key '%1'; known are %2").arg(text(name), known.join(QStringLiteral(", ")))};
  }
}

const toml::array* list_at(const toml::table& t, std::string_view key) {
  const toml::node* n = t.get(key);
  if (n == nullptr) return nullptr;
  const toml::array* list = n->as_array();
  if (list == nullptr || !list->is_array_of_tables())
    throw Wrong{n->source(), QStringLiteral("'%1' is not a list; write [[%1]]").arg(text(key))};
  if (list->size() > entries_most)
    throw Wrong{n->source(), QStringLiteral("'%1' has %2 entries; the wall has room for %3")
                                 .arg(text(key))
                                 .arg(list->size())
                                 .arg(entries_most)};
  return list;
}

WallSite from_table(const toml::table& root) {
  only(root, {"keep", "emergency", "last_word"});
  WallSite site = plain_site();
  if (root.contains("keep")) site.keep = string_at(root, "keep");
  if (const toml::array* list = list_at(root, "emergency")) {
    site.emergency.clear();
    site.first_aid = -1;
    for (const toml::node& n : *list) {
      const toml::table& t = *n.as_table();
      only(t, {"head", "text", "first_aid"});
      if (t["first_aid"].value_or(false)) site.first_aid = static_cast<int>(site.emergency.size());
      site.emergency.push_back({string_at(t, "head"), string_at(t, "text")});
    }
  }
  if (const toml::array* list = list_at(root, "last_word")) {
    site.last_words.clear();
    for (const toml::node& n : *list) {
      const toml::table& t = *n.as_table();
      only(t, {"head", "text"});
      site.last_words.push_back({string_at(t, "head"), string_at(t, "text")});
    }
  }
  return site;
}

}  // namespace

WallSite plain_site() {
  WallSite site;
  site.emergency = {{Words::tr("Ask"), Words::tr("The instructor")},
                    {Words::tr("Follow"), Words::tr("Local rules")}};
  site.keep = Words::tr("Keep the way clear. Listen to the instructor.");
  site.last_words = {{Words::tr("Loads back"), Words::tr("where they were")},
                     {Words::tr("Station wiped"), Words::tr("as you found it")},
                     {Words::tr("A set not kept?"), Words::tr("touch screen, all day")}};
  return site;
}

WallSite read_site(const QString& file, QString* trouble) {
  QFile in(file);
  if (!in.open(QIODevice::ReadOnly)) {
    *trouble = QStringLiteral("%1: %2; give a file that can be read").arg(file, in.errorString());
    return plain_site();
  }
  const QByteArray bytes = in.readAll();
  const auto place = [&](const toml::source_region& r) {
    return QStringLiteral("%1:%2:%3: ").arg(file).arg(r.begin.line).arg(r.begin.column);
  };
  try {
    return from_table(
        toml::parse(std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size()))));
  } catch (const toml::parse_error& e) {
    *trouble = place(e.source()) + text(e.description()) + QStringLiteral("; write TOML 1.0");
  } catch (const Wrong& w) {
    *trouble = place(w.where) + w.what;
  }
  return plain_site();
}

}  // namespace floorwheel::screens
