// SPDX-License-Identifier: GPL-3.0-or-later
// What the sheet says of honing: what the hone made of each bore, the log of its passes, and what
// is not yet done.
#include "app/pictures/reading_words.h"
#include "app/sheet/sheet_data.h"

#include <algorithm>
#include <map>
#include <set>

namespace borewright {
namespace {

QString sentence(QString text) {
    if (text.isEmpty()) return text;
    text[0] = text[0].toUpper();
    return text.endsWith('.') ? text : text + '.';
}

// Bores for which something holds, those with passes only.
std::vector<int> boresWhere(const HoneLog& log, const auto& holds) {
    std::vector<int> bores;
    for (const BoreHoneLog& bore : log.bores)
        if (!bore.passes.empty() && holds(bore)) bores.push_back(bore.bore);
    return bores;
}

bool honed(const BoreHoneLog& bore) {
    return std::ranges::any_of(bore.passes, [](const LoggedPass& pass) { return !pass.struck; });
}

bool played(const BoreHoneLog& bore) {
    return std::ranges::any_of(
        bore.passes, [](const LoggedPass& pass) { return !pass.struck && pass.simulated; });
}

const BoreResult* readBy(const Results& results, const std::string& survey, int bore) {
    const SurveyResult* result = survey.empty() ? nullptr : findResult(results, survey);
    return result == nullptr ? nullptr : findBoreResult(*result, bore);
}

class HoneSheet {
public:
    HoneSheet(const Workbook& workbook, const Results& results, const DisplayUnits& units)
        : m_workbook(workbook)
        , m_results(results)
        , m_log(results.hone)
        , m_units(units) {}

    [[nodiscard]] SheetHone sheet() const {
        SheetHone sheet;
        sheet.there = !m_log.empty;
        if (m_log.empty) return sheet;
        sheet.headline = headline();
        sheet.front = front();
        sheet.warnings = warnings();
        sheet.facts = facts();
        sheet.bores = bores();
        sheet.passes = passes();
        sheet.remarks = remarks();
        return sheet;
    }

private:
    [[nodiscard]] QString headline() const {
        int done = 0, struck = 0;
        std::set<std::string> stones;
        for (const BoreHoneLog& bore : m_log.bores)
            for (const LoggedPass& pass : bore.passes) {
                ++(pass.struck ? struck : done);
                if (!pass.struck) stones.insert(pass.stone);
            }
        if (done == 0) return SheetWords::tr("Every pass logged is struck out.");
        QString text =
            SheetWords::tr("%1: %2 with %3")
                .arg(sentence(sheetBores(boresWhere(m_log, honed))).chopped(1),
                     done == 1 ? SheetWords::tr("one pass") : SheetWords::tr("%1 passes").arg(done),
                     stones.size() == 1 ? SheetWords::tr("one stone")
                                        : SheetWords::tr("%1 stones").arg(stones.size()));
        if (struck > 0) text += SheetWords::tr("; %1 struck out").arg(struck);
        return text + '.';
    }

    [[nodiscard]] QStringList front() const {
        QStringList sentences;
        const std::vector<int> bores = boresWhere(m_log, honed);
        const std::vector<int> simulated = boresWhere(m_log, played);
        if (!bores.empty())
            sentences << SheetWords::tr("Honed: %1; the log of the passes stands in the shop's "
                                        "record.")
                             .arg(sheetBores(bores));
        if (!simulated.empty())
            sentences << SheetWords::tr("Passes in %1 were simulated by the demonstration: nothing "
                                        "was honed.")
                             .arg(sheetBores(simulated));
        return sentences;
    }

    [[nodiscard]] QStringList warnings() const {
        QStringList sentences;
        std::map<std::string, std::vector<int>> missing;
        for (const BoreHoneLog& bore : m_log.bores)
            for (const std::string& tick : bore.toTick)
                missing[tick].push_back(bore.bore);
        for (const auto& [tick, bores] : missing)
            sentences
                << SheetWords::tr("Not yet ticked as %1: %2.").arg(qs(tick), sheetBores(bores));
        const auto waiting =
            boresWhere(m_log, [](const BoreHoneLog& bore) { return bore.waitsForSurvey; });
        if (!waiting.empty())
            sentences
                << SheetWords::tr("Not measured since the last pass: %1.").arg(sheetBores(waiting));
        return sentences;
    }

