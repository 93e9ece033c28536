// SPDX-License-Identifier: GPL-3.0-or-later
// What holds of the choice for any block: by random trial, against the plain rule "every worn or
// damaged place is clear by the allowance and its own k·u".
#include "core/sizing/size_choice.h"
#include "core/statistics/random.h"
#include "tests/support/worn_bores.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <numeric>

namespace borewright {
namespace {

using namespace test;

struct Case {
    std::vector<MeasuredBore> bores;
    std::vector<BoreWear> wear;
    std::vector<Offer> offers;
    Centring centring = Centring::wornBore;
    Length allowance;
};

class Maker {
public:
    explicit Maker(std::uint64_t seed)
        : m_random(seed) {}
    std::int64_t upTo(std::int64_t most) {
        return static_cast<std::int64_t>(m_random.next() % static_cast<std::uint64_t>(most + 1));
    }
    bool chance(int percent) { return upTo(99) < percent; }
    // In tenths of a thou, so that ties happen.
    Length tenths(std::int64_t most) { return Length::whole(upTo(most), Unit::tenth); }

    Case make() {
        Case made;
        made.centring = chance(50) ? Centring::wornBore : Centring::originalAxis;
        made.allowance = tenths(10);
        const std::int64_t bores = 1 + upTo(5);
        for (int number = 1; number <= bores; ++number) {
            made.bores.push_back(bore(number));
            made.wear.push_back(wear());
        }
        const std::int64_t offers = upTo(5);
        for (int i = 0; i < offers; ++i)
            made.offers.push_back(offer("offer " + std::to_string(i), made.bores.size()));
        return made;
    }

private:
    MeasuredBore bore(int number) {
        MeasuredBore bore;
        bore.bore = number;
        if (chance(90)) bore.standardSize = in("3.42");
        const std::optional<Length> u = chance(60) ? std::optional(tenths(4)) : std::nullopt;
        const std::int64_t levels = 1 + upTo(3);
        for (int level = 0; level < levels; ++level)
            for (const char* axis : {"A", "B"})
                bore.at.push_back({Length::whole(500 + 700 * level, Unit::thou), axis,
                                   in("3.4195") + tenths(60), Zone::ringTravel, u});
        return bore;
    }
    BoreWear wear() {
        BoreWear wear;
        wear.side = static_cast<WearSide>(upTo(2));
        wear.madeTo = typedFrom(in("3.4200"), Unit::inch); // said, however worn all over
        const std::int64_t damages = upTo(2);
        for (int i = 0; i < damages; ++i)
            wear.damages.push_back(damageOf(
                typedFrom(Length::whole(upTo(3000), Unit::thou), Unit::inch),
                std::vector<std::string>{"A", "B", "C", ""}[static_cast<size_t>(upTo(3))],
                typedFrom(Length::whole(1 + upTo(120), Unit::tenth), Unit::thou), chance(40)));
        return wear;
    }
    Offer offer(const std::string& name, std::size_t bores) {
        const OfferedBore size{in("3.4200") + Length::whole(25 * upTo(16), Unit::tenth), {}, {}};
        Offer offer{name, Length{}, chance(20), {}};
        for (std::size_t i = 0; i < bores; ++i)
            offer.bores.push_back(chance(90) ? std::optional(size) : std::nullopt);
        return offer;
    }
    Random m_random;
};

std::vector<std::optional<BoreCleanUp>> cleanUps(const Case& made) {
    std::vector<std::optional<BoreCleanUp>> all;
    for (std::size_t i = 0; i < made.bores.size(); ++i)
        all.emplace_back(cleanUpOf(made.bores[i], made.wear[i]));
    return all;
}
SizeChoice choiceOf(const Case& made) {
    return chooseSize(cleanUps(made), made.offers, made.centring, made.allowance);
}

std::string chosenName(const SizeChoice& choice) {
    return choice.chosen ? choice.offers[*choice.chosen].offer.name : "none";
}
// The finish size of a bore's own choice; larger than any where there is none.
Length ownFinish(const SizeChoice& choice, std::size_t bore) {
    if (!choice.own[bore]) return Length::largest();
    return choice.offers[*choice.own[bore]].offer.bores[bore]->finish;
}

// Each reading and damage alone, as a bore of its own.
bool everyPlaceIsClear(const Case& made, std::size_t i, Length finish) {
    const auto clear = [&](const BoreCleanUp& one) {
        const CleanUp& place = cleanUpBy(one, made.centring);
        const double w_um = 1.65 * place.u.value_or(Length{}).in(Unit::micrometre);
        return finish - made.allowance - place.size >= Length::nearest(w_um, Unit::micrometre);
    };
    BoreWear sound = made.wear[i];
    sound.damages.clear();
    for (const MeasuredAt& at : made.bores[i].at) {
        MeasuredBore alone = made.bores[i];
        alone.at = {at};
        if (!clear(cleanUpOf(alone, sound))) return false;
    }
    for (const Damage& damage : made.wear[i].damages) {
        const auto onItsAxis = diameterAt(made.bores[i], damage.depth.value(), damage.axis);
        MeasuredBore alone = made.bores[i];
        alone.at = {onItsAxis ? *onItsAxis : *diameterAt(made.bores[i], damage.depth.value(), "")};
        BoreWear hurt = sound;
        hurt.damages = {damage};
        hurt.damages[0].axis = alone.at[0].axis;
        if (!clear(cleanUpOf(alone, hurt))) return false;
    }
    return true;
}

constexpr int trials = 3000;

TEST(SizeChoiceTrials, CleansExactlyWhereEveryPlaceIsClear) {
    int cleaned = 0;
    int cells = 0;
    for (std::uint64_t seed = 1; seed <= trials; ++seed) {
        const Case made = Maker(seed).make();
        const SizeChoice choice = choiceOf(made);
        for (const OfferResult& result : choice.offers)
            for (std::size_t i = 0; i < made.bores.size(); ++i) {
                const auto& size = result.offer.bores[i];
                const bool yes = size && everyPlaceIsClear(made, i, size->finish);
                EXPECT_EQ(result.cells[i].cleans == Cleans::yes, yes)
                    << "seed " << seed << ' ' << result.offer.name << " bore " << i + 1;
                cleaned += yes;
                ++cells;
            }
    }
    EXPECT_GT(cleaned, cells / 5) << "the trials must try both";
    EXPECT_LT(cleaned, cells * 4 / 5);
}

TEST(SizeChoiceTrials, TheSmallestAdvisableIsChosenAndNoneBeyondTheGreatest) {
    for (std::uint64_t seed = 1; seed <= trials; ++seed) {
        const Case made = Maker(seed).make();
        const SizeChoice choice = choiceOf(made);
        EXPECT_TRUE(std::ranges::is_sorted(choice.offers, {},
                                           [](const OfferResult& result) {
                                               Length least = Length::largest();
                                               for (const auto& bore : result.offer.bores)
                                                   if (bore) least = std::min(least, bore->finish);
                                               return least;
                                           }))
            << "seed " << seed;
        for (std::size_t i = 0; i < choice.offers.size(); ++i) {
            const OfferResult& result = choice.offers[i];
            bool all = false; // every bore that has a size of its own, and there is one
            for (std::size_t bore = 0; bore < choice.own.size(); ++bore)
                if (choice.own[bore]) all = true;
            for (std::size_t bore = 0; bore < choice.own.size(); ++bore) {
                const bool cleans = result.cells[bore].cleans == Cleans::yes;
                if (choice.own[bore] && !cleans) all = false;
                if (!cleans || result.offer.beyondGreatest) continue;
                ASSERT_TRUE(choice.own[bore]) << "seed " << seed;
                EXPECT_LE(ownFinish(choice, bore), result.offer.bores[bore]->finish)
                    << "seed " << seed;
                EXPECT_FALSE(choice.beyond[bore]) << "seed " << seed;
            }
            EXPECT_EQ(result.cleansBlock, all) << "seed " << seed;
            if (all && !result.offer.beyondGreatest) {
                ASSERT_TRUE(choice.chosen) << "seed " << seed;
                EXPECT_LE(*choice.chosen, i) << "seed " << seed;
            }
        }
        if (choice.chosen) {
            EXPECT_FALSE(choice.offers[*choice.chosen].offer.beyondGreatest) << "seed " << seed;
            EXPECT_TRUE(choice.offers[*choice.chosen].cleansBlock) << "seed " << seed;
        }
        for (const auto& own : choice.own)
            EXPECT_FALSE(own && choice.offers[*own].offer.beyondGreatest) << "seed " << seed;
    }
}

TEST(SizeChoiceTrials, MoreWearNeverGivesASmallerSize) {
    int larger = 0;
    for (std::uint64_t seed = 1; seed <= trials; ++seed) {
        Maker maker(seed);
        Case made = maker.make();
        const SizeChoice before = choiceOf(made);
        const auto bore =
            static_cast<std::size_t>(maker.upTo(static_cast<std::int64_t>(made.bores.size()) - 1));
        if (!made.wear[bore].damages.empty() && maker.chance(50)) {
            Damage& damage = made.wear[bore].damages.front();
            damage.deep = typedFrom(damage.deep.value() + maker.tenths(40), Unit::thou);
        } else {
            auto& at = made.bores[bore].at;
            at[static_cast<std::size_t>(maker.upTo(static_cast<std::int64_t>(at.size()) - 1))]
                .diameter += maker.tenths(60);
        }
        const SizeChoice after = choiceOf(made);
        EXPECT_GE(ownFinish(after, bore), ownFinish(before, bore)) << "seed " << seed;
        if (after.beyond != before.beyond) continue; // one bore less has a say
        EXPECT_GE(after.chosen.value_or(99), before.chosen.value_or(99)) << "seed " << seed;
        larger += after.chosen > before.chosen;
    }
    EXPECT_GT(larger, trials / 60) << "the trials must reach a larger size";
}

TEST(SizeChoiceTrials, OrderOfBoresAndOffersDoesNotMatter) {
    for (std::uint64_t seed = 1; seed <= trials; ++seed) {
        Maker maker(seed);
        const Case made = maker.make();
        std::vector<std::size_t> order(made.bores.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::ranges::rotate(order, order.begin() + maker.upTo(std::ssize(order) - 1));
        if (maker.chance(50)) std::ranges::reverse(order);
        Case turned = made;
        std::ranges::reverse(turned.offers);
        for (std::size_t i = 0; i < order.size(); ++i) {
            turned.bores[i] = made.bores[order[i]];
            turned.wear[i] = made.wear[order[i]];
            for (std::size_t k = 0; k < made.offers.size(); ++k)
                turned.offers[made.offers.size() - 1 - k].bores[i] = made.offers[k].bores[order[i]];
        }
        const SizeChoice a = choiceOf(made);
        const SizeChoice b = choiceOf(turned);
        EXPECT_EQ(chosenName(a), chosenName(b)) << "seed " << seed;
        for (std::size_t i = 0; i < order.size(); ++i) {
            EXPECT_EQ(a.own[order[i]], b.own[i]) << "seed " << seed;
            EXPECT_EQ(a.beyond[order[i]], b.beyond[i]) << "seed " << seed;
        }
        for (std::size_t k = 0; k < a.offers.size(); ++k) {
            EXPECT_EQ(a.offers[k].offer.name, b.offers[k].offer.name) << "seed " << seed;
            const auto decidesB = b.offers[k].deciding;
            EXPECT_EQ(a.offers[k].deciding, decidesB ? std::optional(order[*decidesB]) : decidesB)
                << "seed " << seed;
        }
    }
}

TEST(SizeChoiceTrials, ABoreBeyondTheLastSizeChangesNothingForTheOthers) {
    for (std::uint64_t seed = 1; seed <= trials; ++seed) {
        Case made = Maker(seed).make();
        const SizeChoice before = choiceOf(made);
        MeasuredBore ruined = made.bores.front();
        ruined.bore = 99;
        for (MeasuredAt& at : ruined.at)
            at.diameter += thou("200");
        made.bores.push_back(ruined);
        made.wear.emplace_back();
        for (Offer& offer : made.offers) {
            OfferedBore same{in("3.4200"), {}, {}};
            for (const auto& bore : offer.bores)
                if (bore) same = *bore;
            offer.bores.emplace_back(same);
        }
        const SizeChoice after = choiceOf(made);
        EXPECT_EQ(after.beyond.back(), !made.offers.empty()) << "seed " << seed;
        EXPECT_EQ(chosenName(before), chosenName(after)) << "seed " << seed;
        for (std::size_t i = 0; i + 1 < made.bores.size(); ++i)
            EXPECT_EQ(ownFinish(before, i), ownFinish(after, i)) << "seed " << seed;
    }
}

TEST(SizeChoiceTrials, MarginsAddUp) {
    for (std::uint64_t seed = 1; seed <= trials; ++seed) {
        const Case made = Maker(seed).make();
        const auto bores = cleanUps(made);
        for (const OfferResult& result : choiceOf(made).offers)
            for (std::size_t i = 0; i < bores.size(); ++i) {
                const SizeCell& cell = result.cells[i];
                if (!result.offer.bores[i]) {
                    EXPECT_EQ(cell.cleans, Cleans::unknown) << "seed " << seed;
                    continue;
                }
                const Length finish = result.offer.bores[i]->finish;
                EXPECT_EQ(cleanUpBy(*bores[i], made.centring).size + made.allowance + cell.margin,
                          finish)
                    << "seed " << seed;
                EXPECT_EQ(bores[i]->smallest.diameter + cell.stock, finish) << "seed " << seed;
            }
    }
}

} // namespace
} // namespace borewright
