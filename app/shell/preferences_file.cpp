// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/preferences_file.h"

#include "app/shell/kept_stones.h"
#include "core/storage/saver.h"

#include <QDir>
#include <QFileInfo>

#include <nlohmann/json.hpp>

namespace borewright {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t largestFile = 1024UL * 1024;
constexpr std::array themes{"system", "light", "dark"};
constexpr std::array papers{"a4", "letter"};
constexpr std::array orders{"downAndUp", "downEach", "levelByLevel", "acrossBlock"};
constexpr std::array entries{"deviation", "diameter"};
constexpr std::array faces{"balanced", "round"};
constexpr std::array directions{"plus", "minus"};
constexpr std::array meanings{"limits", "expanded", "standard"};
constexpr std::array materials{"greyIron", "sleeveInAluminium", "aluminium", "gaugeSteel"};

template<class Words, class Value>
std::string wordOf(const Words& words, Value value) {
    return words.at(static_cast<std::size_t>(value));
}

// The lengths of the gear, with the keys that a workbook has for them.
template<class Gear, class Do>
void eachLength(Gear& gear, Do&& with) {
    with("dialError", gear.dialError);
    with("dialLocalError", gear.dialLocalError);
    with("step", gear.step);
    with("repeatability", gear.repeatability);
    with("master", gear.master);
    with("settingScatter", gear.settingScatter);
    with("drift", gear.drift);
    with("driftLimit", gear.driftLimit);
    with("rocking", gear.rocking);
}

Json gearJson(const Gear& gear) {
    Json json = Json::object();
    eachLength(gear, [&](const char* key, const std::optional<TypedLength>& length) {
        if (length) json[key] = length->withUnit();
    });
    if (gear.repeatabilityFreedom) json["repeatabilityFreedom"] = *gear.repeatabilityFreedom;
    json["masterMeant"] = wordOf(meanings, gear.masterMeant);
    if (!gear.lastChecked.empty()) json["lastChecked"] = gear.lastChecked;
    return json;
}

Json gaugeJson(const GaugeSetting& gauge) {
    return {{"gauge", gauge.gauge},
            {"setOn", gauge.setOn},
            {"entry", wordOf(entries, gauge.entry)},
            {"graduation", gauge.dial.graduation.withUnit()},
            {"oneTurn", gauge.dial.oneTurn.withUnit()},
            {"travel", gauge.dial.travel.withUnit()},
            {"face", wordOf(faces, gauge.dial.face)},
            {"larger", wordOf(directions, gauge.dial.larger)},
            {"masterExpansion", wordOf(materials, gauge.masterExpansion)},
            {"blockExpansion", wordOf(materials, gauge.blockExpansion)},
            {"gear", gearJson(gauge.gear)}};
}

// Reads fields one after another and keeps the first refusal.
class Reader {
public:
    explicit Reader(const Json& json)
        : m_json(json) {}

