// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/hone_section.h"

#include "app/pictures/reading_words.h"
#include "core/workbook/hone_since.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("HoneSection", text);
}

double mm(Length length) {
    return length.in(Unit::millimetre);
}

// A clause of the core as a sentence of its own.
QString sentence(const std::string& clause) {
    QString text = qs(clause);
    if (text.isEmpty()) return text;
    text[0] = text[0].toUpper();
    if (!text.endsWith('.') && !text.endsWith('!') && !text.endsWith('?')) text += '.';
    return text;
}

double drawnDepth(const Bore& bore) {
    if (bore.depth && bore.depth->value() > Length()) return mm(bore.depth->value());
    double lowest = 0;
    for (const Level& level : bore.levels)
        lowest = std::max(lowest, mm(level.depth.value()));
    return lowest > 0 ? lowest * 1.12 : 100;
}

void describeCasting(HoneSectionData& data, const Bore& bore) {
    data.bore = bore.number;
    data.title = tr("Bore %1").arg(bore.number);
    data.depth_mm = drawnDepth(bore);
    data.openEnd = bore.openEnd.empty() ? tr("open end") : qs(bore.openEnd);
    data.closedEnd = !bore.roomAtClosedEnd || bore.roomAtClosedEnd->value() <= Length();
    for (const PortBand& band : bore.map.ports)
        data.ports.push_back(
            {std::max(0.0, mm(band.from.value())), std::min(data.depth_mm, mm(band.to.value()))});
}

// The stone where its lowest window ends.
void addStone(HoneSectionData& data, const Workbook& workbook, const Bore& bore,
              const std::string& id) {
    const Stone* stone = findStone(workbook.hone, id);
    if (stone == nullptr) return;
    HoneStoneDrawn drawn;
    drawn.name = qs(stone->name.empty() ? stone->id : stone->name);
    drawn.length_mm = mm(stone->ends.value() - stone->begins.value());
    drawn.below_mm = mm(stone->begins.value());
    drawn.highest_mm = drawn.length_mm;
    drawn.lowest_mm = data.depth_mm - drawn.below_mm;
    if (const auto reach = reachOf(*stone, bore)) {
        drawn.highest_mm = mm(reach->highest);
        drawn.lowest_mm = mm(reach->lowest);
    }
    drawn.lower_mm = drawn.lowest_mm;
    if (!data.windows.empty())
        drawn.lower_mm = std::ranges::max_element(data.windows, {}, &HoneBar::to_mm)->to_mm;
    data.stone = drawn;
    data.title += QStringLiteral(" · ") + drawn.name;
}

QString countOf(double strokes) {
    if (std::abs(strokes - 1) < 1e-9) return tr("1 stroke");
    return tr("%1 strokes").arg(QString::number(strokes, 'g', 4));
}

HoneBar barOf(Length from, Length to, double strokes, double seconds, double hold,
              const DisplayUnits& units) {
    HoneBar bar;
    bar.from_mm = mm(from);
    bar.to_mm = mm(to);
    bar.strokes = countOf(strokes);
    if (seconds > 0) bar.seconds = tr("%1 s").arg(QString::number(seconds, 'g', 4));
    if (hold > 0) bar.hold = tr("hold %1 s").arg(QString::number(hold, 'g', 3));
    nameHoneBar(bar, units);
    return bar;
}

void addProposed(HoneSectionData& data, const Workbook& workbook, const Bore& bore,
                 const BoreOutlook& outlook) {
    if (!outlook.next) return;
    for (const PlannedWindow& window : outlook.next->windows)
        data.windows.push_back(barOf(window.from.value(), window.to.value(), window.strokes,
                                     window.seconds, window.holdSeconds, data.units));
    addStone(data, workbook, bore, outlook.next->stone);
    data.chance = sentence(outlook.next->overWords);
    data.modelOnly = outlook.modelOnly;
    const std::vector<Axis>& axes = workbook.block.axes;
    int order = 0;
    for (const Station& station : outlook.next->measure) {
        const auto axis = std::ranges::find(axes, station.axis, &Axis::id);
        data.measure.push_back({mm(station.depth), qs(formatDepth(station.depth, data.units)),
                                qs(station.axis), static_cast<int>(axis - axes.begin()), ++order});
    }
}

