// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/document/selection.h"

namespace borewright {

Selection::Selection(Document& document, QObject* parent)
    : QObject(parent)
    , m_document(document) {
    connect(&document, &Document::changed, this, [this](Change change) {
        if (change == Change::everything) {
            m_survey.clear();
            m_bore = 0;
            m_station.reset();
        }
        if (change != Change::units) keepValid();
    });
    keepValid();
}

void Selection::setSurvey(const std::string& survey) {
    if (survey == m_survey || findSurvey(m_document.workbook(), survey) == nullptr) return;
    m_survey = survey;
    emit changed();
}

void Selection::setBore(int bore) {
    if (bore == m_bore || findBore(m_document.workbook().block, bore) == nullptr) return;
    m_bore = bore;
    if (m_station && m_station->bore != bore) m_station.reset();
    emit changed();
}

void Selection::setStation(const Station& station) {
    if (m_station == station || findBore(m_document.workbook().block, station.bore) == nullptr)
        return;
    m_bore = station.bore;
    m_station = station;
    emit changed();
}

void Selection::keepValid() {
    const Workbook& workbook = m_document.workbook();
    const auto before = std::tuple(m_survey, m_bore, m_station);
    if (findSurvey(workbook, m_survey) == nullptr)
        m_survey = workbook.surveys.empty() ? std::string() : workbook.surveys.back().header.id;
    if (findBore(workbook.block, m_bore) == nullptr) {
        m_station.reset();
        m_bore = 0;
        for (const Bore& bore : workbook.block.bores)
            if (m_bore == 0 || bore.number < m_bore) m_bore = bore.number;
    }
    if (before != std::tuple(m_survey, m_bore, m_station)) emit changed();
}

} // namespace borewright
