// SPDX-License-Identifier: GPL-3.0-or-later
// What is typed without a unit, and the preferences as a file.
#include "app/shell/new_block.h"
#include "app/shell/preferences_file.h"
#include "tests/support/memory_file_system.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

std::string size(const std::string& text) {
    const auto read = readSize(text);
    if (!read) return std::string("refused");
    return read->withUnit();
}

std::string allowance(const std::string& text, const std::string& beside) {
    const auto read = readAllowance(text, *readSize(beside));
    if (!read) return std::string("refused");
    return read->withUnit();
}

TEST(NewBlock, TellsTheUnitOfASizeFromItsNumberUnlessOneIsSaid) {
    EXPECT_EQ(size("3.42"), "3.42 in");
    EXPECT_EQ(size("3,42"), readTyped("3,42", Unit::inch)->withUnit());
    EXPECT_EQ(size("73.2"), "73.2 mm");
    EXPECT_EQ(readSize("12 mm")->value(), Length::whole(12, Unit::millimetre));
    EXPECT_EQ(readSize("20in")->value(), Length::whole(20, Unit::inch));
    EXPECT_EQ(size("0"), "refused");
    EXPECT_EQ(size("three"), "refused");
}

TEST(NewBlock, TellsThouFromInchesAndMicrometresFromMillimetres) {
    EXPECT_EQ(allowance("3", "3.42"), "3 thou");
    EXPECT_EQ(allowance("0.003", "3.42"), "0.003 in");
    EXPECT_EQ(allowance("50", "73.2"), "50 um");
    EXPECT_EQ(allowance("0.05", "73.2"), "0.05 mm");
}

TEST(NewBlock, RefusesAWornSizeThatIsNotAboveTheStandardSize) {
    NewBlock typed;
    typed.bores = "6";
    typed.size = "3.42";
    typed.depth = "4";
    typed.wornSize = "3.42";
    const auto made = makeWorkbook(typed);
    ASSERT_FALSE(made);
    EXPECT_EQ(made.error().where, new_block_field::wornSize);
}

TEST(NewBlock, RefusesAWornSizeThatIsASlip) {
    NewBlock typed;
    typed.bores = "2";
    typed.size = "3.42";
    typed.depth = "4.1";
    typed.wornSize = "41";
    const auto made = makeWorkbook(typed);
    ASSERT_FALSE(made) << "every bore would be within 41 in";
    EXPECT_EQ(made.error().where, new_block_field::wornSize);
}

TEST(PreferencesFile, ComesBackAsItWent) {
    Preferences p;
    p.shopName = QString::fromUtf8("Käthe \"Bore\" & Co");
    p.theme = Preferences::Theme::dark;
    p.order = Order::acrossBlock;
    p.soundOdd = false;
    p.copiesFolder = "/copies";
    p.copiesLatest = 5;
    p.copiesDays = 0;
    p.copiesMonths = 999;
    p.gauge.dial = micrometreDial();
    p.gauge.gauge = "gauge 2";
    p.gauge.gear = tenthDialAndRing();
    p.gauge.gear.repeatabilityFreedom = 9;
    p.gauge.gear.lastChecked = "March 2026";
    p.gauge.gear.dialError = *readTyped("2,5", Unit::micrometre);
    p = withGauge(p, p.gauge);
    p.gauge.gauge = "another";
    p.gauge.gear = Gear();
    p = withGauge(p, p.gauge);
    p.recentFiles = {"/a/b.borebook", "/c.borebook"};
    Stone stone;
    stone.id = "k7";
    stone.name = "short 100";
    stone.grit = "100";
    stone.kind = StoneKind::finish;
    stone.begins = *readTyped("0.06", Unit::inch);
    stone.ends = *readTyped("27,5", Unit::millimetre);
    stone.outOfOpenEnd = *readTyped("0.3", Unit::inch);
    stone.experience = StoneExperience{0.4, 0.25, 3};
    p = withStone(p, stone);
    stone.name = "full 100";
    stone.experience.reset();
    p = withStone(p, stone);
    const auto read = readPreferences(writePreferences(p));
    ASSERT_TRUE(read) << read.error().message();
    EXPECT_EQ(*read, p);
    ASSERT_EQ(read->gauges.size(), 2U);
    EXPECT_EQ(read->gauges[1].gear.repeatabilityFreedom, 9);
    ASSERT_EQ(read->stones.size(), 2U);
    EXPECT_EQ(read->stones[0].name, "full 100") << "by name";
    EXPECT_EQ(read->stones[1].id, "") << "ids are a workbook's";
}

TEST(PreferencesFile, GearThatIsNoneIsRefusedWithItsPlace) {
    Preferences p;
    p.gauge.gauge = "gauge 2";
    p.gauge.gear = tenthDialAndRing();
    p = withGauge(p, p.gauge);
    std::string bytes = writePreferences(p);
    const std::size_t place = bytes.rfind("\"0.08 thou\"");
    ASSERT_NE(place, std::string::npos);
    bytes.replace(place, 11, "\"0 thou\"");
    const auto read = readPreferences(bytes);
    ASSERT_FALSE(read);
    EXPECT_EQ(read.error().message(), "repeatability: must be more than zero");
}

TEST(PreferencesFile, AStoneThatIsNoneIsRefused) {
    Preferences p;
    Stone stone;
    stone.name = "short 100";
    stone.ends = *readTyped("1.06", Unit::inch);
    p = withStone(p, stone);
    std::string bytes = writePreferences(p);
    const std::size_t place = bytes.find("\"1.06 in\"");
    ASSERT_NE(place, std::string::npos);
    bytes.replace(place, 9, "\"0 in\"");
    const auto read = readPreferences(bytes);
    ASSERT_FALSE(read);
    EXPECT_EQ(read.error().message(), "stones: stone 1 is none");
}

TEST(Preferences, AGaugeIsKeptByItsNameWithoutWhatItWasSetTo) {
    GaugeSetting gauge;
    gauge.gauge = "no. 2";
    gauge.setSize = *readTyped("3.5", Unit::inch);
    gauge.blockTemperature = *readTemperature("31", Scale::celsius);
    gauge.stoodTogether = true;
    gauge.gear = tenthDialAndRing();
    Preferences p = withGauge({}, gauge);
    ASSERT_EQ(p.gauges.size(), 1U);
    EXPECT_FALSE(p.gauges[0].setSize || p.gauges[0].blockTemperature || p.gauges[0].stoodTogether);
    gauge.gear = halfThouDialAndMicrometer();
    p = withGauge(p, gauge);
    ASSERT_EQ(p.gauges.size(), 1U) << "kept anew under the same name";
    EXPECT_EQ(p.gauges[0].gear, halfThouDialAndMicrometer());
    gauge.gauge.clear();
    EXPECT_EQ(withGauge(p, gauge).gauges.size(), 1U) << "without a name it is only the last used";
}

TEST(PreferencesFile, ADamagedOneIsKeptAsideAndSaid) {
    MemoryFileSystem files;
    files.makeFolder("/c");
    files.put("/c/p.json", "{\"borewrightPreferences\": 1, \"theme\": 7}");
    PreferencesStore store;
    const PreferencesFile file(store, files, "/c/p.json");
    EXPECT_EQ(store.value(), Preferences());
    EXPECT_TRUE(file.notice().contains("theme")) << file.notice().toStdString();
    EXPECT_TRUE(files.facts("/c/p.json.damaged"));
    EXPECT_FALSE(files.facts("/c/p.json"));
}

} // namespace
} // namespace borewright
