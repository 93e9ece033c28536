// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/hone/stones_tab.h"

#include "app/fields/fold.h"
#include "app/fields/refusal_label.h"
#include "app/hone/hone_verbs.h"
#include "app/hone/stone_form.h"
#include "app/pictures/reading_words.h"

#include <QHBoxLayout>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace borewright {

StonesTab::StonesTab(const PageContext& context, const HoneSearch& search, QWidget* parent)
    : QWidget(parent)
    , m_context(context)
    , m_search(search)
    , m_table(new TextTable(tr("Stones"), this))
    , m_form(new StoneForm(context.document, this))
    , m_learned(makePassingWord({}, this))
    , m_refusal(makeRefusalLabel(this)) {
    m_table->setChoosable();
    m_learned->setAccessibleName(tr("What was learned of this stone"));
    m_refusal->setAccessibleName(tr("Why it was not done to the stones"));
    auto* left = new QVBoxLayout;
    left->setSpacing(6);
    left->addWidget(m_table);
    left->addWidget(buildButtons());
    left->addWidget(buildDrawer());
    left->addWidget(m_refusal);
    left->addStretch(1);
    auto* right = new QVBoxLayout;
    right->setSpacing(8);
    right->addWidget(m_form);
    right->addWidget(buildCare());
    right->addWidget(m_learned);
    right->addStretch(1);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 8, 0, 8);
    row->setSpacing(20);
    row->addLayout(left, 6);
    row->addLayout(right, 5);
    connect(m_table, &TextTable::rowChosen, this, &StonesTab::choose);
    connect(&context.preferences, &PreferencesStore::changed, this, &StonesTab::showDrawer);
    refresh(true);
}

QWidget* StonesTab::buildButtons() {
    auto* whole = new QWidget(this);
    auto* row = new QHBoxLayout(whole);
    row->setContentsMargins(0, 0, 0, 0);
    auto* add = new QPushButton(tr("Add stone"), this);
    auto* usual = new QPushButton(tr("Usual set"), this);
    m_takeOff = new QPushButton(tr("Take stone off"), this);
    usual->setToolTip(tr("A full rough, a short rough and a full finish stone for this bore: "
                         "lengths are common practice, nothing is known of how they cut"));
    for (QPushButton* button : {add, usual, m_takeOff})
        row->addWidget(button);
    m_stays = makePassingWord({}, this);
    m_stays->setAccessibleName(tr("Why the stone stays"));
    row->addWidget(m_stays, 1);
    connect(add, &QPushButton::clicked, this, &StonesTab::addOne);
    connect(usual, &QPushButton::clicked, this, &StonesTab::addUsual);
    connect(m_takeOff, &QPushButton::clicked, this, &StonesTab::takeOff);
    return whole;
}

QWidget* StonesTab::buildCare() {
    auto* whole = new QWidget(this);
    auto* row = new QHBoxLayout(whole);
    row->setContentsMargins(0, 0, 0, 0);
    struct Kind {
        StoneCare::Kind kind;
        QString text, tip;
    };
    for (const Kind& each :
         {Kind{StoneCare::Kind::turnedEndForEnd, tr("Turned end for end"),
               tr("What had worn below works above from now on")},
          Kind{StoneCare::Kind::runInReverse, tr("Run in reverse"),
               tr("Frees the grit: how fast it cuts is known less well afterwards")},
          Kind{StoneCare::Kind::dressed, tr("Dressed"), tr("Its face is straight and sharp")}}) {
        auto* button = new QPushButton(each.text, this);
        button->setToolTip(each.tip + tr("; logged after the last pass"));
        connect(button, &QPushButton::clicked, this,
                [this, each] { care(each.kind, each.text.toLower()); });
        row->addWidget(button);
        m_ofStone.push_back(button);
    }
    row->addStretch(1);
    return whole;
}

QWidget* StonesTab::buildDrawer() {
    auto* whole = new QWidget(this);
    auto* row = new QHBoxLayout(whole);
    row->setContentsMargins(0, 0, 0, 0);
    m_drawer = new QComboBox(this);
    m_drawer->setAccessibleName(tr("The shop's own stones"));
    m_drawer->setMinimumContentsLength(12);
    m_fromDrawer = new QPushButton(tr("Take from the shop's list"), this);
    auto* keep = new QPushButton(tr("Keep in the shop's list"), this);
    keep->setToolTip(tr("With what was learned of it, for other jobs; under its name"));
    row->addWidget(m_drawer, 1);
    row->addWidget(m_fromDrawer);
    row->addWidget(keep);
    connect(m_fromDrawer, &QPushButton::clicked, this, &StonesTab::takeFromDrawer);
    connect(keep, &QPushButton::clicked, this, &StonesTab::putIntoDrawer);
    m_ofStone.push_back(keep);
    return whole;
}

const Stone* StonesTab::chosen() const {
    return findStone(m_context.document.workbook().hone, m_stone);
}

std::vector<TextModel::Cell> StonesTab::rowOf(const Stone& stone) const {
    const DisplayUnits& units = m_context.document.units();
    const StoneOutlook* learned = m_search.stone(stone.id);
    const bool known = learned != nullptr && learned->passes > 0;
    const auto small = [&](double um) {
        return qs(formatSmall(Length::nearest(um, Unit::micrometre), units, Sign::negative, 1));
    };
    return {
        {qs(stone.name)},
        {qs(stone.grit)},
        {stone.kind == StoneKind::rough ? tr("rough") : tr("finish")},
        {tr("%1–%2").arg(qs(formatDepth(stone.begins.value(), units)),
                         qs(formatDepth(stone.ends.value(), units)))},
        {known ? tr("%1 (%2–%3)")
                     .arg(small(learned->rate_um), small(learned->rate_um / learned->rateFactor95),
                          small(learned->rate_um * learned->rateFactor95))
               : tr("not learned"),
         {},
         false,
         !known},
        {known ? small(learned->wedge_um) : tr("…"),
         {},
         false,
         !known,
         known ? qs(learned->sentence) : QString()}};
}

