// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sizing/size_choice.h"
#include "tests/support/offered_sizes.h"
#include "tests/support/worn_bores.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;
using Bores = std::vector<std::optional<BoreCleanUp>>;

// Two stations: unworn at the top, `largest` below; one damage where `deep` is given.
std::optional<BoreCleanUp> boreOf(int number, const char* largest, const char* deep_thou = nullptr,
                                  std::optional<Length> u = {}, bool felt = false) {
    MeasuredBore bore =
        wornBore({{"0.25", "B", "3.4203"}, {"1.40", "B", largest}}, Unit::inch, "3.4200", u);
    bore.bore = number;
    BoreWear wear;
    if (deep_thou != nullptr)
        wear.damages = {damageOf(typedIn("1.40"), "B", typedThou(deep_thou), felt)};
    return cleanUpOf(bore, wear);
}

// Six bores, of which 4 has a score 6 thou deep where it is worn by 3.5.
Bores six(std::optional<Length> u = {}) {
    return {boreOf(1, "3.4229", nullptr, u), boreOf(2, "3.4233", nullptr, u),
            boreOf(3, "3.4226", nullptr, u), boreOf(4, "3.4235", "6", u),
            boreOf(5, "3.4231", nullptr, u), boreOf(6, "3.4238", nullptr, u)};
}

std::vector<Offer> usualOffers(std::size_t bores) {
    return {oversize("standard", "3.4200", bores), oversize("0.010", "3.4300", bores),
            oversize("0.020", "3.4400", bores), oversize("0.030", "3.4500", bores)};
}

const Length allowance = thou("0.5");

std::string nameOfChosen(const SizeChoice& choice) {
    return choice.chosen ? choice.offers[*choice.chosen].offer.name : "none";
}
std::string nameOfOwn(const SizeChoice& choice, std::size_t bore) {
    return choice.own[bore] ? choice.offers[*choice.own[bore]].offer.name : "none";
}

TEST(SizeChoice, TheWorstBoreDecidesForTheBlock) {
    const SizeChoice choice = chooseSize(six(), usualOffers(6), Centring::wornBore, allowance);
    EXPECT_EQ(nameOfChosen(choice), "0.020");
    const OfferResult& chosen = choice.offers[*choice.chosen];
    EXPECT_TRUE(chosen.cleansBlock);
    EXPECT_EQ(chosen.deciding, std::size_t{3}) << "bore 4";
    EXPECT_EQ(chosen.cells[3].margin, thou("4.0")) << "3.4400 − 3.4355 − 0.0005";
    EXPECT_EQ(chosen.cells[3].stock, thou("19.7")) << "3.4400 − 3.4203";
    EXPECT_EQ(nameOfOwn(choice, 3), "0.020");
    EXPECT_EQ(nameOfOwn(choice, 0), "0.010") << "by itself";
    EXPECT_FALSE(choice.offers[1].cleansBlock);
    EXPECT_EQ(choice.offers[1].deciding, std::size_t{3}) << "what keeps the block from 0.010";
    EXPECT_EQ(choice.offers[1].cells[3].cleans, Cleans::no);
    EXPECT_EQ(choice.offers[1].cells[3].margin, thou("-6.0"));
    EXPECT_EQ(std::ranges::count(choice.beyond, true), 0);
}

TEST(SizeChoice, OnTheOriginalAxisTheMarginIsLess) {
    const SizeChoice choice = chooseSize(six(), usualOffers(6), Centring::originalAxis, allowance);
    EXPECT_EQ(nameOfChosen(choice), "0.020");
    EXPECT_EQ(choice.offers[2].cells[3].margin, thou("0.5")) << "3.4400 − 3.4390 − 0.0005";
    const SizeChoice more = chooseSize(six(), usualOffers(6), Centring::originalAxis, thou("1.1"));
    EXPECT_EQ(nameOfChosen(more), "0.030") << "a tenth short with 1.1 thou to come off";
}

TEST(SizeChoice, ExactlyEnoughCleans) {
    const SizeChoice choice = chooseSize(six(), usualOffers(6), Centring::originalAxis, thou("1"));
    EXPECT_EQ(choice.offers[2].cells[3].margin, Length{});
    EXPECT_EQ(choice.offers[2].cells[3].cleans, Cleans::yes);
    EXPECT_EQ(nameOfChosen(choice), "0.020");
}

// Margin 0.5 thou on the original axis, where u of the diameter counts twice; w = 1.65 · 2u.
TEST(SizeChoice, CloserThanItsDoubtIsTooCloseToCall) {
    const auto cleansAt = [](const char* u, const DecisionRule& rule) {
        return chooseSize(six(thou(u)), usualOffers(6), Centring::originalAxis, allowance, rule)
            .offers[2]
            .cells[3]
            .cleans;
    };
    EXPECT_EQ(cleansAt("0.1515", {}), Cleans::yes) << "w 0.49995";
    EXPECT_EQ(cleansAt("0.1516", {}), Cleans::tooClose) << "w 0.50028";
    EXPECT_EQ(cleansAt("0.1515", {DecisionRule::Kind::twoAndHalfPercent}), Cleans::tooClose);
    EXPECT_EQ(cleansAt("5", {DecisionRule::Kind::plain}), Cleans::yes);
    const SizeChoice choice =
        chooseSize(six(thou("0.2")), usualOffers(6), Centring::originalAxis, allowance);
    EXPECT_EQ(choice.offers[2].cells[3].u, thou("0.4"));
    EXPECT_EQ(nameOfChosen(choice), "0.030") << "not advised unless it surely cleans";
}

