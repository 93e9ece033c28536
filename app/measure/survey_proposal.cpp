// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/survey_proposal.h"

#include "app/measure/gear_words.h"

#include <algorithm>

namespace borewright {
namespace {

bool inInches(const TypedLength& length) {
    return isInchFamily(length.unit());
}

void proposeForFirst(const Workbook& workbook, const Preferences& preferences, Unit small,
                     SurveyProposal& proposal) {
    GaugeSetting& gauge = proposal.header.gauge;
    gauge = preferences.gauge;
    proposal.usualGear = !preferences.gearChosen;
    if (!workbook.block.bores.empty()) {
        const Bore& bore = workbook.block.bores.front();
        // A dial of the other system is nobody's for this block.
        if (bore.standardSize && inInches(*bore.standardSize) != inInches(gauge.dial.graduation)) {
            const auto larger = gauge.dial.larger;
            gauge.dial = inInches(*bore.standardSize) ? tenthDial() : micrometreDial();
            gauge.dial.larger = larger;
            gauge.gauge.clear();
            proposal.usualGear = true;
        }
        if (bore.surface == Surface::ironSleeveInAluminium)
            gauge.blockExpansion = Expansion::sleeveInAluminium;
        if (bore.surface == Surface::bareAluminium || bore.surface == Surface::plated)
            gauge.blockExpansion = Expansion::aluminium;
    }
    if (proposal.usualGear) gauge.gear = gearFor(fittingChoice(gauge.dial), small);
}

} // namespace

SurveyProposal proposeSurvey(const Workbook& workbook, const Preferences& preferences, Unit small) {
    SurveyProposal proposal;
    SurveyHeader& header = proposal.header;
    header.id = freshSurveyId(workbook);
    if (workbook.surveys.empty()) {
        proposeForFirst(workbook, preferences, small, proposal);
    } else {
        header.kind = SurveyKind::check;
        header.gauge = gaugeAgain(workbook.surveys.back().header.gauge);
        header.plate = workbook.surveys.back().header.plate;
    }
    proposeSetSize(workbook, header);
    return proposal;
}

void proposeSetSize(const Workbook& workbook, SurveyHeader& header) {
    const LimitPurpose purpose = purposeOf(header.kind);
    for (auto survey = workbook.surveys.rbegin(); survey != workbook.surveys.rend(); ++survey)
        if (purposeOf(survey->header.kind) == purpose) {
            header.gauge.setSize = survey->header.gauge.setSize;
            header.limitSet = survey->header.limitSet;
            return;
        }
    header.gauge.setSize.reset();
    header.limitSet.reset();
    if (workbook.block.bores.empty()) return;
    const Bore& bore = workbook.block.bores.front();
    if (purpose == LimitPurpose::worn) header.gauge.setSize = bore.standardSize;
    const auto set = judgingSet(workbook, header);
    if (purpose == LimitPurpose::finish && set && bore.standardSize)
        if (const auto size = finishSizeFor(**set, bore))
            header.gauge.setSize = typedFrom(*size, bore.standardSize->unit());
}

QString proposeSurveyName(const Workbook& workbook, SurveyKind kind) {
    const auto text = nameOf(kind);
    const QString base = QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
    const auto taken = [&](const QString& name) {
        return std::ranges::any_of(workbook.surveys, [&](const Survey& survey) {
            return survey.header.name == name.toStdString();
        });
    };
    QString name = base;
    for (int n = 2; taken(name); ++n)
        name = base + QStringLiteral(" %1").arg(n);
    return name;
}

} // namespace borewright