void StonesTab::refresh(bool anew) {
    const Workbook& workbook = m_context.document.workbook();
    const DisplayUnits& units = m_context.document.units();
    const auto& stones = workbook.hone.stones;
    if (chosen() == nullptr) m_stone = stones.empty() ? std::string() : stones.front().id;
    TextModel::Content content;
    content.heads = {tr("Stone"),
                     tr("Grit"),
                     tr("For"),
                     tr("Abrasive, %1").arg(unitSymbol(units.size)),
                     tr("Stroke takes, %1").arg(unitSymbol(units.small)),
                     tr("Wedge, %1").arg(unitSymbol(units.small))};
    content.words = {0, 1, 2};
    for (const Stone& stone : stones)
        content.rows.push_back(rowOf(stone));
    {
        const QSignalBlocker quiet(m_table);
        m_table->show(std::move(content));
        const auto at = std::ranges::find(stones, m_stone, &Stone::id);
        if (at != stones.end()) m_table->selectRow(static_cast<int>(at - stones.begin()));
    }
    m_table->setVisible(!stones.empty());
    m_form->show(m_stone, anew);
    if (anew) m_refusal->hide();
    for (QPushButton* button : m_ofStone)
        button->setEnabled(chosen() != nullptr);
    const bool used = isUsed(workbook.hone, m_stone);
    m_takeOff->setEnabled(chosen() != nullptr && !used);
    m_takeOff->setToolTip(used ? tr("Passes or care were logged with this stone: it stays, so that "
                                    "the log can be read")
                               : QString());
    m_stays->setText(used ? tr("It stays: the log needs it.") : QString());
    const StoneOutlook* learned = m_search.stone(m_stone);
    QStringList said;
    if (learned != nullptr) said << qs(learned->sentence);
    if (learned != nullptr && learned->advice) said << qs(*learned->advice);
    m_learned->setText(said.join(' '));
    showDrawer();
}

void StonesTab::choose(int row) {
    const auto& stones = m_context.document.workbook().hone.stones;
    if (row < 0 || static_cast<std::size_t>(row) >= stones.size()) return;
    m_stone = stones[static_cast<std::size_t>(row)].id;
    refresh(false);
}

void StonesTab::showDrawer() {
    const auto& stones = m_context.preferences.value().stones;
    const QString current = m_drawer->currentText();
    m_drawer->clear();
    for (const Stone& stone : stones)
        m_drawer->addItem(qs(stone.name));
    m_drawer->setCurrentIndex(std::max(0, m_drawer->findText(current)));
    m_drawer->setEnabled(!stones.empty());
    m_fromDrawer->setEnabled(!stones.empty());
}

void StonesTab::followDone(const Result<void>& done) {
    if (!done) m_context.sounds.refused();
    m_refusal->setText(done ? QString() : qs(done.error().message()));
    m_refusal->setVisible(!done);
}

void StonesTab::addOne() {
    const Block& block = m_context.document.workbook().block;
    const Bore* bore = findBore(block, m_context.selection.bore());
    if (bore == nullptr) return followDone(refuse("describe the block first, on the Block page"));
    const auto usual = usualStones(*bore);
    if (!usual) return followDone(tl::unexpected(usual.error()));
    Stone stone = usual->front();
    stone.name = "stone";
    stone.grit.clear();
    std::string id;
    followDone(changeHone(m_context.document, tr("another stone"),
                          [&](HoneRecord& record) { id = addStone(record, stone); }));
    m_stone = id;
    refresh(true);
    m_form->focusName();
}

void StonesTab::addUsual() {
    const Bore* bore = findBore(m_context.document.workbook().block, m_context.selection.bore());
    if (bore == nullptr) return followDone(refuse("describe the block first, on the Block page"));
    const auto usual = usualStones(*bore);
    if (!usual) return followDone(tl::unexpected(usual.error()));
    followDone(
        changeHone(m_context.document, tr("the usual set of stones"), [&](HoneRecord& record) {
            for (const Stone& stone : *usual)
                addStone(record, stone);
        }));
}

void StonesTab::takeOff() {
    followDone(changeHone(m_context.document, tr("removal of a stone"), [&](HoneRecord& record) {
        std::erase_if(record.stones, [&](const Stone& stone) { return stone.id == m_stone; });
    }));
}

void StonesTab::care(StoneCare::Kind kind, const QString& step) {
    followDone(changeHone(m_context.document, tr("stone %1").arg(step), [&](HoneRecord& record) {
        addCare(record, m_stone, kind, m_context.document.now());
    }));
}

void StonesTab::takeFromDrawer() {
    const auto& stones = m_context.preferences.value().stones;
    const int row = m_drawer->currentIndex();
    if (row < 0 || static_cast<std::size_t>(row) >= stones.size()) return;
    const Stone stone = stones[static_cast<std::size_t>(row)];
    followDone(changeHone(m_context.document, tr("a stone from the shop's list"),
                          [&](HoneRecord& record) { m_stone = addStone(record, stone); }));
}

void StonesTab::putIntoDrawer() {
    const Stone* stone = chosen();
    if (stone == nullptr) return;
    Stone kept = *stone;
    if (const StoneOutlook* learned = m_search.stone(m_stone))
        if (const auto experience = experienceOf(*learned)) kept.experience = experience;
    m_context.preferences.set(withStone(m_context.preferences.value(), std::move(kept)));
}

} // namespace borewright