    void text(const char* key, QString& value) {
        std::string found = value.toStdString();
        text(key, found);
        value = QString::fromStdString(found);
    }
    void text(const char* key, std::string& value) {
        if (const Json* field = find(key, &Json::is_string, "a text"))
            value = field->get<std::string>();
    }
    void flag(const char* key, bool& value) {
        if (const Json* field = find(key, &Json::is_boolean, "true or false"))
            value = field->get<bool>();
    }
    void texts(const char* key, QStringList& value) {
        const Json* field = find(key, &Json::is_array, "a list");
        if (field == nullptr) return;
        for (const Json& item : *field) {
            if (!item.is_string()) return fail(key, "a list of texts");
            value += QString::fromStdString(item.get<std::string>());
        }
    }
    template<class Words, class Value>
    void word(const char* key, const Words& words, Value& value) {
        std::string found = wordOf(words, value);
        text(key, found);
        const auto place = std::ranges::find(words, found);
        if (place == words.end()) return fail(key, "one of the known words");
        value = static_cast<Value>(place - words.begin());
    }
    void length(const char* key, TypedLength& value) {
        std::string found = value.withUnit();
        text(key, found);
        const auto read = readTyped(found, Unit::millimetre);
        if (!read || read->value() <= Length()) return fail(key, "a length");
        value = *read;
    }
    void length(const char* key, std::optional<TypedLength>& value) {
        if (!m_json.contains(key)) return;
        std::string found;
        text(key, found);
        const auto read = readTyped(found, Unit::millimetre);
        if (!read || read->value() < Length()) return fail(key, "a length");
        value = *read;
    }
    void number(const char* key, std::optional<int>& value) {
        if (const Json* field = find(key, &Json::is_number_integer, "a whole number"))
            value = field->get<int>();
    }
    // A number of copies, 0 … 999.
    void count(const char* key, int& value) {
        const Json* field = find(key, &Json::is_number_integer, "a whole number");
        if (field == nullptr) return;
        if (*field < 0 || *field > 999) return fail(key, "from 0 to 999");
        value = field->get<int>();
    }
    const Json* list(const char* key) { return find(key, &Json::is_array, "a list"); }
    const Json* object(const char* key) { return find(key, &Json::is_object, "an object"); }
    [[nodiscard]] const std::string& problem() const { return m_problem; }

private:
    const Json* find(const char* key, bool (Json::*is)() const, const char* wanted) {
        const auto field = m_json.find(key);
        if (field == m_json.end()) return nullptr;
        if (((*field).*is)()) return &*field;
        fail(key, wanted);
        return nullptr;
    }
    void fail(const char* key, const std::string& wanted) {
        if (m_problem.empty()) m_problem = std::string(key) + ": it must be " + wanted;
    }

    const Json& m_json;
    std::string m_problem;
};

std::string readGear(const Json& json, Gear& gear) {
    Reader reader(json);
    eachLength(gear, [&](const char* key, std::optional<TypedLength>& length) {
        reader.length(key, length);
    });
    reader.number("repeatabilityFreedom", gear.repeatabilityFreedom);
    reader.word("masterMeant", meanings, gear.masterMeant);
    reader.text("lastChecked", gear.lastChecked);
    if (!reader.problem().empty()) return reader.problem();
    const auto good = checkGear(gear);
    return good ? std::string() : good.error().message();
}

std::string readGauge(const Json& json, GaugeSetting& gauge) {
    if (!json.is_object()) return "gauges: it must be a list of objects";
    Reader reader(json);
    reader.text("gauge", gauge.gauge);
    reader.text("setOn", gauge.setOn);
    reader.word("entry", entries, gauge.entry);
    reader.length("graduation", gauge.dial.graduation);
    reader.length("oneTurn", gauge.dial.oneTurn);
    reader.length("travel", gauge.dial.travel);
    reader.word("face", faces, gauge.dial.face);
    reader.word("larger", directions, gauge.dial.larger);
    reader.word("masterExpansion", materials, gauge.masterExpansion);
    reader.word("blockExpansion", materials, gauge.blockExpansion);
    const Json* gear = reader.object("gear");
    if (!reader.problem().empty() || gear == nullptr) return reader.problem();
    return readGear(*gear, gauge.gear);
}

} // namespace

