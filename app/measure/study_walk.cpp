// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/study_walk.h"

#include <algorithm>

namespace borewright {
namespace {

constexpr std::size_t dateLetters = 10; // of "2026-03-11T09:26:53Z"

bool isFull(const RepeatStudy& study) {
    return !study.runs.empty() && study.runs.back().typed.size() >= StudyWalk::wanted;
}

Length stepOf(const GaugeSetting& gauge) {
    return gauge.gear.step ? gauge.gear.step->value() : gauge.dial.graduation.value();
}

bool isNothing(const RepeatRun& run) {
    return run.typed.empty();
}

} // namespace

StudyWalk::StudyWalk(const PageContext& context, QObject* parent)
    : QObject(parent)
    , m_context(context) {}

const SurveyHeader* StudyWalk::header() const {
    const Survey* survey = findSurvey(m_context.document.workbook(), m_survey);
    return survey == nullptr ? nullptr : &survey->header;
}

Unit StudyWalk::unit() const {
    const SurveyHeader* survey = header();
    const DisplayUnits& units = m_context.document.units();
    return survey != nullptr && survey->gauge.entry == Entry::diameter ? units.size : units.small;
}

void StudyWalk::begin() {
    const Workbook& workbook = m_context.document.workbook();
    m_survey = m_context.selection.survey();
    const SurveyHeader* survey = header();
    const std::string gauge = survey == nullptr ? std::string() : survey->gauge.gauge;
    const std::string today = toIso(m_context.document.now()).substr(0, dateLetters);
    const auto open = std::ranges::find_if(
        workbook.studies.rbegin(), workbook.studies.rend(), [&](const RepeatStudy& study) {
            return study.gauge == gauge && study.when == today && !isFull(study);
        });
    if (open != workbook.studies.rend()) {
        m_study = *open;
        if (m_study.runs.empty()) m_study.runs.emplace_back();
    } else {
        m_study = {freshStudyId(workbook), gauge, today, {RepeatRun()}};
        run().person = m_context.preferences.value().measuredBy.toStdString();
    }
    emit changed();
}

int StudyWalk::readInRun() const {
    return m_study.runs.empty() ? 0 : static_cast<int>(m_study.runs.back().typed.size());
}

bool StudyWalk::isEmpty() const {
    return std::ranges::all_of(m_study.runs, isNothing);
}

QString StudyWalk::add(const QString& text) {
    const SurveyHeader* survey = header();
    if (survey == nullptr || m_study.runs.empty()) return tr("the survey is gone");
    const auto typed = readTyped(text.toStdString(), unit());
    if (!typed) return QString::fromStdString(typed.error().message());
    const GaugeSetting& gauge = survey->gauge;
    if (gauge.entry == Entry::deviation &&
        typed->value().magnitude() > gauge.dial.travel.value().magnitude())
        return tr("the dial does not move that far");
    for (const RepeatRun& other : m_study.runs)
        for (const TypedLength& before : other.typed)
            if (isInchFamily(before.unit()) != isInchFamily(typed->unit()))
                return tr("inches and millimetres are mixed");
    run().typed.push_back(*typed);
    m_context.sounds.kept();
    emit changed();
    return {};
}

void StudyWalk::takeBack() {
    if (readInRun() > 0) strike(m_study.runs.size() - 1, run().typed.size() - 1);
}

void StudyWalk::strike(std::size_t index, std::size_t reading) {
    if (index >= m_study.runs.size() || reading >= m_study.runs[index].typed.size()) return;
    auto& typed = m_study.runs[index].typed;
    typed.erase(typed.begin() + static_cast<std::ptrdiff_t>(reading));
    emit changed();
}

void StudyWalk::setPerson(const QString& person) {
    if (m_study.runs.empty()) return;
    run().person = person.trimmed().toStdString();
    emit changed();
}

void StudyWalk::setSpot(const QString& spot) {
    if (m_study.runs.empty()) return;
    run().spot = spot.trimmed().toStdString();
    emit changed();
}

QString StudyWalk::another() {
    if (readInRun() == 0) return tr("read this one first");
    m_study.runs.push_back({run().person, run().spot, {}, {}});
    emit changed();
    return {};
}

std::optional<StudyResult> StudyWalk::result() const {
    const SurveyHeader* survey = header();
    if (survey == nullptr) return std::nullopt;
    const auto result = studyOf(m_study, stepOf(survey->gauge));
    return result ? std::optional(*result) : std::nullopt;
}

Edit StudyWalk::storing() const {
    std::vector<RepeatStudy> studies = m_context.document.workbook().studies;
    RepeatStudy kept = m_study;
    std::erase_if(kept.runs, isNothing);
    const auto place = std::ranges::find(studies, kept.id, &RepeatStudy::id);
    if (kept.runs.empty()) {
        if (place != studies.end()) studies.erase(place);
    } else if (place != studies.end()) {
        *place = kept;
    } else {
        studies.push_back(kept);
    }
    return SetStudies{std::move(studies)};
}

void StudyWalk::keep() {
    if (m_study.id.empty()) return;
    (void)m_context.document.edit(storing(), tr("readings of one spot"));
}

QString StudyWalk::use() {
    const SurveyHeader* survey = header();
    if (survey == nullptr) return tr("the survey is gone");
    const auto result = studyOf(m_study, stepOf(survey->gauge));
    if (!result) return QString::fromStdString(result.error().message());
    SurveyHeader changed = *survey;
    changed.gauge.gear = withStudy(changed.gauge.gear, *result, m_context.document.units().small);
    const EditGroup both{{SetSurveyHeader{changed.id, changed}, storing()}};
    const auto done = m_context.document.edit(both, tr("repeatability of the gauge"));
    if (!done) return QString::fromStdString(done.error().message());
    m_context.preferences.set(withGauge(m_context.preferences.value(), changed.gauge));
    return {};
}

void StudyWalk::forget() {
    m_survey.clear();
    m_study = {};
}

} // namespace borewright