    [[nodiscard]] std::vector<SheetFact> facts() const {
        const Hone& hone = m_workbook.hone.hone;
        QStringList parts;
        if (hone.speedRpm)
            parts
                << SheetWords::tr("%1 turns a minute").arg(QString::number(*hone.speedRpm, 'g', 4));
        parts << SheetWords::tr("%1 strokes a minute, a stroke being down and back")
                     .arg(QString::number(hone.beatsPerMinute, 'g', 4));
        if (hone.oil)
            parts << (*hone.oil ? SheetWords::tr("honed with oil") : SheetWords::tr("honed dry"));
        if (!hone.feed.empty()) parts << qs(hone.feed);
        return {{SheetWords::tr("Hone"), parts.join(QStringLiteral(", "))}};
    }

    // The survey that the honing started from, else the first as found; and the last.
    [[nodiscard]] std::pair<std::string, std::string> surveysOf(const BoreHoneLog& bore) const {
        const auto story = std::ranges::find(m_results.stories, bore.bore, &BoreStory::bore);
        const bool told = story != m_results.stories.end();
        std::string was = bore.passes.front().before;
        if (was.empty() && told) was = story->wasSurvey.value_or("");
        std::string now;
        for (const LoggedPass& pass : bore.passes)
            if (!pass.behind.empty()) now = pass.behind;
        if (told && story->nowSurvey && !bore.waitsForSurvey) now = *story->nowSurvey;
        if (now == was) now.clear();
        return {was, now};
    }

    [[nodiscard]] QString nameOf(const std::string& survey) const {
        const Survey* found = findSurvey(m_workbook, survey);
        return found == nullptr ? QString() : qs(found->header.name);
    }

    [[nodiscard]] SheetGrid bores() const {
        const QString size = unitSymbol(m_units.size), small = unitSymbol(m_units.small);
        SheetGrid grid;
        grid.title = SheetWords::tr("Before and after; lead: plus = closed end larger");
        grid.columns = {{SheetWords::tr("bore"), {}, true},
                        {SheetWords::tr("before"), {}, true},
                        {SheetWords::tr("before:\nmean size"), size},
                        {SheetWords::tr("before:\nstraight"), small},
                        {SheetWords::tr("before:\nlead"), small},
                        {SheetWords::tr("after"), {}, true},
                        {SheetWords::tr("after:\nmean size"), size},
                        {SheetWords::tr("after:\nstraight"), small},
                        {SheetWords::tr("after:\nlead"), small},
                        {SheetWords::tr("cross-\nhatch"), QStringLiteral("°")},
                        {SheetWords::tr("ports\nchamfered"), {}, true},
                        {SheetWords::tr("washed"), {}, true}};
        for (const BoreHoneLog& bore : m_log.bores)
            if (honed(bore)) grid.rows.push_back(row(bore));
        return withoutEmptyColumns(std::move(grid));
    }

    [[nodiscard]] std::vector<SheetGridCell> row(const BoreHoneLog& bore) const {
        std::vector<SheetGridCell> cells(12);
        cells[0] = {QString::number(bore.bore), {}, true};
        const auto [was, now] = surveysOf(bore);
        addSide(cells, 1, was, bore.bore);
        addSide(cells, 5, now, bore.bore);
        if (bore.crosshatchDegrees)
            cells[9].text = QString::number(*bore.crosshatchDegrees, 'f', 0);
        const auto ticks = m_workbook.hone.ticks.find(bore.bore);
        const BoreTicks done = ticks == m_workbook.hone.ticks.end() ? BoreTicks() : ticks->second;
        const Bore* casting = findBore(m_workbook.block, bore.bore);
        const auto tick = [](bool ticked) {
            return ticked ? SheetWords::tr("ticked") : SheetWords::tr("not ticked");
        };
        if (done.portsChamfered || (casting != nullptr && !casting->map.ports.empty()))
            cells[10] = {tick(done.portsChamfered), {}, !done.portsChamfered};
        cells[11] = {tick(done.washed), {}, !done.washed};
        return cells;
    }