TEST(SizeChoice, DoesNotCleanOnlyWhereItIsSure) {
    const auto cleansAt = [](const char* u) {
        return chooseSize({boreOf(1, "3.4297", nullptr, thou(u))}, usualOffers(1),
                          Centring::wornBore, allowance)
            .offers[1]
            .cells[0]
            .cleans;
    };
    // Margin −0.2 thou.
    EXPECT_EQ(cleansAt("0.121"), Cleans::no) << "w 0.19965";
    EXPECT_EQ(cleansAt("0.122"), Cleans::tooClose) << "w 0.2013";
}

TEST(SizeChoice, AFeltScoreKeepsASizeFromBeingSure) {
    // 3.4235 + 2 · 2.5 = 3.4285 leaves 1.0 thou; felt, it is known to ± 1.65 · 1.44.
    const Bores measured{boreOf(1, "3.4235", "2.5")};
    const Bores felt{boreOf(1, "3.4235", "2.5", {}, true)};
    EXPECT_EQ(nameOfChosen(chooseSize(measured, usualOffers(1), Centring::wornBore, allowance)),
              "0.010");
    const SizeChoice choice = chooseSize(felt, usualOffers(1), Centring::wornBore, allowance);
    EXPECT_EQ(choice.offers[1].cells[0].cleans, Cleans::tooClose);
    EXPECT_EQ(choice.offers[1].cells[0].margin, thou("1.0"));
    EXPECT_EQ(nameOfChosen(choice), "0.020");
}

TEST(SizeChoice, ThatBoreDecidesWhichIsLeastSure) {
    const Bores bores{boreOf(1, "3.4285", nullptr, thou("0.1")),
                      boreOf(2, "3.4282", nullptr, thou("1"))};
    const SizeChoice choice = chooseSize(bores, usualOffers(2), Centring::wornBore, allowance);
    EXPECT_EQ(choice.offers[1].cells[0].cleans, Cleans::yes) << "margin 1.0, w 0.165";
    EXPECT_EQ(choice.offers[1].cells[1].cleans, Cleans::tooClose) << "margin 1.3, w 1.65";
    EXPECT_EQ(choice.offers[1].deciding, std::size_t{1}) << "bore 2 keeps the block from 0.010";
}

TEST(SizeChoice, ABoreBeyondTheLastSizeDoesNotSpoilTheOthers) {
    Bores bores = six();
    bores[1] = boreOf(2, "3.4233", "40");
    const SizeChoice choice = chooseSize(bores, usualOffers(6), Centring::wornBore, allowance);
    EXPECT_EQ(nameOfChosen(choice), "0.020");
    EXPECT_TRUE(choice.beyond[1]);
    EXPECT_EQ(std::ranges::count(choice.beyond, true), 1);
    EXPECT_EQ(nameOfOwn(choice, 1), "none");
    EXPECT_EQ(choice.offers[2].deciding, std::size_t{3});
    EXPECT_EQ(choice.offers[2].cells[1].cleans, Cleans::no) << "shown all the same";
}

TEST(SizeChoice, NothingBeyondTheGreatestIsAdvised) {
    std::vector<Offer> offers = usualOffers(6);
    offers[2].beyondGreatest = offers[3].beyondGreatest = true;
    const SizeChoice choice = chooseSize(six(), offers, Centring::wornBore, allowance);
    EXPECT_EQ(nameOfChosen(choice), "0.010") << "for the five that it cleans";
    EXPECT_TRUE(choice.beyond[3]);
    EXPECT_EQ(nameOfOwn(choice, 3), "none");
    EXPECT_EQ(choice.offers[2].cells[3].cleans, Cleans::yes) << "shown, not advised";
    const SizeChoice alone =
        chooseSize({boreOf(4, "3.4235", "6")}, offers, Centring::wornBore, allowance);
    EXPECT_FALSE(alone.chosen);
    for (const OfferResult& result : alone.offers) {
        EXPECT_FALSE(result.cleansBlock) << result.offer.name;
        EXPECT_FALSE(result.deciding) << result.offer.name;
    }
}

TEST(SizeChoice, ABoreNobodyMeasuredDecidesNothing) {
    Bores bores = six();
    bores[3].reset();
    const SizeChoice choice = chooseSize(bores, usualOffers(6), Centring::wornBore, allowance);
    EXPECT_EQ(nameOfChosen(choice), "0.010");
    EXPECT_EQ(choice.offers[1].deciding, std::size_t{5}) << "bore 6";
    EXPECT_EQ(choice.offers[1].cells[3].cleans, Cleans::unknown);
    EXPECT_FALSE(choice.beyond[3]);
    const SizeChoice none = chooseSize(Bores(3), usualOffers(3), Centring::wornBore, allowance);
    EXPECT_FALSE(none.chosen);
    EXPECT_EQ(std::ranges::count(none.beyond, true), 0);
}

