// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/judge/verdict_text.h"

#include "app/judge/doubt_text.h"
#include "app/pictures/verdict_mark.h"
#include "core/results/doubt_words.h"

#include <QCoreApplication>

namespace borewright::verdict_text {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("VerdictTable", text);
}

QString q(const std::string& text) {
    return QString::fromStdString(text);
}

const QString nothing = QStringLiteral("–");

struct Value {
    std::optional<Length> length;
    bool small = false;
    bool isSigned = false;
    QString place; // "at 0.60 in on B"
};

QString at(Length depth, const std::string& axis, const DisplayUnits& units) {
    const QString where = tr("at %1").arg(q(depthWithUnit(depth, units)));
    return axis.empty() ? where : tr("%1 on %2").arg(where, q(axis));
}

Value valueOf(const BoreResult& bore, int column, const DisplayUnits& units) {
    if (column == columns::straight) return {bore.straightness, true, false, {}};
    if (!bore.form) return {};
    const BoreForm& form = *bore.form;
    switch (column) {
    case columns::largest:
        return {form.largest.value, false, false, at(form.largest.depth, form.largest.axis, units)};
    case columns::smallest:
        return {form.smallest.value, false, false,
                at(form.smallest.depth, form.smallest.axis, units)};
    case columns::mean:
        return {form.mean, false, false, {}};
    case columns::outOfRound:
        if (!form.outOfRound) return {};
        return {form.outOfRound->value, true, false, at(form.outOfRound->depth, {}, units)};
    case columns::taper:
        if (!form.worstTaper) return {};
        return {form.worstTaper->taper, true, false, tr("on %1").arg(q(form.worstTaper->axis))};
    case columns::lead:
        return {form.lead, true, true, {}};
    default:
        return {};
    }
}

QString name(int column) {
    switch (column) {
    case columns::bore:
        return tr("bore");
    case columns::verdict:
        return tr("verdict");
    case columns::largest:
        return tr("largest");
    case columns::smallest:
        return tr("smallest");
    case columns::mean:
        return tr("mean");
    case columns::outOfRound:
        return tr("out-of-round");
    case columns::taper:
        return tr("taper");
    case columns::lead:
        return tr("lead");
    case columns::straight:
        return tr("straight");
    case columns::shape:
        return tr("shape");
    case columns::toGo:
        return tr("to go");
    case columns::read:
        return tr("read");
    default:
        return {};
    }
}

QString toGoText(const BoreResult& bore, const DisplayUnits& units) {
    if (!bore.leastToGo) return nothing;
    const QString least = q(formatSmall(*bore.leastToGo, units));
    const QString most = q(formatSmall(*bore.mostToGo, units));
    return least == most ? least : tr("%1 to %2").arg(least, most);
}

QString formatted(const Value& value, const DisplayUnits& units, bool withUnit) {
    if (!value.length) return nothing;
    const Sign sign = value.isSigned ? Sign::always : Sign::negative;
    if (withUnit)
        return q(value.small ? smallWithUnit(*value.length, units, sign)
                             : sizeWithUnit(*value.length, units));
    return q(value.small ? formatSmall(*value.length, units, sign)
                         : formatSize(*value.length, units));
}

const Judgement* judgementOf(const BoreResult& bore, int column) {
    const auto quality = qualityOf(column);
    for (const Judgement& judgement : bore.judgements)
        if (quality && judgement.quality == *quality) return &judgement;
    return nullptr;
}

QString limitText(Length limit, Quality quality, const DisplayUnits& units) {
    switch (quality) {
    case Quality::largestSize:
        return QStringLiteral("≤ ") + q(formatSize(limit, units));
    case Quality::smallestSize:
        return QStringLiteral("≥ ") + q(formatSize(limit, units));
    default:
        return QStringLiteral("≤ ") + q(formatSmall(limit, units));
    }
}

// The limit that every bore of the survey has alike.
std::optional<Length> sharedLimit(const SurveyResult& survey, int column) {
    std::optional<Length> shared;
    for (const BoreResult& bore : survey.bores) {
        const Judgement* judgement = judgementOf(bore, column);
        if (judgement == nullptr || !judgement->limit) return std::nullopt;
        if (shared && shared != judgement->limit) return std::nullopt;
        shared = judgement->limit;
    }
    return shared;
}

} // namespace

std::optional<Quality> qualityOf(int column) {
    switch (column) {
    case columns::largest:
        return Quality::largestSize;
    case columns::smallest:
        return Quality::smallestSize;
    case columns::outOfRound:
        return Quality::outOfRound;
    case columns::taper:
        return Quality::taper;
    default:
        return std::nullopt;
    }
}

