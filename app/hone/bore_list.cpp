// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/hone/bore_list.h"

#include "app/pictures/reading_words.h"
#include "core/workbook/hone_since.h"

#include <QSignalBlocker>

#include <algorithm>

namespace borewright {
namespace {

constexpr int boreRole = Qt::UserRole;

std::vector<int> numbersOf(const Block& block) {
    std::vector<int> numbers;
    for (const Bore& bore : block.bores)
        numbers.push_back(bore.number);
    std::ranges::sort(numbers);
    return numbers;
}

// "4.3–6.6 to go" by the last survey that read the bore and knows where it is going.
QString toGoWords(const Workbook& workbook, const Results& results, int bore,
                  const DisplayUnits& units) {
    for (auto survey = workbook.surveys.rbegin(); survey != workbook.surveys.rend(); ++survey) {
        const SurveyResult* result = findResult(results, survey->header.id);
        const BoreResult* read = result != nullptr ? findBoreResult(*result, bore) : nullptr;
        if (read == nullptr || read->measured == 0) continue;
        if (!read->leastToGo || !read->mostToGo) return {};
        const QString least = qs(formatSmall(*read->leastToGo, units));
        const QString most = qs(formatSmall(*read->mostToGo, units));
        return least == most ? BoreList::tr("%1 to go").arg(most)
                             : BoreList::tr("%1–%2 to go").arg(least, most);
    }
    return {};
}

bool isSimulated(const HoneRecord& record, int bore) {
    return std::ranges::any_of(record.passes, [&](const Pass& pass) {
        return pass.bore == bore && pass.simulated && !pass.struck;
    });
}

} // namespace

QString nextWord(const Workbook& workbook, const BoreOutlook& outlook) {
    switch (outlook.outcome) {
    case HoneOutcome::next: {
        if (outlook.waits) return BoreList::tr("waits");
        const Stone* stone = outlook.next ? findStone(workbook.hone, outlook.next->stone) : nullptr;
        return stone != nullptr ? BoreList::tr("next: %1").arg(qs(stone->name))
                                : BoreList::tr("next");
    }
    case HoneOutcome::done:
        return BoreList::tr("done: stop");
    case HoneOutcome::asGoodAsItGets:
        return BoreList::tr("as good as it gets");
    case HoneOutcome::gaugeCannotTell:
        return BoreList::tr("gauge cannot tell");
    case HoneOutcome::wouldGoOver:
        if (outlook.good) return BoreList::tr("done: stop");
        return BoreList::tr("stop: would go over");
    case HoneOutcome::overAlready:
        return BoreList::tr("over size");
    case HoneOutcome::noStone:
        return BoreList::tr("no stone for it");
    case HoneOutcome::notMeasured:
        return honedSinceMeasured(workbook, outlook.bore) ? BoreList::tr("honed since measured")
                                                          : BoreList::tr("not measured");
    }
    return {};
}

BoreList::BoreList(const PageContext& context, const HoneSearch& search, QWidget* parent)
    : QListWidget(parent)
    , m_document(context.document)
    , m_selection(context.selection)
    , m_search(search) {
    setAccessibleName(tr("Bores and what is next in each"));
    setUniformItemSizes(true);
    setWordWrap(false);
    setTextElideMode(Qt::ElideRight);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setSpacing(1);
    connect(this, &QListWidget::currentItemChanged, this, [this](const QListWidgetItem* now) {
        if (now != nullptr) m_selection.setBore(now->data(boreRole).toInt());
    });
    connect(&m_selection, &Selection::changed, this, &BoreList::follow);
    refresh();
}

void BoreList::refresh() {
    const QSignalBlocker quiet(this);
    const Workbook& workbook = m_document.workbook();
    const std::vector<int> numbers = numbersOf(workbook.block);
    while (count() > static_cast<int>(numbers.size()))
        delete takeItem(count() - 1);
    while (count() < static_cast<int>(numbers.size()))
        addItem(new QListWidgetItem);
    for (int row = 0; row < count(); ++row) {
        const int bore = numbers[static_cast<std::size_t>(row)];
        const BoreOutlook* outlook = m_search.bore(bore);
        QString word = outlook != nullptr ? nextWord(workbook, *outlook) : tr("…");
        if (outlook != nullptr && !m_search.isOfNow(bore)) word += QStringLiteral(" …");
        QStringList beneath{toGoWords(workbook, m_document.results(), bore, m_document.units())};
        if (isSimulated(workbook.hone, bore)) beneath << tr("simulated");
        beneath.removeAll({});
        const QString line = beneath.join(QStringLiteral(" · "));
        item(row)->setText(tr("%1  %2\n    %3").arg(bore).arg(word, line));
        item(row)->setData(boreRole, bore);
        item(row)->setData(Qt::AccessibleTextRole, tr("Bore %1: %2, %3").arg(bore).arg(word, line));
        item(row)->setToolTip(outlook != nullptr ? qs(outlook->headline) : QString());
    }
    follow();
}

void BoreList::follow() {
    const QSignalBlocker quiet(this);
    for (int row = 0; row < count(); ++row)
        if (item(row)->data(boreRole).toInt() == m_selection.bore()) setCurrentRow(row);
}

} // namespace borewright