    void addSide(std::vector<SheetGridCell>& cells, std::size_t at, const std::string& survey,
                 int bore) const {
        const BoreResult* read = readBy(m_results, survey, bore);
        if (read == nullptr) return;
        cells[at].text = nameOf(survey);
        if (read->form) cells[at + 1].text = qs(formatSize(read->form->mean, m_units));
        if (read->straightness) cells[at + 2].text = qs(formatSmall(*read->straightness, m_units));
        if (read->form && read->form->lead)
            cells[at + 3].text = qs(formatSmall(*read->form->lead, m_units, Sign::always));
    }

    [[nodiscard]] SheetGrid passes() const {
        const QString small = unitSymbol(m_units.small);
        SheetGrid grid;
        grid.title = SheetWords::tr("Passes, by the depth of the abrasive's lower end");
        grid.columns = {
            {SheetWords::tr("bore"), {}, true},       {SheetWords::tr("ended"), {}, true},
            {SheetWords::tr("stone"), {}, true},      {SheetWords::tr("grit"), {}, true},
            {SheetWords::tr("stroked"), {}, true},    {SheetWords::tr("came off"), small},
            {SheetWords::tr("lead\nbefore"), small},  {SheetWords::tr("lead\nafter"), small},
            {SheetWords::tr("checked by"), {}, true}, {SheetWords::tr("remark"), {}, true}};
        for (const BoreHoneLog& bore : m_log.bores) {
            QString number = QString::number(bore.bore);
            for (const LoggedPass& pass : bore.passes)
                grid.rows.push_back(row(pass, std::exchange(number, QString())));
        }
        return withoutEmptyColumns(std::move(grid));
    }

    [[nodiscard]] std::vector<SheetGridCell> row(const LoggedPass& logged,
                                                 const QString& bore) const {
        const auto lead = [&](const std::optional<Length>& value) {
            return value ? qs(formatSmall(*value, m_units, Sign::always)) : QString();
        };
        std::vector<SheetGridCell> cells(10);
        cells[0] = {bore, {}, true};
        cells[2].text = qs(logged.stone);
        cells[4].text = qs(logged.words);
        if (logged.tookOff) cells[5].text = qs(formatSmall(*logged.tookOff, m_units));
        cells[6].text = lead(logged.leadBefore);
        cells[7].text = lead(logged.leadBehind);
        cells[8].text = nameOf(logged.behind);
        QStringList remarks;
        const auto& all = m_workbook.hone.passes;
        const auto pass = std::ranges::find(all, logged.pass, &Pass::id);
        if (pass != all.end()) {
            cells[1].text = qs(dateInWords(pass->time));
            const Stone* stone = findStone(m_workbook.hone, pass->stone);
            if (stone != nullptr) cells[3].text = qs(stone->grit);
        }
        if (logged.struck)
            remarks << (pass != all.end() && pass->struck && !pass->struck->empty()
                            ? SheetWords::tr("struck out: %1").arg(qs(*pass->struck))
                            : SheetWords::tr("struck out"));
        const QString notes = pass != all.end() ? qs(pass->notes) : QString();
        // What the demonstration plays says so in its notes.
        if (logged.simulated && !notes.startsWith(SheetWords::tr("simulated")))
            remarks << SheetWords::tr("simulated");
        if (!notes.isEmpty()) remarks << notes;
        cells[9].text = remarks.join(QStringLiteral("; "));
        return cells;
    }

    [[nodiscard]] QStringList remarks() const {
        QStringList sentences;
        for (const BoreHoneLog& bore : m_log.bores)
            if (honed(bore) && !bore.crosshatchWords.empty())
                sentences << sentence(
                    bore.crosshatchDegrees
                        ? SheetWords::tr("Crosshatch: the angle %1").arg(qs(bore.crosshatchWords))
                        : SheetWords::tr("Crosshatch of bore %1: %2")
                              .arg(bore.bore)
                              .arg(qs(bore.crosshatchWords)));
        sentences.removeDuplicates(); // the convention is one
        for (const BoreHoneLog& bore : m_log.bores)
            for (const std::string& oddity : bore.oddities)
                sentences << sentence(SheetWords::tr("Bore %1: %2").arg(bore.bore).arg(qs(oddity)));
        return sentences + sheetTexts(m_log.cautions);
    }

    const Workbook& m_workbook;
    const Results& m_results;
    const HoneLog& m_log;
    const DisplayUnits& m_units;
};

} // namespace

SheetHone sheetHone(const Workbook& workbook, const Results& results, const DisplayUnits& units) {
    return HoneSheet(workbook, results, units).sheet();
}

} // namespace borewright
