// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/entry_walk.h"

#include "core/gauging/gauging.h"

#include <algorithm>

namespace borewright {
namespace {

QString fromUtf8(const std::string& text) {
    return QString::fromStdString(text);
}

} // namespace

EntryWalk::EntryWalk(const PageContext& context, QObject* parent)
    : QObject(parent)
    , m_context(context) {
    connect(&context.document, &Document::changed, this, [this](Change change) {
        if (change == Change::everything) {
            m_mode = Mode::reading;
            m_lastBecame.clear();
            m_lastKept.reset();
            m_unitSurvey.clear();
        }
        chooseUnit();
        emit changed();
    });
    connect(&context.selection, &Selection::changed, this, [this] {
        chooseUnit();
        emit changed();
    });
    connect(&context.preferences, &PreferencesStore::changed, this, &EntryWalk::changed);
    chooseUnit();
}

const Survey* EntryWalk::survey() const {
    return findSurvey(m_context.document.workbook(), m_context.selection.survey());
}

// A survey goes on in the unit of its last reading; a new one starts in the unit that suits.
void EntryWalk::chooseUnit() {
    const Survey* now = survey();
    if (now == nullptr || now->header.id == m_unitSurvey) return;
    m_unitSurvey = now->header.id;
    m_mode = Mode::reading;
    m_lastBecame.clear(); // what was kept last belongs to the survey before
    m_lastKept.reset();
    const DisplayUnits& units = m_context.document.units();
    if (!now->readings.empty())
        m_unit = now->readings.back().typed.unit();
    else
        m_unit = now->header.gauge.entry == Entry::diameter ? units.size : units.small;
}

void EntryWalk::setUnit(Unit unit) {
    if (unit == m_unit) return;
    m_unit = unit;
    emit changed();
}

void EntryWalk::lookAround() const {
    const Order order = m_context.preferences.value().order;
    const std::string& id = m_context.selection.survey();
    if (m_seen && m_seen->revision == m_context.document.revision() && m_seen->survey == id &&
        m_seen->order == order)
        return;
    m_seen = Seen{m_context.document.revision(), id, order, {}, {}, 0};
    const Survey* now = survey();
    if (now == nullptr) return;
    const Workbook& workbook = m_context.document.workbook();
    std::vector<Station> stations = askedStations(workbook, now->header);
    std::erase_if(stations, [&](const Station& station) {
        const Bore* bore = findBore(workbook.block, station.bore);
        return bore == nullptr || !hasWall(*bore, station.depth, station.axis);
    });
    m_seen->route = inOrder(workbook.block, std::move(stations), order);
    for (const Reading& reading : now->readings)
        if (!reading.struck) m_seen->read.insert(reading.station);
    m_seen->readOnRoute = static_cast<std::size_t>(std::ranges::count_if(
        m_seen->route, [this](const Station& s) { return m_seen->read.contains(s); }));
}

const std::vector<Station>& EntryWalk::route() const {
    lookAround();
    return m_seen->route;
}

bool EntryWalk::isRead(const Station& station) const {
    lookAround();
    return m_seen->read.contains(station);
}

std::size_t EntryWalk::read() const {
    lookAround();
    return m_seen->readOnRoute;
}

std::optional<Station> EntryWalk::current() const {
    if (survey() == nullptr) return std::nullopt;
    const auto& chosen = m_context.selection.station();
    if (chosen) return chosen;
    const auto& stations = route();
    const auto waiting =
        std::ranges::find_if(stations, [this](const Station& s) { return !isRead(s); });
    if (waiting == stations.end()) return std::nullopt;
    return *waiting;
}

QString EntryWalk::became(const TypedLength& typed) const {
    const Survey* now = survey();
    if (now == nullptr) return {};
    const auto diameter = diameterAt20(typed, now->header.gauge);
    if (!diameter) return {};
    const DisplayUnits& units = m_context.document.units();
    const QString size = fromUtf8(sizeWithUnit(*diameter, units));
    QString text = QString::fromStdString(typed.text());
    text.replace(QLatin1Char('-'), QChar(0x2212));
    return now->header.gauge.entry == Entry::diameter ? size : text + QStringLiteral(" → ") + size;
}

QString EntryWalk::wouldBecome(const QString& text) const {
    const auto typed = readTyped(text.toStdString(), m_unit);
    if (!typed || m_mode == Mode::zeroCheck) return {};
    return became(*typed);
}

EntryWalk::Outcome EntryWalk::keep(const QString& text) {
    const auto typed = readTyped(text.toStdString(), m_unit);
    Outcome outcome;
    if (!typed)
        outcome.refusal = fromUtf8(typed.error().message());
    else
        outcome = m_mode == Mode::zeroCheck ? keepZeroCheck(*typed) : keepReading(*typed);
    if (!outcome.refusal.isEmpty()) m_context.sounds.refused();
    return outcome;
}

EntryWalk::Outcome EntryWalk::keepReading(const TypedLength& typed) {
    const Survey* now = survey();
    if (now == nullptr) return {false, tr("make a survey first"), {}};
    const auto station = current();
    if (!station) return {false, tr("every station is read; choose one to read it again"), {}};

    Document& document = m_context.document;
    const Bore* bore = findBore(document.workbook().block, station->bore);
    const auto standard = bore != nullptr && bore->standardSize
                              ? std::optional(bore->standardSize->value())
                              : std::nullopt;
    if (const auto possible = checkReading(typed, now->header.gauge, standard); !possible)
        return {false, fromUtf8(possible.error().what), {}};

    Reading reading;
    reading.station = *station;
    reading.typed = typed;
    reading.time = document.now();
    reading.angleOffAxis = m_angle;
    const bool replaces = m_mode == Mode::reading && isRead(*station);
    const auto reason = replaces ? std::optional<std::string>("typed again") : std::nullopt;
    const Edit edit = recordReading(document.workbook(), now->header.id, reading, reason);
    const QString name =
        tr("reading %1").arg(fromUtf8(describe(*station, document.workbook().block)));
    if (const auto done = document.edit(edit, name); !done)
        return {false, fromUtf8(done.error().message()), {}};

    Outcome outcome{true, {}, {}};
    outcome.odd = oddAt(*station);
    outcome.odd.isEmpty() ? m_context.sounds.kept() : m_context.sounds.odd();
    m_lastBecame = became(typed);
    m_lastKept = *station;
    m_angle.reset();
    m_mode = Mode::reading;
    moveOn(*station);
    return outcome;
}

// Why what stands at a station looks odd, in the light of all that is read; empty where it does
// not.
QString EntryWalk::oddAt(const Station& station) const {
    const SurveyResult* result =
        findResult(m_context.document.surveyResults(), m_context.selection.survey());
    const BoreResult* bore = result == nullptr ? nullptr : findBoreResult(*result, station.bore);
    const StationResult* here =
        bore == nullptr ? nullptr : findStation(*bore, station.depth, station.axis);
    return here == nullptr || here->odd.empty() ? QString() : fromUtf8(here->odd.front());
}

EntryWalk::Outcome EntryWalk::keepZeroCheck(const TypedLength& typed) {
    const Survey* now = survey();
    if (now == nullptr) return {false, tr("make a survey first"), {}};
    if (typed.value().magnitude() > now->header.gauge.dial.travel.value())
        return {false, tr("the dial cannot show that on its master"), {}};
    SurveyHeader header = now->header;
    header.zeroChecks.push_back({typed, m_context.document.now()});
    const auto done = m_context.document.edit(SetSurveyHeader{header.id, header}, tr("zero check"));
    if (!done) return {false, fromUtf8(done.error().message()), {}};
    m_mode = Mode::reading;
    m_context.sounds.kept();
    emit changed();
    return {true, {}, {}};
}

// On to the next station in the order of the hand that waits for a reading; round once to the
// start where all behind are read; to none where all are.
void EntryWalk::moveOn(const Station& from) {
    const auto& stations = route();
    const auto here = std::ranges::find(stations, from);
    const auto waits = [this](const Station& s) { return !isRead(s); };
    auto next = here == stations.end() ? here : std::find_if(here + 1, stations.end(), waits);
    if (next == stations.end()) next = std::find_if(stations.begin(), here, waits);
    if (next != stations.end() && next != here) m_context.selection.setStation(*next);
    emit changed();
}

void EntryWalk::skip() {
    if (m_mode != Mode::reading) return cancelMode();
    const auto station = current();
    const auto stations = route();
    if (!station || stations.empty()) return;
    const auto here = std::ranges::find(stations, *station);
    const bool last = here == stations.end() || here + 1 == stations.end();
    m_context.selection.setStation(last ? stations.front() : *(here + 1));
}

void EntryWalk::back() {
    if (m_mode != Mode::reading) return cancelMode();
    const auto station = current();
    const auto stations = route();
    if (stations.empty()) return;
    const auto here = station ? std::ranges::find(stations, *station) : stations.end();
    m_context.selection.setStation(here == stations.begin() ? stations.back() : *(here - 1));
}

EntryWalk::Outcome EntryWalk::repeat() {
    const auto station = current();
    return repeatAt(station && isRead(*station) ? station : m_lastKept);
}

EntryWalk::Outcome EntryWalk::repeatLast() {
    return repeatAt(m_lastKept);
}

EntryWalk::Outcome EntryWalk::repeatAt(const std::optional<Station>& station) {
    if (!station || !isRead(*station)) {
        m_context.sounds.refused();
        return {false, tr("there is no reading yet to repeat"), {}};
    }
    m_context.selection.setStation(*station);
    m_mode = Mode::repeat;
    emit changed();
    return {true, {}, {}};
}

EntryWalk::Outcome EntryWalk::noWall() {
    const auto station = current();
    if (!station) return {};
    if (isRead(*station)) {
        m_context.sounds.refused();
        return {false, tr("a reading was kept here; strike it out first"), {}};
    }
    Document& document = m_context.document;
    Block block = document.workbook().block;
    Bore* bore = findBore(block, station->bore);
    if (bore == nullptr) return {};
    std::erase_if(bore->wallMarks, [&](const WallMark& mark) {
        return mark.depth == station->depth && mark.axis == station->axis;
    });
    bore->wallMarks.push_back({station->depth, station->axis, false});
    // The next station is sought before this one leaves the route.
    const auto stations = route();
    const auto here = std::ranges::find(stations, *station);
    std::optional<Station> next;
    if (here != stations.end() && here + 1 != stations.end()) next = *(here + 1);
    const QString name = tr("no wall %1").arg(fromUtf8(describe(*station, block)));
    if (const auto done = document.edit(SetBlock{block}, name); !done)
        return {false, fromUtf8(done.error().message()), {}};
    if (next) m_context.selection.setStation(*next);
    m_context.sounds.kept();
    return {true, {}, {}};
}

void EntryWalk::startZeroCheck() {
    if (survey() == nullptr) return;
    m_mode = Mode::zeroCheck;
    emit changed();
}

void EntryWalk::cancelMode() {
    if (m_mode == Mode::reading) return;
    m_mode = Mode::reading;
    emit changed();
}

} // namespace borewright
