// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/lengths.h"

#include <clocale>
#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

std::string refusal(std::string_view text, Unit unit = Unit::thou) {
    const auto typed = readTyped(text, unit);
    return typed ? "accepted as " + typed->withUnit() : typed.error().message();
}

TEST(ReadingNumbers, PointAndCommaAreTheSame) {
    EXPECT_EQ(mm("1,234"), mm("1.234"));
    EXPECT_EQ(mm("1,234").picometres(), 1'234'000'000);
    EXPECT_EQ(thou(",5"), thou("0.5"));
    EXPECT_EQ(thou("5."), thou("5"));
}

TEST(ReadingNumbers, SignsAsKeypadsAndPrintersMakeThem) {
    EXPECT_EQ(thou("-1.5"), -thou("1.5"));
    EXPECT_EQ(thou("\u22121.5"), thou("-1.5"));
    EXPECT_EQ(thou("+1.5"), thou("1.5"));
}

TEST(ReadingNumbers, RefusesWhatIsNotOneNumber) {
    EXPECT_EQ(refusal(""), "nothing was typed");
    EXPECT_EQ(refusal("   "), "nothing was typed");
    EXPECT_EQ(refusal("1,234.5"), "'1,234.5' has two decimal points");
    EXPECT_EQ(refusal("1.2.3"), "'1.2.3' has two decimal points");
    EXPECT_EQ(refusal("1 2"), "'1 2' is not a number");
    EXPECT_EQ(refusal("abc"), "'abc' is not a number");
    EXPECT_EQ(refusal("--1"), "'--1' is not a number");
    EXPECT_EQ(refusal("1e3"), "'1e3' is not a number");
    EXPECT_EQ(refusal("nan"), "'nan' is not a number");
    EXPECT_EQ(refusal("inf"), "'inf' is not a number");
    EXPECT_EQ(refusal("."), "'.' is not a number");
    EXPECT_EQ(refusal("-"), "'-' is not a number");
    EXPECT_EQ(refusal("0x10"), "'0x10' is not a number");
    EXPECT_EQ(refusal("6o"), "'6o' is not a number with a unit this program knows");
    EXPECT_EQ(refusal("1234567890123456789"),
              "'1234567890123456789' has more digits than any reading");
}

TEST(ReadingNumbers, RefusesRatherThanRounds) {
    EXPECT_EQ(refusal("0.000000001", Unit::inch),
              "'0.000000001' has more decimals than a length can hold exactly");
    EXPECT_EQ(refusal("10001", Unit::millimetre), "'10001' is beyond ten metres");
}

TEST(ReadingNumbers, AUnitBehindTheNumberCounts) {
    EXPECT_EQ(readLength("3.5in", Unit::millimetre), in("3.5"));
    EXPECT_EQ(readLength("88 mm", Unit::inch), mm("88"));
    EXPECT_EQ(readLength("4.5 thou", Unit::inch), thou("4.5"));
    EXPECT_EQ(readLength("12 μm", Unit::inch), um("12"));
    EXPECT_EQ(readLength("3\"", Unit::millimetre), in("3"));
}

TEST(Length, HoldsEveryDecimalOfTheShopExactly) {
    // Exact inch: 25.4 mm by definition (international yard and pound agreement, 1959).
    EXPECT_EQ(in("1"), mm("25.4"));
    EXPECT_EQ(in("0.000001").picometres(), 25'400);
    EXPECT_EQ(mm("0.000000001").picometres(), 1);
    EXPECT_EQ(thou("1"), in("0.001"));
    EXPECT_EQ(Length::whole(1, Unit::tenth), in("0.0001"));
    EXPECT_EQ(Length::whole(1, Unit::hundredth), mm("0.01"));
    EXPECT_EQ(in("3.4239") + thou("0.1"), in("3.4240"));
}

TEST(Length, MeanIsToThePicometre) {
    const Length readings[] = {thou("1.0"), thou("1.1"), thou("1.1")};
    EXPECT_EQ(mean(readings).picometres(), 27'093'333); // 27 093 333.3
    const Length two[] = {Length::fromPicometres(1), Length::fromPicometres(2)};
    EXPECT_EQ(mean(two).picometres(), 2) << "half a picometre goes to even";
}

// ASTM E29; ISO 80000-1:2009 Annex B rule A: half to even, once.
TEST(Showing, RoundsHalfToEvenOnce) {
    EXPECT_EQ(format(mm("1.655"), Unit::millimetre, 2), "1.66");
    EXPECT_EQ(format(mm("1.625"), Unit::millimetre, 2), "1.62");
    EXPECT_EQ(format(mm("12.25"), Unit::millimetre, 1), "12.2");
    EXPECT_EQ(format(mm("12.35"), Unit::millimetre, 1), "12.4");
    EXPECT_EQ(format(mm("12.251"), Unit::millimetre, 1), "12.3") << "never in two stages";
    EXPECT_EQ(format(-mm("12.25"), Unit::millimetre, 1), "\u221212.2");
}

TEST(Showing, SignsAndZero) {
    EXPECT_EQ(format(-thou("0.04"), Unit::thou, 1), "0.0") << "no minus nought";
    EXPECT_EQ(format(thou("1.5"), Unit::thou, 1, Sign::always), "+1.5");
    EXPECT_EQ(format(-thou("1.5"), Unit::thou, 1, Sign::plain), "-1.5");
    EXPECT_EQ(format(in("3.5"), Unit::inch, 4), "3.5000");
    EXPECT_EQ(format(thou("0.5"), Unit::inch, 4), "0.0005");
}

TEST(Showing, DepthsCarryNoNeedlessZeros) {
    EXPECT_EQ(formatDepth(in("1.75"), DisplayUnits::inch()), "1.75");
    EXPECT_EQ(formatDepth(in("0.5"), DisplayUnits::inch()), "0.50");
    EXPECT_EQ(formatDepth(in("1.125"), DisplayUnits::inch()), "1.125");
    EXPECT_EQ(formatDepth(mm("47"), DisplayUnits::metric()), "47");
    EXPECT_EQ(formatDepth(mm("47.5"), DisplayUnits::metric()), "47.5");
}

TEST(TypedFrom, ShowsJustTheDecimalsNeeded) {
    EXPECT_EQ(typedFrom(thou("-1.5"), Unit::thou).text(), "-1.5");
    EXPECT_EQ(typedFrom(in("3.75"), Unit::inch).text(), "3.75");
    EXPECT_EQ(typedFrom(mm("1"), Unit::inch).withUnit(), "1000.000000 um") << "no inch holds 1 mm";
}

// Nothing is ever off by a factor: every unit, both separators, and whatever the C locale says.
TEST(ReadingNumbers, IsTheSameInEveryLocaleUnitAndSeparator) {
    const char* locales[] = {"C",           "C.UTF-8",     "de_DE.UTF-8",
                             "en_US.UTF-8", "fr_FR.UTF-8", "sv_SE.UTF-8"};
    for (const char* locale : locales) {
        std::setlocale(LC_ALL, locale); // where it is not installed the former stays: no harm
        for (const Unit unit : allUnits)
            for (std::int64_t tenths = -1234; tenths <= 1234; tenths += 77) {
                std::string point = (tenths < 0 ? "-" : "") +
                                    std::to_string(std::abs(tenths) / 10) + "." +
                                    std::to_string(std::abs(tenths) % 10);
                std::string comma = point;
                comma[comma.find('.')] = ',';
                const Length expected = Length::fromPicometres(tenths * (picometresPer(unit) / 10));
                ASSERT_EQ(readLength(point, unit), expected) << locale << " " << point;
                ASSERT_EQ(readLength(comma, unit), expected) << locale << " " << comma;
                ASSERT_EQ(readLength(point + " " + std::string(symbol(unit)), Unit::inch),
                          expected);
                ASSERT_EQ(readLength(format(expected, unit, 1), unit), expected)
                    << "shown and typed again";
            }
    }
    std::setlocale(LC_ALL, "C");
}

TEST(Amounts, WhatComesToNextToNothingIsAsked) {
    const auto said = [](std::string_view text, Unit unit) {
        const auto read = readAmount(text, unit);
        return read ? read->withUnit() : read.error().message();
    };
    EXPECT_EQ(said("0.012", Unit::thou), "0.012 thou is next to nothing: write 12, or 0.012 in");
    EXPECT_EQ(said("0,085", Unit::micrometre),
              "0,085 \u00b5m is next to nothing: write 85, or 0,085 mm");
    EXPECT_EQ(said("12", Unit::thou), "12 thou");
    EXPECT_EQ(said("0.25", Unit::thou), "0.25 thou") << "a fine aim is no slip";
    EXPECT_EQ(said("0", Unit::thou), "0 thou");
    EXPECT_EQ(said("0.012 in", Unit::thou), "0.012 in") << "who says the unit is believed";
    EXPECT_EQ(said("0.012 thou", Unit::thou), "0.012 thou");
    EXPECT_EQ(said("0.012", Unit::inch), "0.012 in");
    EXPECT_EQ(said("x", Unit::thou), readTyped("x", Unit::thou).error().message());
}

} // namespace
} // namespace borewright
