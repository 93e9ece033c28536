// SPDX-License-Identifier: GPL-3.0-or-later
// Computes one survey of a workbook. Part of results.
#pragma once

#include "core/results/results.h"

#include <set>

namespace borewright {

class SurveyComputer {
public:
    SurveyComputer(const Workbook& workbook, const Survey& survey, const DisplayUnits& units,
                   DoubtMemory& memory, Reckoning reckoning);
    SurveyResult compute();

private:
    void startBore(SurveyResult& result, int number);
    void addStation(BoreResult& bore, Gauged gauged);
    void finish(BoreResult& bore) const;
    void answerStraight(BoreResult& bore) const;
    void doubt(SurveyResult& result);
    void doubtBores(SurveyResult& result, Length size);
    void nameShape(BoreResult& bore, const TrialBore& trial) const;
    void markOdd(SurveyResult& result) const;
    void tellWhatSettles(SurveyResult& result) const;
    [[nodiscard]] std::vector<OpenCall> openCalls(const BoreResult& bore,
                                                  const Budget& budget) const;
    [[nodiscard]] std::optional<Length> usualSize() const;

    const Workbook& m_workbook;
    const Survey& m_survey;
    const DisplayUnits& m_units;
    DoubtMemory& m_memory;
    Reckoning m_reckoning;
    std::vector<std::string> m_axisOrder;
    std::set<Station> m_asked;
    const LimitSet* m_set = nullptr;
    const Bore* m_bore = nullptr;
    std::vector<ReadAt> m_read; // every station with a diameter, in the order of the result
};

} // namespace borewright
