// SPDX-License-Identifier: GPL-3.0-or-later
// What next with the hone, searched off the window's thread: the bore looked at first, then the
// whole block, then the alternatives where they are looked at. What was found stays until something
// better is; whether it is of the workbook as it stands now can be asked.
#pragma once

#include "app/document/selection.h"
#include "app/hone/latest_job.h"
#include "core/results/hone_outlook.h"

#include <QTimer>

namespace borewright {

class HoneSearch : public QObject {
    Q_OBJECT
public:
    HoneSearch(Document& document, const Selection& selection, QObject* parent = nullptr);

    // Something changed: what was found is of before.
    void outdate();
    // Another workbook: what was found is of no use.
    void forget();
    // After a moment without further changes; now.
    void askSoon();
    void askNow();
    void cancel();
    // Waits for what is being searched (for pictures and tests).
    void finish();
    void setWishes(const HoneWishes& wishes);
    [[nodiscard]] const HoneWishes& wishes() const { return m_wishes; }
    void setAlternativesWanted(bool wanted);

    [[nodiscard]] bool isSearching() const { return m_soon.isActive() || m_job.isBusy(); }
    [[nodiscard]] double progress() const { return m_progress; } // 0 … 1
    // Of the workbook, the wishes and the units as they are now.
    [[nodiscard]] bool isOfNow() const { return m_found == m_wanted && !m_outlook.cancelled; }
    [[nodiscard]] bool isOfNow(int bore) const;
    [[nodiscard]] const HoneOutlook& outlook() const { return m_outlook; }
    [[nodiscard]] const BoreOutlook* bore(int number) const;
    [[nodiscard]] const StoneOutlook* stone(const std::string& id) const;
    // Why there is nothing: nothing found yet, the search was stopped.
    [[nodiscard]] QString waitingWords() const;

signals:
    void found(quint64 revision); // the outlook, or a part of it, is of that revision
    void stateChanged();          // searching or not, progress

private:
    struct Question;
    void search(const Question& question, const LatestJob::Line& line);
    void keepBore(const HoneOutlook& part, quint64 wanted, quint64 revision);
    void keepAll(HoneOutlook whole, quint64 wanted, quint64 revision);
    void keepAlternatives(const HoneOutlook& part);
    void setProgress(double progress);

    Document& m_document;
    const Selection& m_selection;
    HoneWishes m_wishes;
    bool m_alternatives = false;
    std::shared_ptr<HoneMemory> m_memory;
    HoneOutlook m_outlook;
    quint64 m_wanted = 1; // counts what makes an outlook old
    quint64 m_found = 0;
    std::pair<int, quint64> m_boreFound{0, 0}; // one bore that is ahead of the rest
    double m_progress = 0;
    QTimer m_soon;
    LatestJob m_job;
};

} // namespace borewright
