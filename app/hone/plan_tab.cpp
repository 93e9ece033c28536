// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/hone/plan_tab.h"

#include "app/fields/labelled.h"
#include "app/hone/hone_words.h"
#include "app/pictures/reading_words.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

namespace borewright {
namespace {

QLabel* makeWords(const QString& name, QWidget* parent) {
    auto* label = new QLabel(parent);
    label->setWordWrap(true);
    label->setTextFormat(Qt::RichText);
    label->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    label->setAccessibleName(name);
    return label;
}

} // namespace

PlanTab::PlanTab(const PageContext& context, HoneSearch& search, QWidget* parent)
    : QWidget(parent)
    , m_context(context)
    , m_search(search)
    , m_plan(makeWords(tr("The rest of the plan"), this))
    , m_found(makeWords(tr("What was expected, found and learned"), this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 4, 0, 8);
    row->setSpacing(28);
    row->addWidget(m_plan, 4);
    row->addWidget(m_found, 4);
    row->addWidget(buildWishes(), 2);
    refresh();
}

QWidget* PlanTab::buildWishes() {
    auto* whole = new QWidget(this);
    auto* column = new QVBoxLayout(whole);
    column->setContentsMargins(0, 4, 0, 0);
    column->setSpacing(4);
    m_oneStone = new QCheckBox(tr("One stone only"), whole);
    m_noShort = new QCheckBox(tr("No short stone"), whole);
    m_fewerStops = new QCheckBox(tr("Fewer stops, less straight"), whole);
    m_alternatives = new QCheckBox(tr("What else, and its price"), whole);
    m_fitted = new QComboBox(whole);
    m_fitted->setAccessibleName(tr("Stone in the hone now"));
    m_fitted->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_fitted->setMinimumContentsLength(14);
    for (QCheckBox* box : {m_oneStone, m_noShort, m_fewerStops}) {
        column->addWidget(box);
        connect(box, &QCheckBox::clicked, this, &PlanTab::wish);
    }
    column->addWidget(m_alternatives);
    column->addWidget(labelled(tr("Stone in the hone now"), m_fitted));
    column->addStretch(1);
    connect(m_alternatives, &QCheckBox::clicked, &m_search, &HoneSearch::setAlternativesWanted);
    connect(m_fitted, &QComboBox::activated, this, &PlanTab::wish);
    return whole;
}

void PlanTab::wish() {
    HoneWishes wishes;
    wishes.oneStone = m_oneStone->isChecked();
    wishes.noShort = m_noShort->isChecked();
    wishes.fewerStops = m_fewerStops->isChecked();
    if (const QString stone = m_fitted->currentData().toString(); !stone.isEmpty())
        wishes.fitted = stone.toStdString();
    m_search.setWishes(wishes);
}

QString PlanTab::planWords(const BoreOutlook& outlook) const {
    QString text;
    if (outlook.outcome == HoneOutcome::next)
        text += hone_words::paragraphs(
            tr("Bore %1: set-ups left about %2, changes of stone planned %3")
                .arg(outlook.bore)
                .arg(outlook.setUpsLeft)
                .arg(outlook.stoneChanges),
            outlook.outline.empty()
                ? std::vector<std::string>{tr("This is the last.").toStdString()}
                : outlook.outline);
    std::vector<std::string> others;
    for (const HoneAlternative& other : outlook.alternatives)
        others.push_back(other.name + ": " + other.sentence);
    text += hone_words::paragraphs(tr("Instead"), others);
    text += hone_words::paragraphs(tr("This bore"), outlook.sentences);
    text += hone_words::paragraphs(tr("The block"), m_search.outlook().sentences);
    return text;
}

QString PlanTab::foundWords(const BoreOutlook& outlook) const {
    QString text;
    if (outlook.checked)
        text += hone_words::paragraphs(tr("Expected and found"), outlook.checked->sentences);
    std::vector<std::string> learned;
    for (const StoneOutlook& stone : m_search.outlook().stones) {
        if (!stone.sentence.empty()) learned.push_back(stone.sentence);
        if (stone.advice) learned.push_back(*stone.advice);
    }
    text += hone_words::paragraphs(tr("Learned"), learned);
    text += hone_words::paragraphs(tr("Odd"), outlook.oddities);
    return text;
}

void PlanTab::showFitted() {
    const HoneRecord& record = m_context.document.workbook().hone;
    m_fitted->clear();
    m_fitted->addItem(tr("not said"), QString());
    for (const Stone& stone : record.stones)
        m_fitted->addItem(qs(stone.name), qs(stone.id));
    const auto& fitted = m_search.wishes().fitted;
    m_fitted->setCurrentIndex(fitted ? std::max(0, m_fitted->findData(qs(*fitted))) : 0);
}

void PlanTab::refresh() {
    const HoneWishes& wishes = m_search.wishes();
    m_oneStone->setChecked(wishes.oneStone);
    m_noShort->setChecked(wishes.noShort);
    m_fewerStops->setChecked(wishes.fewerStops);
    showFitted();
    const BoreOutlook* outlook = m_search.bore(m_context.selection.bore());
    // What nothing can be planned without comes before a key that could not work it out.
    const QString missing =
        hone_words::missing(m_context.document.workbook(), m_context.selection.bore());
    m_plan->setText(outlook != nullptr
                        ? planWords(*outlook)
                        : (missing.isEmpty() ? m_search.waitingWords() : missing).toHtmlEscaped());
    m_found->setText(outlook != nullptr ? foundWords(*outlook) : QString());
}

} // namespace borewright