TEST(SizeChoice, AnOfferThatIsNotForABoreThatNeedsItDoesNotCleanTheBlock) {
    std::vector<Offer> offers = usualOffers(6);
    offers[2].bores[0].reset();
    const SizeChoice choice = chooseSize(six(), offers, Centring::wornBore, allowance);
    EXPECT_EQ(choice.offers[2].cells[0].cleans, Cleans::unknown);
    EXPECT_FALSE(choice.offers[2].cleansBlock);
    EXPECT_EQ(nameOfChosen(choice), "0.030");
    EXPECT_EQ(nameOfOwn(choice, 3), "0.020");
    for (Offer& offer : offers) // nothing on offer for bore 1 at all: it is not known what it needs
        offer.bores[0].reset();
    const SizeChoice without = chooseSize(six(), offers, Centring::wornBore, allowance);
    EXPECT_EQ(nameOfChosen(without), "0.020");
    EXPECT_FALSE(without.beyond[0]);
    for (Offer& offer : offers) // a list shorter than the block
        offer.bores.resize(4);
    const SizeChoice shorter = chooseSize(six(), offers, Centring::wornBore, allowance);
    EXPECT_EQ(nameOfChosen(shorter), "0.020");
    EXPECT_EQ(shorter.offers[2].cells.size(), 6U);
}

TEST(SizeChoice, OffersAreSortedByTheirSizeAndMayBeRepeated) {
    std::vector<Offer> offers = usualOffers(6);
    std::swap(offers[0], offers[3]);
    offers.push_back(oversize("0.020", "3.4400", 6));
    Offer atHand = oversize("pistons at hand", "3.4400", 6);
    atHand.oversize.reset();
    offers.push_back(atHand);
    offers.push_back({"for nobody", {}, false, std::vector<std::optional<OfferedBore>>(6)});
    const SizeChoice choice = chooseSize(six(), offers, Centring::wornBore, allowance);
    std::vector<std::string> names;
    for (const OfferResult& result : choice.offers)
        names.push_back(result.offer.name);
    EXPECT_EQ(names, (std::vector<std::string>{"standard", "0.010", "0.020", "0.020",
                                               "pistons at hand", "0.030", "for nobody"}));
    EXPECT_EQ(nameOfChosen(choice), "0.020") << "of equals the oversize, by its name";
}

TEST(SizeChoice, MetricPit) {
    MeasuredBore bore =
        wornBore({{"58", "B", "73.243"}, {"70", "B", "73.261"}}, Unit::millimetre, "73.200");
    BoreWear wear;
    wear.damages = {damageOf(typedMm("66"), "B", typedMm("0.12"))};
    const std::vector<Offer> offers{oversize("0.25", "73.450", 1, Unit::millimetre),
                                    oversize("0.50", "73.700", 1, Unit::millimetre)};
    const SizeChoice choice =
        chooseSize({cleanUpOf(bore, wear)}, offers, Centring::wornBore, mm("0.010"));
    EXPECT_EQ(nameOfChosen(choice), "0.50");
    EXPECT_EQ(choice.offers[0].cells[0].margin, mm("-0.055"));
    EXPECT_EQ(choice.offers[1].cells[0].margin, mm("0.195"));
}

TEST(SizeChoice, StandardSizeWhereItHardlyWore) {
    // A finish above the largest reading: honing to the top of the standard's limits is enough.
    const SizeChoice choice = chooseSize({boreOf(1, "3.4203")}, {oversize("standard", "3.4210", 1)},
                                         Centring::wornBore, allowance);
    EXPECT_EQ(nameOfChosen(choice), "standard");
    EXPECT_EQ(choice.offers[0].cells[0].margin, thou("0.2"));
}

TEST(SizeChoice, EmptyListsChooseNothing) {
    const SizeChoice nothing = chooseSize({}, {}, Centring::wornBore, allowance);
    EXPECT_FALSE(nothing.chosen);
    EXPECT_TRUE(nothing.offers.empty());
    const SizeChoice noOffers = chooseSize(six(), {}, Centring::wornBore, allowance);
    EXPECT_FALSE(noOffers.chosen);
    EXPECT_EQ(noOffers.own.size(), 6U);
    EXPECT_EQ(std::ranges::count(noOffers.beyond, true), 0) << "no last size to be beyond";
    const SizeChoice noBores = chooseSize({}, usualOffers(0), Centring::wornBore, allowance);
    EXPECT_FALSE(noBores.chosen);
    EXPECT_EQ(noBores.offers.size(), 4U);
}

TEST(SizeChoice, Words) {
    EXPECT_EQ(nameOf(Cleans::unknown), "not known");
    EXPECT_EQ(nameOf(Cleans::yes), "cleans");
    EXPECT_EQ(nameOf(Cleans::no), "does not clean");
    EXPECT_EQ(nameOf(Cleans::tooClose), "too close to call");
}

} // namespace
} // namespace borewright
