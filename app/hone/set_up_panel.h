// SPDX-License-Identifier: GPL-3.0-or-later
// The next set-up of the chosen bore: what it is, what is expected of it, and what he does with it.
#pragma once

#include "app/context/page_context.h"
#include "app/fields/number_field.h"
#include "app/hone/hone_search.h"
#include "app/hone/watch_panel.h"
#include "app/pictures/hone_section.h"

#include <QLabel>
#include <QPushButton>
#include <QStackedLayout>
#include <QWidget>

#include <array>

namespace borewright {

class SetUpPanel : public QWidget {
    Q_OBJECT
public:
    SetUpPanel(const PageContext& context, HoneSearch& search, QWidget* parent = nullptr);
    void refresh();
    // Another workbook: what was said and timed is of the one before.
    void forget();
    [[nodiscard]] WatchPanel* watch() const { return m_watch; }
    // The set-up that may be done now; nothing where there is none or it is of before a change.
    [[nodiscard]] const PlannedSetUp* doable() const;

    void doneAsPlanned();
    void playForMe();
    void measureNow();
    void ownLogged(); // a set-up of his own, from its form
    // His own set-up is in the drawing: the plan is not what would be logged or timed.
    void setOwn(const std::optional<HoneOwnDraft>& own);
    // What a verb came to; a refusal in the colour of one.
    void tell(const QString& words, bool refused);

signals:
    void logOwnAsked();
    void measureAsked(); // a check waits to be read

private:
    static constexpr std::size_t mostWindows = 3;

    QWidget* buildButtons();
    QWidget* buildSeconds();
    void showSeconds(const PlannedSetUp* planned);
    void takeCounted();
    [[nodiscard]] QString factsOf(const BoreOutlook& outlook) const;
    [[nodiscard]] QStringList wholeSentences(const std::vector<std::string>& sentences) const;
    [[nodiscard]] QString noSetUpWords() const;
    // There is no set-up to do anything with: a moment's patience, or `otherwise`.
    void refuseForNow(const QString& otherwise);
    [[nodiscard]] bool waitsForSurvey() const;
    // Where the chosen bore waits: to one that can be gone on with at this stop.
    void goWhereWorkIs();
    [[nodiscard]] std::vector<Station> toMeasure() const;
    void sayLogged();
    void timeWhatIsDrawn();
    [[nodiscard]] SurveyHeader proposedHeader() const;
    void followRefusal(const Result<void>& done, const QString& words);

    PageContext m_context;
    HoneSearch& m_search;
    QLabel* m_sentence;
    QLabel* m_facts;
    QWidget* m_secondsRow = nullptr;
    std::array<NumberField*, mostWindows> m_seconds{};
    QString m_secondsOf; // the set-up that the fields were filled from
    QPushButton* m_done;
    QPushButton* m_own;
    QPushButton* m_measure;
    QPushButton* m_play;
    QLabel* m_refusal;
    QLabel* m_said;
    bool m_toldToWait = false; // the refusal goes when the set-up comes
    int m_toldOf = 0;          // the bore that the words are of
    bool m_toldLogged = false; // they are of a pass that waits for its check
    std::optional<HoneOwnDraft> m_ownDraft;
    QStackedLayout* m_words; // one or the other of these, in the same room
    QLabel* m_secondsName = nullptr;
    WatchPanel* m_watch;
    // What the set-up done last asks to be measured, by bore: the plan itself goes on from there.
    std::map<int, std::vector<Station>> m_toMeasure;
};

} // namespace borewright
