// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/jobs/ledger_settings.h"

#include "core/storage/saver.h"

#include <QDir>
#include <QFileInfo>

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>

namespace borewright {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t largestFile = 1024UL * 1024;
constexpr std::array passwords{"passwordFile", "keyring", "asked"};
constexpr std::array units{"ofEachJob", "inch", "metric"};
constexpr int highestPort = 65535;

// Each reads a field that may be missing; false where it is something else.
bool readText(const Json& json, const char* key, QString& text) {
    const auto field = json.find(key);
    if (field == json.end()) return true;
    if (!field->is_string()) return false;
    text = QString::fromStdString(field->get<std::string>());
    return true;
}

bool readFlag(const Json& json, const char* key, bool& flag) {
    const auto field = json.find(key);
    if (field == json.end()) return true;
    if (!field->is_boolean()) return false;
    flag = field->get<bool>();
    return true;
}

template<class Words, class Value>
bool readWord(const Json& json, const char* key, const Words& words, Value& value) {
    QString word = QString::fromLatin1(words.at(static_cast<std::size_t>(value)));
    if (!readText(json, key, word)) return false;
    const auto place = std::ranges::find(words, word.toStdString());
    if (place == words.end()) return false;
    value = static_cast<Value>(place - words.begin());
    return true;
}

bool readPort(const Json& json, int& port) {
    const auto field = json.find("port");
    if (field == json.end()) return true;
    if (!field->is_number_integer() || *field < 1 || *field > highestPort) return false;
    port = field->get<int>();
    return true;
}

bool readWaiting(const Json& json, QStringList& waiting) {
    const auto field = json.find("waiting");
    if (field == json.end()) return true;
    if (!field->is_array()) return false;
    for (const Json& file : *field) {
        if (!file.is_string()) return false;
        waiting += QString::fromStdString(file.get<std::string>());
    }
    return true;
}

} // namespace

std::optional<DisplayUnits> chosenUnits(LedgerSettings::Units units) {
    switch (units) {
    case LedgerSettings::Units::inch:
        return DisplayUnits::inch();
    case LedgerSettings::Units::metric:
        return DisplayUnits::metric();
    case LedgerSettings::Units::ofEachJob:
        break;
    }
    return std::nullopt;
}

LedgerPlace placeOf(const LedgerSettings& settings, const std::string& file) {
    if (!settings.onServer) return {file, {}};
    return {{},
            LedgerServer{settings.host.toStdString(), settings.port,
                         settings.database.toStdString(), settings.user.toStdString()}};
}

std::string writeLedgerSettings(const LedgerSettings& settings) {
    Json json{{"borewrightLedger", 1},
              {"kept", settings.kept},
              {"onServer", settings.onServer},
              {"host", settings.host.toStdString()},
              {"port", settings.port},
              {"database", settings.database.toStdString()},
              {"user", settings.user.toStdString()},
              {"password", passwords.at(static_cast<std::size_t>(settings.password))},
              {"units", units.at(static_cast<std::size_t>(settings.units))},
              {"waiting", Json::array()}};
    for (const QString& file : settings.waiting)
        json["waiting"].push_back(file.toStdString());
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

Result<LedgerSettings> readLedgerSettings(std::string_view bytes) {
    const Json json = Json::parse(bytes, nullptr, false);
    if (json.is_discarded() || !json.is_object() || !json.contains("borewrightLedger"))
        return refuse("it is not a file of the ledger's settings");
    LedgerSettings settings;
    const std::pair<const char*, bool> fields[]{
        {"kept", readFlag(json, "kept", settings.kept)},
        {"onServer", readFlag(json, "onServer", settings.onServer)},
        {"host", readText(json, "host", settings.host)},
        {"port", readPort(json, settings.port)},
        {"database", readText(json, "database", settings.database)},
        {"user", readText(json, "user", settings.user)},
        {"password", readWord(json, "password", passwords, settings.password)},
        {"units", readWord(json, "units", units, settings.units)},
        {"waiting", readWaiting(json, settings.waiting)}};
    for (const auto& [field, good] : fields)
        if (!good) return refuse(field, "it is not as it should be");
    return settings;
}

LedgerSettingsStore::LedgerSettingsStore(FileSystem& files, QString path, QObject* parent)
    : QObject(parent)
    , m_files(files)
    , m_path(std::move(path)) {
    if (!m_path.isEmpty()) load();
}

void LedgerSettingsStore::load() {
    const std::string path = m_path.toStdString();
    const auto bytes = m_files.read(path, largestFile);
    if (!bytes && bytes.error() == FileFault::notFound) return;
    const auto settings = bytes
                              ? readLedgerSettings(*bytes)
                              : Result<LedgerSettings>(refuse(std::string(inWords(bytes.error()))));
    if (settings) {
        m_value = *settings;
        return;
    }
    const QString aside = m_path + QStringLiteral(".damaged");
    const bool put = m_files.rename(path, aside.toStdString()).has_value();
    m_notice = tr("Where the ledger lies could not be read (%1), so it is in a file of your own.")
                   .arg(QString::fromStdString(settings.error().message()));
    if (put)
        m_notice += ' ' + tr("The settings are kept as %1.").arg(QDir::toNativeSeparators(aside));
}

void LedgerSettingsStore::set(const LedgerSettings& value) {
    if (value == m_value) return;
    m_value = value;
    if (!m_path.isEmpty()) save();
    emit changed();
}

void LedgerSettingsStore::save() {
    (void)m_files.makeFolders(QFileInfo(m_path).path().toStdString());
    const auto saved =
        borewright::save(m_files, m_path.toStdString(), writeLedgerSettings(m_value));
    if (saved) return m_notice.clear();
    m_notice = tr("Where the ledger lies could not be kept: %1.")
                   .arg(QString::fromStdString(saved.error().message()));
    emit failed(m_notice);
}

} // namespace borewright
