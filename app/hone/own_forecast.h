// SPDX-License-Identifier: GPL-3.0-or-later
// What a set-up of his own would do, reckoned off the window's thread while he types or drags.
#pragma once

#include "app/document/document.h"
#include "app/hone/latest_job.h"
#include "app/pictures/hone_section.h"

namespace borewright {

class OwnForecast : public QObject {
    Q_OBJECT
public:
    explicit OwnForecast(Document& document, QObject* parent = nullptr);
    void ask(int bore, const std::string& stone, const std::vector<StrokeWindow>& windows);
    void giveUp() { m_job.giveUp(); }
    void finish() { m_job.finish(); }
    // Another workbook.
    void forget();

signals:
    void reckoned(const borewright::OwnSetUp& expected);
    void refused(const QString& why);

private:
    Document& m_document;
    std::shared_ptr<HoneMemory> m_memory; // its own: another thread's search has another
    LatestJob m_job;
};

} // namespace borewright
