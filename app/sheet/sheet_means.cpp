// SPDX-License-Identifier: GPL-3.0-or-later
// What the bores were measured with, what it was set on, and the limits, in words.
#include "app/pictures/reading_words.h"
#include "app/sheet/sheet_data.h"

#include <algorithm>

namespace borewright {
namespace {

// One sentence where all surveys agree, else one a survey.
template<class Say>
void addShared(std::vector<SheetFact>& facts, const QString& name,
               const std::vector<const SurveyHeader*>& surveys, const Say& say) {
    QStringList texts, named;
    for (const SurveyHeader* survey : surveys) {
        const QString text = say(*survey);
        texts << text;
        if (!text.isEmpty()) named << SheetWords::tr("%1: %2").arg(qs(survey->name), text);
    }
    texts.removeDuplicates();
    if (texts.isEmpty() || texts == QStringList{QString()}) return;
    facts.push_back({name, texts.size() == 1 ? texts.front() : named.join(QStringLiteral("; "))});
}

QString setOnText(const SurveyHeader& survey) {
    const GaugeSetting& gauge = survey.gauge;
    const QString size = gauge.setSize ? sheetTyped(*gauge.setSize) : QString();
    if (gauge.setOn.empty()) return size;
    if (size.isEmpty()) return qs(gauge.setOn);
    return SheetWords::tr("%1 on %2").arg(size, qs(gauge.setOn));
}

QString temperatureText(const SurveyHeader& survey) {
    if (!correctsTemperature(survey.gauge))
        return SheetWords::tr("not recorded: no correction was made");
    return SheetWords::tr("master %1, block %2: brought to 20 °C")
        .arg(qs(survey.gauge.masterTemperature->withScale()),
             qs(survey.gauge.blockTemperature->withScale()));
}

QString plateText(const SurveyHeader& survey) {
    if (!survey.plate) return {};
    return *survey.plate ? SheetWords::tr("on") : SheetWords::tr("off");
}

QString limitsText(const Limits& limits) {
    QStringList parts;
    const auto add = [&](const std::optional<TypedLength>& limit, const QString& words) {
        if (limit) parts << words.arg(sheetTyped(*limit));
    };
    add(limits.sizeLower, SheetWords::tr("size from %1"));
    add(limits.sizeUpper, SheetWords::tr("size up to %1"));
    add(limits.outOfRound, SheetWords::tr("out-of-round up to %1"));
    add(limits.taper, SheetWords::tr("taper up to %1"));
    return parts.isEmpty() ? SheetWords::tr("nothing limited") : parts.join(QStringLiteral(", "));
}

} // namespace

std::vector<const SurveyHeader*> toldSurveys(const Workbook& workbook, const Results& results) {
    std::vector<const SurveyHeader*> told;
    for (const Survey& survey : workbook.surveys) {
        const auto tells = [&](const BoreStory& story) {
            return story.wasSurvey == survey.header.id || story.nowSurvey == survey.header.id;
        };
        if (std::ranges::any_of(results.stories, tells)) told.push_back(&survey.header);
    }
    return told;
}

std::vector<SheetFact> sheetMeans(const Workbook& workbook, const Results& results,
                                  const DisplayUnits&) {
    const auto surveys = toldSurveys(workbook, results);
    std::vector<SheetFact> facts;
    addShared(facts, SheetWords::tr("Measured with"), surveys,
              [](const SurveyHeader& survey) { return qs(survey.gauge.gauge); });
    addShared(facts, SheetWords::tr("Gauge set to"), surveys, setOnText);
    addShared(facts, SheetWords::tr("Temperatures"), surveys, temperatureText);
    addShared(facts, SheetWords::tr("Torque plate"), surveys, plateText);
    if (std::ranges::any_of(results.stories, &BoreStory::plateDiffers))
        facts.push_back({SheetWords::tr("Take care"),
                         SheetWords::tr("the two surveys differ in the torque plate, so they do "
                                        "not compare exactly")});
    return facts;
}

std::vector<SheetFact> sheetLimits(const Workbook& workbook) {
    std::vector<SheetFact> facts;
    for (const LimitSet& set : workbook.limitSets) {
        QStringList lines;
        QString words = limitsText(set.limits);
        if (set.taperRule == TaperRule::endToEnd)
            words += SheetWords::tr("; taper counts from end to end");
        lines << words;
        for (const auto& [bore, limits] : set.perBore)
            lines << SheetWords::tr("bore %1: %2").arg(bore).arg(limitsText(limits));
        const QString purpose =
            set.purpose == LimitPurpose::worn ? SheetWords::tr("worn") : SheetWords::tr("finish");
        const QString name = qs(set.name);
        facts.push_back({name == purpose || name.isEmpty()
                             ? SheetWords::tr("Limits, %1").arg(purpose)
                             : SheetWords::tr("Limits, %1, %2").arg(purpose, name),
                         lines.join('\n')});
    }
    if (workbook.straightAim)
        facts.push_back({SheetWords::tr("Aim, not a limit"),
                         SheetWords::tr("straight within %1 along each axis, over every depth read")
                             .arg(sheetTyped(*workbook.straightAim))});
    return facts;
}

} // namespace borewright
