// SPDX-License-Identifier: GPL-3.0-or-later
// The check code of a sheet: the same for the same data anywhere, another for every change that is
// shown, and every slip of the hand in typing it is told.
#include "app/sheet/check_code.h"
#include "app/sheet/printed_sheets.h"
#include "tests/app/sheet_texts.h"
#include "tests/support/blocks.h"
#include "tests/support/demo_scenarios.h"
#include "tests/support/fitted_block.h"
#include "tests/support/honed_block.h"

#include <QLocale>
#include <QScopeGuard>

#include <gtest/gtest.h>

#include <ctime>
#include <functional>
#include <set>

namespace borewright {
namespace {

using namespace test;

std::string codeOf(const Workbook& workbook, const DisplayUnits& units) {
    return sheetData(workbook, compute(workbook, units), {}, units, {1'774'000'000, 60})
        .code.toStdString();
}
std::string codeOf(const Workbook& workbook) {
    return codeOf(workbook, naturalUnits(workbook));
}

TEST(CheckCode, IsThatOfItsTextAndNothingElse) {
    // SHA-256 of "abc" begins ba7816bf8f01cfea (FIPS 180-4, example): as a number to the base 23,
    // its lowest eleven figures; worked out by an independent program (Python's integers).
    EXPECT_EQ(checkCodeOf("abc").toStdString(), "9KWW-4Y4T-7RYG");
    EXPECT_NE(checkCodeOf("abd"), checkCodeOf("abc"));
    EXPECT_EQ(checkCodeOf({}).size(), 14) << "three groups of four";
}

TEST(CheckCode, EveryLetterMistypedAndEveryTwoChangedAboutAreFound) {
    const QString letters = QStringLiteral("34679ACDEFGHJKMNPQRTWXY");
    for (const char* text : {"one", "two", "three", "four"}) {
        const QString code = checkCodeOf(text);
        const QString plain = QString(code).remove('-');
        ASSERT_TRUE(readCheckCode(code.toStdString(), {}));
        for (int i = 0; i < plain.size(); ++i) {
            for (const QChar letter : letters) {
                if (letter == plain[i]) continue;
                QString typed = plain;
                typed[i] = letter;
                const auto read = readCheckCode(typed.toStdString(), {code});
                ASSERT_FALSE(read) << typed.toStdString() << " for " << code.toStdString();
                EXPECT_NE(read.error().message().find("perhaps " + code.toStdString()),
                          std::string::npos)
                    << read.error().message();
            }
            for (int k = 0; k < i; ++k) {
                if (plain[i] == plain[k]) continue;
                QString typed = plain;
                std::swap(typed[i], typed[k]);
                EXPECT_FALSE(readCheckCode(typed.toStdString(), {})) << typed.toStdString();
            }
        }
    }
}

TEST(CheckCode, IsReadAsPeopleWriteIt) {
    const QString code = checkCodeOf("sheet");
    QString plain = QString(code).remove('-');
    for (const QString& typed :
         {code, code.toLower(), plain, plain.toLower(), QString(code).replace('-', ' '),
          QString(code).replace('-', QChar(0x2013)), QStringLiteral("  ") + code + '\n'}) {
        const auto read = readCheckCode(typed.toStdString(), {});
        ASSERT_TRUE(read) << typed.toStdString() << ": " << read.error().message();
        EXPECT_EQ(*read, code);
    }
    plain[3] = 'O';
    EXPECT_NE(readCheckCode(plain.toStdString(), {}).error().message().find("'O' is in no code"),
              std::string::npos);
    EXPECT_NE(readCheckCode("K7QW", {}).error().message().find("has 4 letters; a code has 12"),
              std::string::npos);
    EXPECT_FALSE(readCheckCode("", {}));
    EXPECT_FALSE(readCheckCode(std::string(100'000, 'K'), {}));
    EXPECT_FALSE(readCheckCode("\xff\xfe\x80", {}));
}

TEST(CheckCode, OfTheDemonstrationsIsTheSameOnEveryMachine) {
    EXPECT_EQ(codeOf(demo::saltmarsh()), "NKJN-HKGD-4AYF");
    EXPECT_EQ(codeOf(demo::saltmarsh(), DisplayUnits::metric()), "FYMX-D7QM-EHA7");
    EXPECT_EQ(codeOf(demo::rushmere()), "T6GH-WA9W-RKWF");
}

TEST(CheckCode, DoesNotDependOnLanguageOrTimeZone) {
    const std::string code = codeOf(demo::saltmarsh());
    const QLocale before;
    const QByteArray zone = qgetenv("TZ");
    const auto back = qScopeGuard([&] {
        QLocale::setDefault(before);
        zone.isNull() ? qunsetenv("TZ") : qputenv("TZ", zone);
        tzset();
    });
    for (const auto& [language, place] :
         {std::pair{"de_DE", "Pacific/Kiritimati"}, std::pair{"ar_EG", "America/New_York"},
          std::pair{"hi_IN", "Asia/Kathmandu"}}) {
        QLocale::setDefault(QLocale(language));
        qputenv("TZ", place);
        tzset();
        EXPECT_EQ(codeOf(demo::saltmarsh()), code) << language << ' ' << place;
    }
}

using Change = std::pair<const char*, std::function<void(Workbook&)>>;

std::vector<Change> changesShown() {
    return {
        {"customer", [](Workbook& w) { w.job.customer = "another"; }},
        {"engine", [](Workbook& w) { w.job.engine = "another"; }},
        {"serial number", [](Workbook& w) { w.job.serial = "another"; }},
        {"why it came", [](Workbook& w) { w.job.reason = "another"; }},
        {"measured by", [](Workbook& w) { w.job.measuredBy = "another"; }},
        {"notes", [](Workbook& w) { w.job.notes = "another"; }},
        {"sentences", [](Workbook& w) { w.sheet.summary = "another"; }},
        {"invented", [](Workbook& w) { w.invented = !w.invented; }},
        {"arrangement", [](Workbook& w) { w.block.arrangement = Arrangement::inLine; }},
        {"a bore's standard size",
         [](Workbook& w) { w.block.bores[1].standardSize = typed("3.4201", Unit::inch); }},
        {"a bore's depth", [](Workbook& w) { w.block.bores[1].depth = typed("4.6", Unit::inch); }},
        {"name of the open end", [](Workbook& w) { w.block.bores[0].openEnd = "another"; }},
        {"label of an axis", [](Workbook& w) { w.block.axes[0].label = "another"; }},
        {"ring line",
         [](Workbook& w) { w.block.bores[0].map.topRingLine = typed("0.9", Unit::inch); }},
        {"a port's axes",
         [](Workbook& w) {
             w.block.bores[0].map.ports = {
                 {typed("1.9", Unit::inch), typed("2.1", Unit::inch), {"A"}}};
         }},
        {"a limit",
         [](Workbook& w) { w.limitSets.front().limits.taper = typed("9.5", Unit::thou); }},
        {"name of the limits", [](Workbook& w) { w.limitSets.front().name = "another"; }},
        {"rule of the verdicts",
         [](Workbook& w) {
             for (LimitSet& set : w.limitSets)
                 set.decision.kind = DecisionRule::Kind::plain;
         }},
        {"rule of the taper",
         [](Workbook& w) { w.limitSets.front().taperRule = TaperRule::endToEnd; }},
        {"aim", [](Workbook& w) { w.straightAim = typed("0.0007", Unit::inch); }},
        {"name of a survey", [](Workbook& w) { w.surveys.front().header.name = "another"; }},
        {"day of a survey",
         [](Workbook& w) { w.surveys.front().header.time.secondsSinceEpoch -= 86'400; }},
        {"minute of a survey",
         [](Workbook& w) { w.surveys.front().header.time.secondsSinceEpoch += 60; }},
        {"gauge", [](Workbook& w) { w.surveys.front().header.gauge.gauge = "another"; }},
        {"what it was set on", [](Workbook& w) { w.surveys.front().header.gauge.setOn = "x"; }},
        {"the size set",
         [](Workbook& w) { w.surveys.front().header.gauge.setSize = typed("3.4401", Unit::inch); }},
        {"what a larger bore reads",
         [](Workbook& w) { w.surveys.front().header.gauge.dial.larger = Dial::Larger::minus; }},
        {"torque plate", [](Workbook& w) { w.surveys.front().header.plate = true; }},
        {"notes of a survey", [](Workbook& w) { w.surveys.front().header.notes = "another"; }},
        {"a reading",
         [](Workbook& w) { w.surveys.back().readings.back().typed = typed("0.2", Unit::thou); }},
        {"a reading as it was typed",
         [](Workbook& w) {
             Reading& reading = w.surveys.front().readings.front();
             reading.typed =
                 typed(reading.typed.text() +
                           (reading.typed.text().find('.') == std::string::npos ? ".0" : "0"),
                       reading.typed.unit());
         }},
        {"a reading struck out",
         [](Workbook& w) {
             w.surveys.back().readings.back().struck = Strike{"slip", {}};
         }},
        {"the reason of a strike",
         [](Workbook& w) {
             for (Survey& survey : w.surveys)
                 for (Reading& reading : survey.readings)
                     if (reading.struck) reading.struck->reason = "another";
         }},
        {"who struck it out",
         [](Workbook& w) {
             for (Survey& survey : w.surveys)
                 for (Reading& reading : survey.readings)
                     if (reading.struck) reading.struck->who = "another";
         }},
        {"an angle", [](Workbook& w) { w.surveys.front().readings.front().angleOffAxis = 12.5; }},
        {"a reading more",
         [](Workbook& w) {
             w.surveys.back().readings.push_back(w.surveys.back().readings.back());
         }},
        {"a survey less", [](Workbook& w) { w.surveys.pop_back(); }},
    };
}

TEST(CheckCode, EveryKindOfChangeThatIsShownGivesAnother) {
    const Workbook before = demo::saltmarsh();
    std::set<std::string> codes{codeOf(before)};
    for (const auto& [name, change] : changesShown()) {
        Workbook workbook = before;
        change(workbook);
        ASSERT_FALSE(workbook == before) << name << ": nothing was changed";
        EXPECT_TRUE(codes.insert(codeOf(workbook)).second)
            << name << ": the code is that of another sheet";
    }
    EXPECT_NE(codeOf(before, DisplayUnits::metric()), codeOf(before, DisplayUnits::inch()))
        << "the units are part of what is shown";
}

TEST(CheckCode, SizesPistonsRingsAndPassesAreInIt) {
    const std::vector<Change> fitted{
        {"a piston's size",
         [](Workbook& w) { w.fit.pistons.front().size = typed("3.4365", Unit::inch); }},
        {"a piston's label", [](Workbook& w) { w.fit.pistons.front().label = "another"; }},
        {"a ring's gap", [](Workbook& w) { w.fit.rings.front().gap = typed("0.02", Unit::inch); }},
        {"the clearance allowed",
         [](Workbook& w) { w.fit.clearance.upper = typed("9", Unit::thou); }},
    };
    const std::vector<Change> honed{
        {"strokes of a pass",
         [](Workbook& w) { w.hone.passes.front().windows.front().strokes = 77; }},
        {"a pass struck out", [](Workbook& w) { w.hone.passes.front().struck = "slip"; }},
        {"a stone's name", [](Workbook& w) { w.hone.stones.front().name = "another"; }},
    };
    for (const auto& [before, changes] :
         {std::pair{fittedBlock(), fitted}, std::pair{honedBlock(), honed}})
        for (const auto& [name, change] : changes) {
            Workbook workbook = before;
            change(workbook);
            EXPECT_NE(codeOf(workbook), codeOf(before)) << name;
        }
}

TEST(CheckCode, WhatIsNotShownLeavesItAsItIs) {
    const Workbook before = demo::saltmarsh();
    const std::string code = codeOf(before);
    const std::vector<Change> hidden{
        {"history",
         [](Workbook& w) {
             w.history.entries.push_back({{}, "A. Example", "limits", {}});
         }},
        {"id of the workbook", [](Workbook& w) { w.history.id = "another"; }},
        {"a field of a later version", [](Workbook& w) { w.unknown.emplace_back("later", "1"); }},
        {"the same of the job", [](Workbook& w) { w.job.unknown.emplace_back("later", "1"); }},
        {"a stone that was never used",
         [](Workbook& w) {
             Stone& stone = w.hone.stones.emplace_back();
             stone.id = "k1";
             stone.begins = typed("0", Unit::inch);
             stone.ends = typed("2", Unit::inch);
         }},
    };
    for (const auto& [name, change] : hidden) {
        Workbook workbook = before;
        change(workbook);
        EXPECT_EQ(codeOf(workbook), code) << name;
    }
    const DisplayUnits units = naturalUnits(before);
    Preferences shop;
    shop.shopName = "Another shop";
    shop.paper = Preferences::Paper::letter;
    EXPECT_EQ(sheetData(before, compute(before, units), shop, units, {1'900'000'000, -300})
                  .code.toStdString(),
              code)
        << "shop, paper and day of printing are not of the job";
}

TEST(CheckCode, StandsOnEveryPage) {
    for (const Preferences::Paper paper : {Preferences::Paper::a4, Preferences::Paper::letter}) {
        const SheetData data = test::dataOf(demo::saltmarsh());
        for (const TextLog& page : textsOf(data, paper))
            EXPECT_TRUE(said(page).contains("check code " + data.code + "  ·  page "))
                << said(page).toStdString();
    }
}

} // namespace
} // namespace borewright
