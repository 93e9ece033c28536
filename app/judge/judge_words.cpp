// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/judge/judge_words.h"

#include "app/pictures/verdict_mark.h"
#include "core/results/words.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>
#include <map>

namespace borewright::judge_words {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("JudgeWords", text);
}

QString q(const std::string& text) {
    return QString::fromStdString(text);
}

QString bores(const std::vector<int>& numbers) {
    const QString list = q(listed(numbers));
    return numbers.size() == 1 ? tr("bore %1").arg(list) : tr("bores %1").arg(list);
}

const StationResult* firstOdd(const SurveyResult& survey) {
    for (const BoreResult& bore : survey.bores)
        for (const StationResult& station : bore.stations)
            if (!station.odd.empty()) return &station;
    return nullptr;
}

const StationResult* firstMissing(const SurveyResult& survey) {
    for (const BoreResult& bore : survey.bores)
        for (const StationResult& station : bore.stations)
            if (station.asked && station.wall && !station.diameter) return &station;
    return nullptr;
}

QString honeOn(const SurveyResult& survey, const DisplayUnits& units) {
    const BoreResult* most = nullptr;
    for (const BoreResult& bore : survey.bores)
        if (bore.mostToGo && (most == nullptr || *bore.mostToGo > *most->mostToGo)) most = &bore;
    if (most == nullptr || *most->mostToGo <= Length()) return tr("Hone on, then measure again.");
    return tr("Hone on: %1 to go at the most, in bore %2.")
        .arg(q(smallWithUnit(*most->mostToGo, units)))
        .arg(most->bore);
}

QString capital(QString text) {
    if (!text.isEmpty()) text[0] = text[0].toUpper();
    return text;
}

// What is too close to call, and the one thing to do about it.
QString settle(const SurveyResult& survey) {
    std::vector<int> open;
    for (const BoreResult& bore : survey.bores)
        if (bore.verdict == Verdict::tooCloseToCall) open.push_back(bore.bore);
    if (open.empty()) return {};
    const QString told =
        capital(open.size() == 1 ? tr("%1 is too close to call.").arg(bores(open))
                                 : tr("%1 are too close to call.").arg(bores(open)));
    if (survey.doubts.settles.empty())
        return tr("%1 Measure again, with a finer gauge if you have one.").arg(told);
    return tr("%1 %2.").arg(told, capital(q(survey.doubts.settles)));
}

QString byVerdict(const SurveyResult& survey, const DisplayUnits& units) {
    switch (survey.verdict) {
    case Verdict::outside:
        return (tr("Look at what is outside, then choose: hone, bore to an oversize, or renew.") +
                ' ' + settle(survey))
            .trimmed();
    case Verdict::notYet:
        return honeOn(survey, units);
    case Verdict::tooCloseToCall:
        return settle(survey);
    case Verdict::within:
        return tr("Everything that was measured is within: the sheet can be printed.");
    default:
        return tr("The limits leave nothing to judge: complete them on the Block page.");
    }
}

bool sameReason(const BoreResult& a, const BoreResult& b) {
    return a.verdict == b.verdict && a.why == b.why;
}

} // namespace

QString nextStep(const Workbook& workbook, const SurveyResult* survey, const DisplayUnits& units) {
    if (workbook.block.bores.empty()) return tr("Describe the block first, on the Block page.");
    if (survey == nullptr)
        return tr("Nothing has been measured yet: start a survey on the Measure page.");
    if (const StationResult* odd = firstOdd(*survey))
        return tr("Look again at %1: %2.")
            .arg(q(describe(odd->station, workbook.block)), q(odd->odd.front()));
    if (const StationResult* missing = firstMissing(*survey)) {
        const QString where = q(describe(missing->station, workbook.block));
        const int left = survey->asked - survey->measured;
        return left == 1 ? tr("One reading is missing: %1.").arg(where)
                         : tr("%1 readings are missing, first %2.").arg(left).arg(where);
    }
    if (!survey->hasLimits) {
        QString why = q(survey->judgedBy);
        if (!why.isEmpty()) why[0] = why[0].toUpper();
        return tr("%1.").arg(why);
    }
    return byVerdict(*survey, units);
}

QString summary(const SurveyResult* survey) {
    if (survey == nullptr || !survey->hasLimits) return {};
    QStringList sentences;
    std::vector<const BoreResult*> told;
    for (const BoreResult& bore : survey->bores) {
        const bool known = std::ranges::any_of(
            told, [&](const BoreResult* other) { return sameReason(*other, bore); });
        if (known) continue;
        told.push_back(&bore);
        std::vector<int> alike;
        for (const BoreResult& other : survey->bores)
            if (sameReason(other, bore)) alike.push_back(other.bore);
        QString sentence = tr("%1 %2").arg(bores(alike), verdictWord(bore.verdict));
        if (!bore.why.empty()) sentence += tr(" on %1").arg(q(bore.why));
        sentences << sentence;
    }
    if (sentences.isEmpty()) return {};
    QString text = tr("By the limits “%1”: %2.").arg(q(survey->judgedBy), sentences.join("; "));
    return text;
}

QString plateWarning(const Workbook& workbook, const std::string& survey) {
    const Survey* now = findSurvey(workbook, survey);
    if (now == nullptr) return {};
    QStringList names;
    for (const Survey& earlier : workbook.surveys) {
        if (&earlier == now) break;
        if (earlier.header.plate != now->header.plate && !earlier.readings.empty())
            names << tr("“%1”").arg(q(earlier.header.name));
    }
    if (names.isEmpty()) return {};
    return tr("%1 and this survey were not taken alike as to the torque plate (on, off or not "
              "said), so they do not compare exactly.")
        .arg(names.join(", "));
}

} // namespace borewright::judge_words
