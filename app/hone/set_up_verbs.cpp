// SPDX-License-Identifier: GPL-3.0-or-later
// What the buttons of the set-up write: a pass, a played round, a check to be measured. Part of
// set_up_panel.h.
#include "app/hone/hone_verbs.h"
#include "app/hone/played_round.h"
#include "app/hone/set_up_panel.h"
#include "app/measure/survey_proposal.h"
#include "app/pictures/reading_words.h"
#include "core/results/hone_log.h"

#include <algorithm>

namespace borewright {

bool SetUpPanel::waitsForSurvey() const {
    const HoneLog log = honeLogOf(m_context.document.workbook(), m_context.document.results(),
                                  m_context.document.units());
    return std::ranges::any_of(log.bores, [this](const BoreHoneLog& bore) {
        return bore.bore == m_context.selection.bore() && bore.waitsForSurvey;
    });
}

void SetUpPanel::followRefusal(const Result<void>& done, const QString& words) {
    if (!done) m_context.sounds.refused();
    tell(done ? words : qs(done.error().message()), !done);
}

void SetUpPanel::doneAsPlanned() {
    if (m_ownDraft) {
        m_context.sounds.refused();
        return tell(
            tr("Your own set-up is in the drawing: Ctrl+Enter in its form logs that. For the "
               "planned one open “Plan” first."),
            true);
    }
    const PlannedSetUp* planned = doable();
    if (planned == nullptr)
        return refuseForNow(tr("There is no set-up to log yet: F5 works one out."));
    Document& document = m_context.document;
    const int bore = m_context.selection.bore();
    std::vector<std::optional<double>> seconds;
    for (std::size_t i = 0; i < std::min(mostWindows, planned->windows.size()); ++i) {
        if (!m_seconds[i]->commit()) return m_seconds[i]->edit()->setFocus();
        seconds.push_back(m_seconds[i]->value());
    }
    const std::vector<Station> measure = planned->measure;
    const Pass pass = passNow(document.workbook(), bore, planned->stone,
                              windowsOf(*planned, seconds), document.now());
    const auto done = changeHone(document, tr("pass in bore %1").arg(bore),
                                 [&](HoneRecord& record) { record.passes.push_back(pass); });
    if (!done) return followRefusal(done, {});
    m_toMeasure[bore] = measure;
    sayLogged();
}

SurveyHeader SetUpPanel::proposedHeader() const {
    Document& document = m_context.document;
    return proposeSurvey(document.workbook(), m_context.preferences.value(), document.units().small)
        .header;
}

void SetUpPanel::goWhereWorkIs() {
    const BoreOutlook* here = m_search.bore(m_context.selection.bore());
    if (here == nullptr || !here->waits || !m_search.isOfNow()) return;
    for (const BoreOutlook& bore : m_search.outlook().bores)
        if (bore.outcome == HoneOutcome::next && bore.next && !bore.waits)
            return m_context.selection.setBore(bore.bore);
}

void SetUpPanel::playForMe() {
    goWhereWorkIs();
    const PlannedSetUp* planned = doable();
    if (planned == nullptr)
        return refuseForNow(tr("There is no set-up to play: F5 works one out."));
    Document& document = m_context.document;
    const int bore = m_context.selection.bore();
    const auto round =
        playRound(document.workbook(), proposedHeader(), bore, *planned, document.now());
    if (!round) return followRefusal(tl::unexpected(round.error()), {});
    const auto done = document.edit(round->edit, tr("simulated pass in bore %1").arg(bore));
    if (done) m_context.selection.setSurvey(round->survey);
    followRefusal(done, tr("Simulated: a pass and its check were entered. Nothing was honed."));
}

// What the page names, or, while that is being worked out, what the set-up done last wanted read;
// else the bore's whole plan.
std::vector<Station> SetUpPanel::toMeasure() const {
    const int bore = m_context.selection.bore();
    if (!waitsForSurvey()) return {};
    const BoreOutlook* outlook = m_search.bore(bore);
    if (outlook != nullptr && m_search.isOfNow(bore)) return outlook->toRead;
    const auto planned = m_toMeasure.find(bore);
    return planned != m_toMeasure.end() ? planned->second : std::vector<Station>();
}

void SetUpPanel::measureNow() {
    Document& document = m_context.document;
    const int bore = m_context.selection.bore();
    if (const Survey* waiting = waitingCheck(document.workbook(), bore)) {
        m_context.selection.setSurvey(waiting->header.id);
        tell({}, false);
        emit measureAsked();
        return;
    }
    const SurveyHeader header =
        nextCheck(document.workbook(), proposedHeader(), bore, toMeasure(), document.now());
    if (header.asked->empty())
        return tell(tr("Bore %1 has no levels to measure: give it some on the Block page (Ctrl+1).")
                        .arg(bore),
                    true);
    const auto done =
        document.edit(InsertSurvey{document.workbook().surveys.size(), Survey{header, {}}},
                      tr("check of bore %1").arg(bore));
    followRefusal(done, {});
    if (!done) return;
    m_context.selection.setSurvey(header.id);
    const Order order = m_context.preferences.value().order;
    m_context.selection.setStation(
        inOrder(document.workbook().block, *header.asked, order).front());
    emit measureAsked();
}

} // namespace borewright