void addOwn(HoneSectionData& data, const Workbook& workbook, const Bore& bore,
            const HoneOwnDraft& own) {
    data.own = true;
    const Hone& hone = workbook.hone.hone;
    for (const StrokeWindow& window : own.windows) {
        const double strokes = strokesOf(window, hone);
        const double atBeat = hone.beatsPerMinute > 0 ? strokes * 60 / hone.beatsPerMinute : 0;
        data.windows.push_back(barOf(window.from.value(), window.to.value(), strokes,
                                     window.seconds.value_or(std::round(atBeat)),
                                     window.holdSeconds, data.units));
    }
    addStone(data, workbook, bore, own.stone);
    data.title += QStringLiteral(": ") + tr("your own set-up");
    data.curves.then = {};
    data.chance.clear();
    if (own.expected) {
        data.curves = own.expected->curves;
        QStringList sentences;
        for (const std::string& each : own.expected->sentences)
            sentences << sentence(each);
        data.chance = sentences.join(' ');
        data.forbidden = own.expected->forbidden;
    } else if (!own.refused.empty()) {
        data.chance = sentence(own.refused);
        data.forbidden = true;
    }
}

void addRead(HoneSectionData& data, const BoreOutlook& outlook) {
    if (!outlook.checked) return;
    for (const Found::At& at : outlook.checked->readings) {
        const int axis = at.look.axis > 0.5 ? 0 : at.look.axis < -0.5 ? 1 : 2;
        data.read.push_back({at.look.depth_mm, axis, at.found_um, at.odd});
    }
}

struct Word {
    QString text;
    Verdict verdict = Verdict::notJudged;
};

Word wordOf(const Workbook& workbook, const BoreOutlook& outlook) {
    switch (outlook.outcome) {
    case HoneOutcome::next:
        return outlook.waits ? Word{tr("waits for another stone"), Verdict::notYet} : Word{};
    case HoneOutcome::done:
        return {tr("stop"), Verdict::within};
    case HoneOutcome::asGoodAsItGets:
        return {tr("stop: no straighter with these stones"), Verdict::notYet};
    case HoneOutcome::gaugeCannotTell:
        return {tr("stop: this gauge cannot tell"), Verdict::tooCloseToCall};
    case HoneOutcome::wouldGoOver:
        if (outlook.good) return {tr("done: stop"), Verdict::within};
        return {tr("stop: going on would put it over"), Verdict::tooCloseToCall};
    case HoneOutcome::overAlready:
        return {tr("over size: stop"), Verdict::outside};
    case HoneOutcome::noStone:
        return {tr("no stone for it"), Verdict::notJudged};
    case HoneOutcome::notMeasured:
        return {honedSinceMeasured(workbook, outlook.bore) ? tr("honed since it was measured")
                                                           : tr("not measured"),
                Verdict::notMeasured};
    }
    return {};
}

} // namespace

void nameHoneBar(HoneBar& bar, const DisplayUnits& units) {
    const auto depth = [&](double at) {
        return formatDepth(Length::nearest(at, Unit::millimetre), units);
    };
    const std::string from = depth(bar.from_mm);
    const std::string to = depth(bar.to_mm);
    bar.depths = from == to ? tr("at %1 %2").arg(qs(to), unitSymbol(units.size))
                            : tr("%1–%2 %3").arg(qs(from), qs(to), unitSymbol(units.size));
}

HoneSectionData honeSectionData(const Workbook& workbook, const BoreOutlook& outlook,
                                const DisplayUnits& units, const std::optional<HoneOwnDraft>& own) {
    const Bore* bore = findBore(workbook.block, outlook.bore);
    if (bore == nullptr) return honeSectionRefused(workbook, outlook.bore, {});
    HoneSectionData data;
    data.units = units;
    describeCasting(data, *bore);
    data.outcome = outlook.outcome;
    data.curves = outlook.curves;
    data.lower_um = outlook.lower_um;
    data.upper_um = outlook.cap_um;
    if (workbook.straightAim) data.aim_um = workbook.straightAim->value().in(Unit::micrometre);
    if (outlook.finishSize)
        data.finish = tr("finish %1").arg(qs(sizeWithUnit(*outlook.finishSize, units)));
    addRead(data, outlook);
    if (own)
        addOwn(data, workbook, *bore, *own);
    else
        addProposed(data, workbook, *bore, outlook);
    if (!own) {
        const Word word = wordOf(workbook, outlook);
        data.word = word.text;
        data.verdict = word.verdict;
        if (!outlook.next) data.chance = sentence(outlook.headline);
    } else if (data.forbidden && own->expected) {
        data.word = tr("may go over");
        data.verdict = Verdict::outside;
    }
    if (!data.empty()) return data;
    data.friendly =
        outlook.headline.empty() ? tr("Nothing is measured yet.") : sentence(outlook.headline);
    if (!own) data.chance.clear();
    return data;
}

HoneSectionData honeSectionRefused(const Workbook& workbook, int number, const QString& why) {
    HoneSectionData data;
    data.units = naturalUnits(workbook);
    data.friendly = why;
    const Bore* bore = findBore(workbook.block, number);
    if (bore == nullptr) {
        data.friendly = tr("No bore is chosen.");
        return data;
    }
    describeCasting(data, *bore);
    return data;
}

} // namespace borewright