std::string writePreferences(const Preferences& p) {
    Json json{{"borewrightPreferences", 1},
              {"shopName", p.shopName.toStdString()},
              {"shopAddress", p.shopAddress.toStdString()},
              {"shopPicture", p.shopPicture.toStdString()},
              {"measuredBy", p.measuredBy.toStdString()},
              {"theme", wordOf(themes, p.theme)},
              {"paper", wordOf(papers, p.paper)},
              {"soundKept", p.soundKept},
              {"soundOdd", p.soundOdd},
              {"order", wordOf(orders, p.order)},
              {"gauge", gaugeJson(p.gauge)},
              {"gearChosen", p.gearChosen},
              {"copiesFolder", p.copiesFolder.toStdString()},
              {"copiesLatest", p.copiesLatest},
              {"copiesDays", p.copiesDays},
              {"copiesMonths", p.copiesMonths},
              {"gauges", Json::array()},
              {"stones", stonesJson(p.stones)},
              {"lastFile", p.lastFile.toStdString()},
              {"recentFiles", Json::array()}};
    for (const GaugeSetting& gauge : p.gauges)
        json["gauges"].push_back(gaugeJson(gauge));
    for (const QString& file : p.recentFiles)
        json["recentFiles"].push_back(file.toStdString());
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

Result<Preferences> readPreferences(std::string_view bytes) {
    const Json json = Json::parse(bytes, nullptr, false);
    if (json.is_discarded() || !json.is_object() || !json.contains("borewrightPreferences"))
        return refuse("it is not a file of preferences");
    Preferences p;
    Reader reader(json);
    reader.text("shopName", p.shopName);
    reader.text("shopAddress", p.shopAddress);
    reader.text("shopPicture", p.shopPicture);
    reader.text("measuredBy", p.measuredBy);
    reader.word("theme", themes, p.theme);
    reader.word("paper", papers, p.paper);
    reader.flag("soundKept", p.soundKept);
    reader.flag("soundOdd", p.soundOdd);
    reader.word("order", orders, p.order);
    reader.flag("gearChosen", p.gearChosen);
    reader.text("copiesFolder", p.copiesFolder);
    reader.count("copiesLatest", p.copiesLatest);
    reader.count("copiesDays", p.copiesDays);
    reader.count("copiesMonths", p.copiesMonths);
    reader.text("lastFile", p.lastFile);
    reader.texts("recentFiles", p.recentFiles);
    std::string problem = reader.problem();
    if (const Json* gauge = reader.object("gauge"); gauge != nullptr && problem.empty())
        problem = readGauge(*gauge, p.gauge);
    if (const Json* gauges = reader.list("gauges"); gauges != nullptr)
        for (const Json& gauge : *gauges)
            if (problem.empty()) problem = readGauge(gauge, p.gauges.emplace_back());
    if (const Json* stones = reader.list("stones"); stones != nullptr && problem.empty())
        problem = readStones(*stones, p.stones);
    if (problem.empty()) problem = reader.problem();
    if (!problem.empty()) return refuse(problem);
    return p;
}

PreferencesFile::PreferencesFile(PreferencesStore& store, FileSystem& files, QString path,
                                 QObject* parent)
    : QObject(parent)
    , m_store(store)
    , m_files(files)
    , m_path(std::move(path)) {
    load();
    connect(&store, &PreferencesStore::changed, this, &PreferencesFile::save);
}

void PreferencesFile::load() {
    const std::string path = m_path.toStdString();
    const auto bytes = m_files.read(path, largestFile);
    if (!bytes && bytes.error() == FileFault::notFound) return;
    const auto preferences = bytes
                                 ? readPreferences(*bytes)
                                 : Result<Preferences>(refuse(std::string(inWords(bytes.error()))));
    if (preferences) return take(*preferences);
    const QString aside = m_path + QStringLiteral(".damaged");
    const bool kept = m_files.rename(path, aside.toStdString()).has_value();
    m_notice = tr("The preferences could not be read (%1), so the usual ones are in use.")
                   .arg(QString::fromStdString(preferences.error().message()));
    if (kept) m_notice += ' ' + tr("The file is kept as %1.").arg(QDir::toNativeSeparators(aside));
}

// Part of a path, written in by hand, would mean another folder wherever the program is started.
void PreferencesFile::take(Preferences preferences) {
    const QString folder = preferences.copiesFolder;
    if (!isWholePath(folder)) {
        m_notice = tr("The folder of dated copies in the preferences, %1, is not a whole path from "
                      "the top; the usual place is in use.")
                       .arg(folder);
        preferences.copiesFolder.clear();
    }
    m_store.set(preferences);
}

bool isWholePath(const QString& folder) {
    return folder.isEmpty() || QDir::isAbsolutePath(folder);
}

void PreferencesFile::save() {
    (void)m_files.makeFolders(QFileInfo(m_path).path().toStdString());
    const auto saved =
        borewright::save(m_files, m_path.toStdString(), writePreferences(m_store.value()));
    if (saved) return m_notice.clear();
    m_notice = tr("The preferences could not be kept: %1.")
                   .arg(QString::fromStdString(saved.error().message()));
    emit failed(m_notice);
}

} // namespace borewright
