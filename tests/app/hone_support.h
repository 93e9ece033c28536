// SPDX-License-Identifier: GPL-3.0-or-later
// The Hone page on a bench, with hands: the invented V6 after its rough stones, with the usual set.
#pragma once

#include "app/hone/hone_page.h"
#include "app/hone/hone_verbs.h"
#include "tests/app/form_hands.h"
#include "tests/support/bench_context.h"
#include "tests/support/demo_scenarios.h"

#include <QApplication>
#include <QListWidget>
#include <QTabWidget>

namespace borewright::test {

// The first `bores` bores of the demonstration, surveyed up to "rough 100": 4 to 7 thou to go, the
// closed ends small.
inline Workbook roughBlock(std::size_t bores = 2, bool stones = true) {
    Workbook workbook = demo::correctedSaltmarsh();
    workbook.fit = {};
    workbook.surveys.resize(2);
    std::vector<int> kept;
    for (const Bore& bore : workbook.block.bores)
        kept.push_back(bore.number);
    kept.resize(bores);
    const auto gone = [&](int bore) { return std::ranges::find(kept, bore) == kept.end(); };
    std::erase_if(workbook.block.bores, [&](const Bore& bore) { return gone(bore.number); });
    for (Survey& survey : workbook.surveys)
        std::erase_if(survey.readings,
                      [&](const Reading& reading) { return gone(reading.station.bore); });
    std::erase_if(workbook.sizing.bores, [&](const auto& each) { return gone(each.first); });
    if (!stones) return workbook;
    const auto usual = usualStones(workbook.block.bores.front());
    for (const Stone& stone : *usual)
        addStone(workbook.hone, stone);
    return workbook;
}

class Honing : public testing::Test {
protected:
    explicit Honing(Workbook workbook = roughBlock())
        : bench(std::move(workbook))
        , page(bench.context()) {
        page.resize(1130, 740);
        page.show();
        page.activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&page));
    }
    const HoneRecord& record() { return bench.document.workbook().hone; }
    int steps() { return bench.document.undoStack().index(); }
    void press(Qt::Key key) { QTest::keyClick(&page, key); }
    std::string says(const char* name) { return named<QLabel>(page, name)->text().toStdString(); }
    std::string headline() { return says("What next with the hone"); }
    const BoreOutlook* outlook(int bore) { return page.search().bore(bore); }
    void openTab(const QString& title) {
        auto* tabs = page.findChild<QTabWidget*>();
        for (int i = 0; i < tabs->count(); ++i)
            if (tabs->tabText(i).remove('&') == title) tabs->setCurrentIndex(i);
    }

    Bench bench;
    HonePage page;
};

} // namespace borewright::test
