// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/hone/hone_page.h"

#include "app/fields/fold.h"
#include "app/fields/scaled_font.h"
#include "app/hone/bore_list.h"
#include "app/hone/hone_words.h"
#include "app/hone/log_tab.h"
#include "app/hone/own_form.h"
#include "app/hone/plan_tab.h"
#include "app/hone/set_up_panel.h"
#include "app/hone/stages_tab.h"
#include "app/hone/stones_tab.h"
#include "app/hone/ticks_tab.h"
#include "app/hone/tool_tab.h"
#include "app/pictures/hone_section_view.h"
#include "app/pictures/reading_words.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QScrollArea>
#include <QShortcut>
#include <QVBoxLayout>

namespace borewright {
namespace {

constexpr int headLines = 2, tabsHeight = 196, wholeBar = 100;

// A tab is as high as it wants; the page is not.
QScrollArea* scrolled(QWidget* content) {
    auto* area = new QScrollArea;
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setFocusPolicy(Qt::NoFocus);
    area->setWidget(content);
    return area;
}

} // namespace

HonePage::HonePage(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_context(context)
    , m_search(new HoneSearch(context.document, context.selection, this))
    , m_headline(new QLabel(this))
    , m_progress(new QProgressBar(this))
    , m_next(new QPushButton(tr("What next (F5)"), this))
    , m_usual(new QPushButton(tr("Take the usual set of stones"), this))
    , m_bores(new BoreList(context, *m_search, this))
    , m_section(new HoneSectionView(context.document, context.selection, this))
    , m_panel(new SetUpPanel(context, *m_search, this))
    , m_tabs(new QTabWidget(this))
    , m_plan(new PlanTab(context, *m_search, this))
    , m_own(new OwnForm(context, this))
    , m_log(new LogTab(context, this))
    , m_stones(new StonesTab(context, *m_search, this))
    , m_tool(new ToolTab(context, this))
    , m_stages(new StagesTab(context.document, this))
    , m_ticks(new TicksTab(context.document, this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(16, 10, 16, 6);
    column->setSpacing(6);
    column->addWidget(buildHead());
    column->addWidget(buildMiddle(), 1);
    column->addWidget(buildTabs());
    column->addWidget(buildCautions());
    connectParts();
    addKeys();
    refresh(true);
}

QWidget* HonePage::buildHead() {
    auto* head = new QWidget(this);
    QFont face = scaledFont(m_headline->font(), 1.15);
    face.setWeight(QFont::DemiBold);
    m_headline->setFont(face);
    m_headline->setWordWrap(true);
    m_headline->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_headline->setFixedHeight(headLines * QFontMetrics(face).lineSpacing() + 2);
    m_headline->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_headline->setAccessibleName(tr("What next with the hone"));
    m_progress->setRange(0, wholeBar);
    m_progress->setTextVisible(false);
    m_progress->setFixedHeight(6);
    m_next->setToolTip(tr("Works it out anew; it is also done after each change"));
    m_progress->setAccessibleName(tr("How far the search is"));
    QSizePolicy kept = m_progress->sizePolicy();
    kept.setRetainSizeWhenHidden(true);
    m_progress->setSizePolicy(kept);
    auto* row = new QHBoxLayout(head);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(12);
    row->addWidget(m_headline, 1);
    auto* aside = new QVBoxLayout;
    aside->setSpacing(3);
    aside->addWidget(m_next);
    aside->addWidget(m_progress);
    row->addWidget(m_usual, 0, Qt::AlignTop);
    row->addLayout(aside);
    return head;
}

QWidget* HonePage::buildMiddle() {
    auto* middle = new QWidget(this);
    auto* row = new QHBoxLayout(middle);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(12);
    m_bores->setFixedWidth(206);
    m_panel->setFixedWidth(370);
    row->addWidget(m_bores);
    row->addWidget(m_section, 1);
    row->addWidget(m_panel);
    return middle;
}

QWidget* HonePage::buildTabs() {
    m_tabs->setDocumentMode(true);
    m_tabs->setAccessibleName(tr("Plan, log, stones and what else the plan rests on"));
    m_tabs->addTab(scrolled(m_plan), tr("&Plan"));
    m_tabs->addTab(scrolled(m_own), tr("&Own pass"));
    m_tabs->addTab(scrolled(m_log), tr("&Log"));
    m_tabs->addTab(scrolled(m_stones), tr("&Stones"));
    m_tabs->addTab(scrolled(m_tool), tr("Ho&ne"));
    m_tabs->addTab(scrolled(m_stages), tr("S&tages"));
    m_tabs->addTab(scrolled(m_ticks), tr("Tic&ks"));
    m_tabs->setFixedHeight(tabsHeight);
    return m_tabs;
}

QWidget* HonePage::buildCautions() {
    auto* words = makePassingWord(hone_words::cautions().join(' '), this);
    words->setAccessibleName(tr("Cautions"));
    words->setTextInteractionFlags(Qt::TextSelectableByMouse);
    auto* fold = new Fold(tr("Beware"), words, this);
    fold->setSummary(
        tr("the hone maker's speed, never out of the bore while turning, eyes covered; "
           "the engine maker's manual stands above this"));
    return fold;
}

void HonePage::connectParts() {
    Document& document = m_context.document;
    connect(&document, &Document::changed, this, &HonePage::follow);
    connect(&m_context.selection, &Selection::changed, this, [this] {
        if (m_context.selection.bore() == m_boreShown) return;
        refresh(false);
        if (!m_search->isOfNow(m_context.selection.bore())) askIfOld();
    });
    connect(m_search, &HoneSearch::found, this, &HonePage::refreshOutlook);
    connect(m_search, &HoneSearch::stateChanged, this, &HonePage::refreshHead);
    connect(m_next, &QPushButton::clicked, m_search, &HoneSearch::askNow);
    connect(m_usual, &QPushButton::clicked, m_stones, &StonesTab::addUsual);
    connect(m_panel, &SetUpPanel::logOwnAsked, this, &HonePage::openOwn);
    connect(m_panel, &SetUpPanel::measureAsked, this, &HonePage::measureAsked);
    connect(m_own, &OwnForm::draftChanged, this, &HonePage::showOwn);
    connect(m_own, &OwnForm::logged, this, [this] {
        m_panel->ownLogged();
        m_tabs->setCurrentIndex(0);
    });
    connect(m_section, &HoneSectionView::windowDragged, this, &HonePage::dragged);
    connect(m_section, &HoneSectionView::windowCommitted, this, &HonePage::dragged);
    connect(m_tabs, &QTabWidget::currentChanged, this, &HonePage::showOwn);
}

void HonePage::addKeys() {
    const auto add = [this](int key, auto action) {
        auto* shortcut = new QShortcut(QKeySequence(key), this);
        shortcut->setContext(Qt::WidgetWithChildrenShortcut);
        connect(shortcut, &QShortcut::activated, this, action);
    };
    add(Qt::Key_F5, [this] { m_search->askNow(); });
    add(Qt::Key_F9, [this] { m_panel->doneAsPlanned(); });
    add(Qt::Key_F4, [this] { openOwn(); });
    add(Qt::Key_F8, [this] { m_panel->measureNow(); });
    add(Qt::Key_F7, [this] { m_panel->watch()->turn(); });
    add(Qt::Key_F12, [this] { m_panel->playForMe(); });
    add(Qt::Key_F6, [this] { m_bores->hasFocus() ? m_section->setFocus() : m_bores->setFocus(); });
}

void HonePage::follow(Change change) {
    if (change == Change::doubts) return; // the plan rests on readings, not on the trials
    if (change == Change::everything) {
        m_search->forget();
        m_panel->forget();
        m_own->forget();
    } else {
        m_search->outdate();
    }
    m_anew = m_anew || change == Change::everything;
    // Nobody looks: it waits until somebody does.
    if (!isVisibleTo(window())) return;
    refresh(std::exchange(m_anew, false));
    askIfOld();
}

void HonePage::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    refresh(std::exchange(m_anew, false));
    askIfOld();
}

void HonePage::askIfOld() {
    const bool any =
        hone_words::missing(m_context.document.workbook(), m_context.selection.bore()).isEmpty();
    if (any && !m_search->isOfNow() && isVisibleTo(window())) m_search->askSoon();
}

void HonePage::settle() {
    refresh(std::exchange(m_anew, false));
    if (!m_search->isOfNow()) m_search->askSoon();
    m_search->finish();
    m_own->finish();
}

void HonePage::refresh(bool anew) {
    m_boreShown = m_context.selection.bore();
    const Workbook& workbook = m_context.document.workbook();
    m_usual->setVisible(hone_words::wantsStones(workbook, m_boreShown));
    m_own->refresh();
    m_log->refresh();
    m_stones->refresh(anew);
    m_tool->refresh(anew);
    m_stages->refresh(anew);
    m_ticks->refresh();
    refreshOutlook();
}

void HonePage::refreshOutlook() {
    const BoreOutlook* outlook = m_search->bore(m_boreShown);
    const QString missing = hone_words::missing(m_context.document.workbook(), m_boreShown);
    m_section->setWaiting(missing.isEmpty() ? m_search->waitingWords() : missing);
    m_section->setOutlook(outlook != nullptr && missing.isEmpty() ? std::optional(asRead(*outlook))
                                                                  : std::nullopt);
    m_bores->refresh();
    m_panel->refresh();
    m_plan->refresh();
    m_stones->refresh(false);
    refreshHead();
}

// The places to measure numbered as the Measure page will ask for them.
BoreOutlook HonePage::asRead(BoreOutlook outlook) const {
    if (outlook.next)
        outlook.next->measure =
            inOrder(m_context.document.workbook().block, std::move(outlook.next->measure),
                    m_context.preferences.value().order);
    return outlook;
}

void HonePage::refreshHead() {
    const QString missing = hone_words::missing(m_context.document.workbook(), m_boreShown);
    const HoneOutlook& outlook = m_search->outlook();
    const BoreOutlook* bore = m_search->bore(m_boreShown);
    QString headline = missing;
    if (headline.isEmpty()) headline = qs(outlook.headline);
    if (headline.isEmpty() && bore != nullptr) headline = qs(bore->headline);
    if (headline.isEmpty()) headline = m_search->waitingWords();
    // What is of before the last change is not to be followed.
    const bool old = missing.isEmpty() && !m_search->isOfNow();
    if (old && m_search->isSearching() && headline != m_search->waitingWords())
        headline = tr("%1  (being worked out anew …)").arg(headline);
    m_headline->setEnabled(!old);
    m_headline->setText(headline);
    m_headline->setToolTip(headline);
    m_next->setEnabled(missing.isEmpty());
    m_progress->setVisible(m_search->isSearching());
    m_progress->setValue(static_cast<int>(wholeBar * m_search->progress()));
}

void HonePage::openOwn() {
    m_tabs->setCurrentIndex(1);
    if (m_own->isEmpty()) {
        const PlannedSetUp* planned = m_panel->doable();
        m_own->begin(planned != nullptr ? std::optional(*planned) : std::nullopt);
    }
    m_own->focusFirst();
    showOwn();
}

// His own set-up is in the drawing while its form is open.
void HonePage::showOwn() {
    const auto own = m_tabs->currentIndex() == 1 ? m_own->draft() : std::nullopt;
    m_section->setOwn(own);
    m_panel->setOwn(own);
}

// A window of the plan that is dragged becomes the beginning of his own set-up.
void HonePage::dragged(int window, Length from, Length to) {
    if (m_tabs->currentIndex() != 1 || m_own->isEmpty()) {
        m_tabs->setCurrentIndex(1);
        const PlannedSetUp* planned = m_panel->doable();
        m_own->begin(planned != nullptr ? std::optional(*planned) : std::nullopt);
    }
    m_own->move(static_cast<std::size_t>(window), from, to);
}

} // namespace borewright
