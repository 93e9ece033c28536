// SPDX-License-Identifier: GPL-3.0-or-later
// A name pasted by mistake, thousands of letters in one line, widens no page beyond a small screen
// and leaves the sheet readable.
#include "app/shell/window.h"
#include "tests/app/sheet_texts.h"
#include "tests/support/demo_scenarios.h"
#include "tests/support/shop.h"

#include <gtest/gtest.h>

#include <functional>

namespace borewright {
namespace {

using namespace test;

using Put = std::pair<const char*, std::function<void(Workbook&, const std::string&)>>;

std::vector<Put> everyName() {
    return {
        {"customer", [](Workbook& w, const std::string& t) { w.job.customer = t; }},
        {"engine", [](Workbook& w, const std::string& t) { w.job.engine = t; }},
        {"reason", [](Workbook& w, const std::string& t) { w.job.reason = t; }},
        {"measured by", [](Workbook& w, const std::string& t) { w.job.measuredBy = t; }},
        {"notes", [](Workbook& w, const std::string& t) { w.job.notes = t; }},
        {"sentences", [](Workbook& w, const std::string& t) { w.sheet.summary = t; }},
        {"survey", [](Workbook& w, const std::string& t) { w.surveys.front().header.name = t; }},
        {"last survey",
         [](Workbook& w, const std::string& t) { w.surveys.back().header.name = t; }},
        {"notes of a survey",
         [](Workbook& w, const std::string& t) { w.surveys.back().header.notes = t; }},
        {"gauge",
         [](Workbook& w, const std::string& t) {
             for (Survey& survey : w.surveys)
                 survey.header.gauge.gauge = t;
         }},
        {"set on",
         [](Workbook& w, const std::string& t) { w.surveys.back().header.gauge.setOn = t; }},
        {"last checked",
         [](Workbook& w, const std::string& t) {
             w.surveys.back().header.gauge.gear.lastChecked = t;
         }},
        {"limits",
         [](Workbook& w, const std::string& t) {
             for (LimitSet& set : w.limitSets)
                 set.name = t;
         }},
        {"axis", [](Workbook& w, const std::string& t) { w.block.axes[0].label = t; }},
        {"open end",
         [](Workbook& w, const std::string& t) {
             for (Bore& bore : w.block.bores)
                 bore.openEnd = t;
         }},
        {"stone",
         [](Workbook& w, const std::string& t) {
             for (Stone& stone : w.hone.stones)
                 stone.name = t;
         }},
        {"grit",
         [](Workbook& w, const std::string& t) {
             for (Stone& stone : w.hone.stones)
                 stone.grit = t;
         }},
        {"feed", [](Workbook& w, const std::string& t) { w.hone.hone.feed = t; }},
        {"pass",
         [](Workbook& w, const std::string& t) {
             for (Pass& pass : w.hone.passes)
                 pass.notes = t;
         }},
        {"piston",
         [](Workbook& w, const std::string& t) {
             for (Piston& piston : w.fit.pistons) {
                 piston.label = t;
                 piston.measuredWith = t;
                 piston.notes = t;
             }
         }},
        {"ring",
         [](Workbook& w, const std::string& t) {
             for (Ring& ring : w.fit.rings)
                 ring.label = t;
         }},
        {"strike",
         [](Workbook& w, const std::string& t) {
             w.surveys.back().readings.front().struck = Strike{t, {}, t, {}};
         }},
    };
}

// What a page asks for at the least, in pixels; the least screen that it is made for has 1280.
int widestPage(Window& window) {
    int widest = 0;
    for (const Page page : {Page::block, Page::measure, Page::judge, Page::size, Page::hone,
                            Page::fit, Page::sheet}) {
        window.showPage(page);
        QTest::qWait(1);
        widest = std::max(widest, window.minimumSizeHint().width());
    }
    return widest;
}

TEST(LongTexts, NoPageIsWidenedByANameOfThousandsOfLetters) {
    const std::string text = std::string(5000, 'W') + " and more";
    const std::pair<const char*, Workbook> starts[] = {{"honed", demo::saltmarshHoning()},
                                                       {"fitted", demo::saltmarsh()}};
    for (const auto& [kind, start] : starts)
        for (const auto& [name, put] : everyName()) {
            if (start.surveys.empty() || start.surveys.back().readings.empty()) continue;
            Shop shop;
            Workbook workbook = start;
            put(workbook, text);
            shop.workshop.begin(workbook);
            shop.window.resize(1280, 800);
            EXPECT_LE(widestPage(shop.window), 1280) << kind << ": " << name;
        }
}

TEST(LongTexts, TheSheetStaysASheet) {
    const std::string text = std::string(5000, 'W') + " and more";
    for (const auto& [name, put] : everyName()) {
        Workbook workbook = demo::saltmarsh();
        put(workbook, text);
        const SheetData data = test::dataOf(workbook);
        const auto pages = composeSheet(data, Preferences::Paper::a4);
        EXPECT_LT(pages.size(), 60U) << name;
    }
}

} // namespace
} // namespace borewright
