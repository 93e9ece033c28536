// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/hone/own_forecast.h"

#include "app/pictures/reading_words.h"

namespace borewright {

OwnForecast::OwnForecast(Document& document, QObject* parent)
    : QObject(parent)
    , m_document(document)
    , m_memory(newHoneMemory()) {}

void OwnForecast::forget() {
    m_job.giveUp();
    m_memory = newHoneMemory();
}

void OwnForecast::ask(int bore, const std::string& stone,
                      const std::vector<StrokeWindow>& windows) {
    m_job.start([=, this, workbook = m_document.workbook(), results = m_document.results(),
                 units = m_document.units(), memory = m_memory](const LatestJob::Line& line) {
        auto expected = std::make_shared<const Result<OwnSetUp>>(
            foreseeOwn(workbook, results, units, bore, stone, windows, memory));
        line.tell([this, expected] {
            if (*expected)
                emit reckoned(**expected);
            else
                emit refused(qs(expected->error().message()));
        });
    });
}

} // namespace borewright
