// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/size_bars.h"

#include "app/pictures/reading_words.h"
#include "core/results/sizing_words.h"

#include <QCoreApplication>
#include <QStringList>

namespace borewright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("SizeBars", text);
}

QString centredWord(Centring centring) {
    return centring == Centring::wornBore ? tr("centred on the worn bore")
                                          : tr("centred on the original axis");
}

class Maker {
public:
    Maker(const Workbook& workbook, const SizingResult& sizing, const DisplayUnits& units)
        : m_workbook(workbook)
        , m_sizing(sizing)
        , m_units(units) {}

    [[nodiscard]] SizeBarsBore bore(std::size_t b) const {
        SizeBarsBore row;
        row.number = m_sizing.bores[b];
        row.name = tr("Bore %1").arg(row.number);
        addGreatest(row);
        if (b < m_sizing.boreWords.size()) row.why = qs(m_sizing.boreWords[b]);
        if (!m_sizing.cleanUps[b]) {
            row.verdict = Verdict::notMeasured;
            row.word = tr("not known");
            row.why = qs(m_sizing.notKnown[b]);
            return row;
        }
        addSizes(row, *m_sizing.cleanUps[b]);
        addVerdict(row, b);
        return row;
    }

    [[nodiscard]] SizeBarsLine line(std::size_t place) const {
        const Offer& offer = m_sizing.choice.offers[place].offer;
        SizeBarsLine line;
        line.name = qs(offer.name);
        line.beyond = offer.beyondGreatest;
        line.chosen = !m_workbook.sizing.ownSizes && m_sizing.choice.chosen == place;
        std::optional<Length> one;
        bool several = false;
        for (const auto& bore : offer.bores) {
            line.at.push_back(bore ? std::optional(inUnit(bore->finish)) : std::nullopt);
            if (!bore) continue;
            several = several || (one && *one != bore->finish);
            one = bore->finish;
        }
        if (one && !several) line.size = qs(formatSize(*one, m_units));
        return line;
    }

private:
    [[nodiscard]] double inUnit(Length length) const { return length.in(m_units.size); }

    void addGreatest(SizeBarsBore& row) const {
        const Bore* bore = findBore(m_workbook.block, row.number);
        if (m_workbook.sizing.greatest && bore != nullptr && bore->standardSize)
            row.greatest =
                inUnit(bore->standardSize->value() + m_workbook.sizing.greatest->value());
    }

    void addSizes(SizeBarsBore& row, const BoreCleanUp& found) const {
        row.smallest = inUnit(found.smallest.diameter);
        row.largest = inUnit(found.largest.diameter);
        const CleanUp& mine = cleanUpBy(found, m_sizing.centring);
        row.cleanUp = SizeBarsCleanUp{inUnit(mine.size), 0};
        if (mine.u) row.cleanUp->around = found.coverage * inUnit(*mine.u);
        const CleanUp& other =
            cleanUpBy(found, m_sizing.centring == Centring::wornBore ? Centring::originalAxis
                                                                     : Centring::wornBore);
        if (other.size != mine.size) row.otherWay = inUnit(other.size);
    }

    // The size that the row is judged by: its own where each may have one, else the block's.
    void addVerdict(SizeBarsBore& row, std::size_t b) const {
        const SizeChoice& choice = m_sizing.choice;
        if (choice.offers.empty()) return;
        const bool own = m_workbook.sizing.ownSizes && b < choice.own.size();
        if (own) row.own = choice.own[b];
        if (b < choice.beyond.size() && choice.beyond[b]) {
            row.verdict = Verdict::outside;
            row.word = tr("beyond the last size: a sleeve");
            return;
        }
        const auto place = own ? choice.own[b] : choice.chosen;
        if (!place) return;
        const OfferResult& offer = choice.offers[*place];
        row.deciding = !own && offer.deciding == b;
        const SizeCell& cell = offer.cells[b];
        row.verdict = verdictOf(cell.cleans);
        const auto cleans = nameOf(cell.cleans);
        row.word = QString::fromUtf8(cleans.data(), static_cast<qsizetype>(cleans.size()));
        if (own) row.word = tr("%1: %2").arg(qs(offer.offer.name), row.word);
        if (cell.cleans == Cleans::unknown) return;
        row.word +=
            tr(", margin %1")
                .arg(qs(marginWords(cell.margin, cell.u, m_sizing.cleanUps[b]->coverage, m_units)));
    }

    const Workbook& m_workbook;
    const SizingResult& m_sizing;
    const DisplayUnits& m_units;
};

} // namespace

SizeBarsData sizeBarsData(const Workbook& workbook, const Results& results,
                          const DisplayUnits& units, int chosen) {
    const SizingResult& sizing = results.sizing;
    SizeBarsData data;
    data.unit = unitSymbol(units.size);
    data.chosen = chosen;
    data.centred = centredWord(sizing.centring);
    data.otherWay = centredWord(sizing.centring == Centring::wornBore ? Centring::originalAxis
                                                                      : Centring::wornBore);
    const Maker maker(workbook, sizing, units);
    bool any = false;
    for (std::size_t b = 0; b < sizing.bores.size(); ++b) {
        data.bores.push_back(maker.bore(b));
        any = any || data.bores.back().smallest;
    }
    for (std::size_t i = 0; i < sizing.choice.offers.size(); ++i)
        data.lines.push_back(maker.line(i));
    if (data.bores.empty())
        data.friendly = tr("Describe the block first, on the Block page.");
    else if (!any)
        data.friendly = tr("Measure the bores as found, and their sizes are drawn here beside "
                           "every size on offer.");
    return data;
}

QString describeSizeBars(const SizeBarsData& data) {
    if (!data.friendly.isEmpty()) return data.friendly;
    QStringList said;
    QStringList names;
    for (const SizeBarsLine& line : data.lines)
        names << (line.chosen   ? tr("%1 (chosen)").arg(line.name)
                  : line.beyond ? tr("%1 (more than the engine maker allows)").arg(line.name)
                                : line.name);
    if (!names.isEmpty()) said << tr("Sizes on offer: %1.").arg(names.join(QStringLiteral(", ")));
    for (const SizeBarsBore& bore : data.bores) {
        QStringList parts{bore.name};
        if (bore.deciding) parts << tr("decides");
        if (!bore.word.isEmpty()) parts << bore.word;
        if (!bore.why.isEmpty()) parts << bore.why;
        said << parts.join(QStringLiteral(", ")) + QLatin1Char('.');
    }
    return said.join(QLatin1Char(' '));
}

} // namespace borewright