QString cell(const BoreResult& bore, int column, const DisplayUnits& units) {
    switch (column) {
    case columns::bore:
        return QString::number(bore.bore);
    case columns::verdict:
        return verdictWord(bore.verdict);
    case columns::toGo:
        return toGoText(bore, units);
    case columns::read:
        return tr("%1 of %2").arg(bore.measured).arg(bore.asked);
    case columns::shape:
        return bore.shape ? q(shapeWord(*bore.shape)) : nothing;
    default:
        return formatted(valueOf(bore, column, units), units, false);
    }
}

namespace {

QString aimText(AimAnswer answer) {
    return tr("; aim: %1").arg(q(std::string(nameOf(answer))));
}

// Of the columns that hold no figure.
QString wordsOf(const BoreResult& bore, int column, const DisplayUnits& units) {
    const QString subject = tr("Bore %1").arg(bore.bore);
    switch (column) {
    case columns::verdict: {
        QString word = tr("%1: %2").arg(subject, verdictWord(bore.verdict));
        if (!bore.why.empty()) word = tr("%1 (%2)").arg(word, q(bore.why));
        return bore.settles.empty() ? word : tr("%1. %2").arg(word, q(bore.settles));
    }
    case columns::shape:
        return bore.shapeWords.empty()
                   ? tr("%1: shape not told, the doubt is not known").arg(subject)
                   : tr("%1: %2").arg(subject, q(bore.shapeWords));
    case columns::read:
        return tr("%1: %2 of %3 readings that were asked for")
            .arg(subject)
            .arg(bore.measured)
            .arg(bore.asked);
    case columns::toGo:
        return tr("%1: %2 %3 to go")
            .arg(subject, toGoText(bore, units), QString::fromUtf8(symbol(units.small)));
    default:
        return subject;
    }
}

} // namespace

QString sentence(const BoreResult& bore, int column, const Budget& budget,
                 const DisplayUnits& units) {
    if (column == columns::bore || column == columns::verdict || column >= columns::shape)
        return wordsOf(bore, column, units);
    const QString subject = tr("Bore %1").arg(bore.bore);
    const Value value = valueOf(bore, column, units);
    if (!value.length) return tr("%1: %2 not measured").arg(subject, name(column));
    QString text = tr("%1: %2 %3").arg(subject, name(column), formatted(value, units, true));
    text += doubt_text::around(bore, column, budget, units);
    if (!value.place.isEmpty()) text += ' ' + value.place;
    if (column == columns::straight && bore.straight != AimAnswer::noAim)
        text += aimText(bore.straight);
    const Judgement* judgement = judgementOf(bore, column);
    if (judgement != nullptr && judgement->limit)
        text += tr("; allowed %1: %2")
                    .arg(limitText(*judgement->limit, judgement->quality, units),
                         verdictWord(judgement->verdict));
    return text + doubt_text::behind(bore, column, units);
}

QString head(int column, const SurveyResult* survey, const DisplayUnits& units) {
    QString text = name(column);
    const bool isSize =
        column == columns::largest || column == columns::smallest || column == columns::mean;
    const bool isSmall =
        (column >= columns::outOfRound && column <= columns::straight) || column == columns::toGo;
    if (isSize) text += ", " + QString::fromUtf8(symbol(units.size));
    if (isSize && survey != nullptr && survey->doubts.budget.known())
        text += " ± " + QString::fromUtf8(symbol(units.small));
    if (isSmall) text += ", " + QString::fromUtf8(symbol(units.small));
    const auto quality = qualityOf(column);
    if (survey != nullptr && quality)
        if (const auto limit = sharedLimit(*survey, column))
            text += '\n' + limitText(*limit, *quality, units);
    return text;
}

std::optional<Station> stationOf(const BoreResult& bore, int column) {
    if (bore.form) {
        const BoreForm& form = *bore.form;
        if (column == columns::largest || column == columns::verdict)
            return Station{bore.bore, form.largest.depth, form.largest.axis};
        if (column == columns::smallest)
            return Station{bore.bore, form.smallest.depth, form.smallest.axis};
        if (column == columns::taper && form.worstTaper)
            return Station{bore.bore, form.worstTaper->largestAt, form.worstTaper->axis};
        if (column == columns::outOfRound && form.outOfRound)
            for (const StationResult& station : bore.stations)
                if (station.station.depth == form.outOfRound->depth) return station.station;
    }
    if (bore.stations.empty()) return std::nullopt;
    return bore.stations.front().station;
}

} // namespace borewright::verdict_text
