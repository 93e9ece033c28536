// SPDX-License-Identifier: GPL-3.0-or-later
// The same spot ten times, without its widgets: the readings taken so far, what they tell, and how
// they are kept in the workbook and with the gauge.
#pragma once

#include "app/context/page_context.h"
#include "core/gauging/study.h"

#include <QObject>

#include <optional>

namespace borewright {

class StudyWalk : public QObject {
    Q_OBJECT
public:
    static constexpr int wanted = 10; // readings of a run

    explicit StudyWalk(const PageContext& context, QObject* parent = nullptr);

    // Begins for the chosen survey's gauge; goes on with today's study of it that is not full.
    void begin();
    [[nodiscard]] const RepeatStudy& study() const { return m_study; }
    [[nodiscard]] std::string gauge() const { return m_study.gauge; }
    // What a bare number is typed in.
    [[nodiscard]] Unit unit() const;
    [[nodiscard]] int readInRun() const;
    [[nodiscard]] bool isEmpty() const;

    // Each gives why not, or an empty text.
    QString add(const QString& text);
    void takeBack();
    void strike(std::size_t run, std::size_t reading);
    void setPerson(const QString& person);
    void setSpot(const QString& spot);
    // A new run for another person or another spot.
    QString another();

    // What the readings tell; nothing before the third.
    [[nodiscard]] std::optional<StudyResult> result() const;
    // Puts the study into the workbook as it is, where anything was read.
    void keep();
    // Writes the repeatability into the survey's gear and the kept gauge, with the study, as one
    // step.
    QString use();
    // Another workbook was opened: what is here belongs to none.
    void forget();

signals:
    void changed();

private:
    [[nodiscard]] const SurveyHeader* header() const;
    [[nodiscard]] Edit storing() const;
    RepeatRun& run() { return m_study.runs.back(); }

    PageContext m_context;
    std::string m_survey;
    RepeatStudy m_study;
};

} // namespace borewright
