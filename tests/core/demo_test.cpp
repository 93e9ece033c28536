// SPDX-License-Identifier: GPL-3.0-or-later
// The demonstrations from end to end: what the tool makes of them as typed, and once the planted
// mistakes are struck out and typed again. All figures are invented with the scenarios.
#include "core/results/results.h"
#include "core/storage/workbook_file.h"
#include "tests/support/demo_scenarios.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <sstream>

namespace borewright {
namespace {

using demo::at;
using demo::correct;

class Truth {
public:
    // As the readings stand, unless the doubt of the gear is asked for.
    Truth(const Workbook& workbook, const std::string& survey, bool withDoubt = false)
        : m_units(naturalUnits(workbook))
        , m_results(compute(withDoubt ? workbook : demo::withoutDoubt(workbook), m_units))
        , m_survey(*findResult(m_results, survey)) {}

    const BoreResult& bore(int number) const { return *findBoreResult(m_survey, number); }
    // In the small unit of the workbook, as a shop would say it.
    std::string largest(int number, Length from) const {
        return formatSmall(bore(number).form->largest.value - from, m_units);
    }
    std::string outOfRound(int number) const {
        return formatSmall(bore(number).form->outOfRound->value, m_units);
    }
    std::string taper(int number) const {
        return formatSmall(bore(number).form->worstTaper->taper, m_units);
    }
    std::string straight(int number) const {
        return formatSmall(*bore(number).straightness, m_units);
    }
    Verdict verdict(int number, Quality quality) const {
        for (const Judgement& judgement : bore(number).judgements)
            if (judgement.quality == quality) return judgement.verdict;
        return Verdict::notJudged;
    }
    std::string toGo(int number) const {
        return formatSmall(*bore(number).leastToGo, m_units) + " to " +
               formatSmall(*bore(number).mostToGo, m_units);
    }
    std::vector<std::string> odd(const Station& station) const {
        return findStation(bore(station.bore), station.depth, station.axis)->odd;
    }
    const SurveyResult& survey() const { return m_survey; }

private:
    DisplayUnits m_units;
    Results m_results;
    const SurveyResult& m_survey;
};

const Length inches342 = *readLength("3.4200", Unit::inch);
const Length mm732 = *readLength("73.200", Unit::millimetre);

TEST(Saltmarsh, AsTypedTheSlipsShowInTheForm) {
    const Truth found(demo::saltmarsh(), "s1");
    EXPECT_EQ(found.outOfRound(2), "4.4") << "2.8 against −1.6 at 1.20 in";
    EXPECT_EQ(found.taper(2), "3.7");
    EXPECT_EQ(found.outOfRound(6), "8.2") << "2.0 against −6.2 at 0.60 in";
    EXPECT_EQ(found.taper(6), "9.4");
    EXPECT_FALSE(found.odd(at(2, "1.20", "A")).empty()) << "the wrong sign should look odd";
    EXPECT_FALSE(found.odd(at(6, "0.60", "B")).empty()) << "the lost turn should look odd";
    EXPECT_TRUE(found.odd(at(4, "0.60", "B")).empty()) << "real wear is not odd";
}

TEST(Saltmarsh, CorrectedTheWearIsAsWorn) {
    const Truth found(demo::correctedSaltmarsh(), "s1");
    const char* largest[] = {"2.9", "3.3", "2.6", "4.3", "3.1", "3.8"};
    const char* outOfRound[] = {"1.1", "1.2", "0.9", "1.9", "1.0", "1.8"};
    const char* taper[] = {"2.2", "2.7", "2.0", "3.5", "1.3", "3.1"};
    for (int bore = 1; bore <= 6; ++bore) {
        EXPECT_EQ(found.largest(bore, inches342), largest[bore - 1]) << "bore " << bore;
        EXPECT_EQ(found.outOfRound(bore), outOfRound[bore - 1]) << "bore " << bore;
        EXPECT_EQ(found.taper(bore), taper[bore - 1]) << "bore " << bore;
    }
}

TEST(Saltmarsh, AVerdictExactlyOnItsLimitIsWithin) {
    const Truth found(demo::correctedSaltmarsh(), "s1");
    EXPECT_EQ(found.verdict(3, Quality::taper), Verdict::within) << "2.0 thou allowed, 2.0 found";
    EXPECT_EQ(found.verdict(1, Quality::taper), Verdict::outside);
    EXPECT_EQ(found.verdict(5, Quality::taper), Verdict::within);
    for (int bore = 1; bore <= 6; ++bore) {
        EXPECT_EQ(found.verdict(bore, Quality::largestSize),
                  bore == 4 ? Verdict::outside : Verdict::within)
            << "bore " << bore;
        EXPECT_EQ(found.verdict(bore, Quality::outOfRound), Verdict::within) << "bore " << bore;
    }
}

TEST(Saltmarsh, TheSkippedReadingIsMissed) {
    const Truth typed(demo::saltmarsh(), "s3");
    EXPECT_EQ(typed.bore(3).measured, 11);
    EXPECT_EQ(typed.bore(3).asked, 12);
    EXPECT_EQ(typed.outOfRound(3), "0.8");
    EXPECT_EQ(typed.taper(3), "1.0");
    const Truth corrected(demo::correctedSaltmarsh(), "s3");
    EXPECT_EQ(corrected.outOfRound(3), "0.1");
    EXPECT_EQ(corrected.taper(3), "1.0");
}

TEST(Saltmarsh, ToGoIsTheFinishSizeLessTheReading) {
    const Truth rough(demo::saltmarsh(), "s2");
    EXPECT_EQ(rough.toGo(1), "4.2 to 6.6");
    EXPECT_EQ(rough.verdict(1, Quality::smallestSize), Verdict::notYet);
}

TEST(Saltmarsh, TheFinalSurveyIsWithin) {
    const Truth final(demo::saltmarsh(), "s4");
    EXPECT_EQ(final.survey().verdict, Verdict::within);
    EXPECT_EQ(final.bore(6).measured, 12) << "the warm readings are struck out, not averaged";
    EXPECT_EQ(final.largest(6, *readLength("3.4400", Unit::inch)), "0.3");
    for (int bore = 1; bore <= 6; ++bore)
        EXPECT_EQ(final.bore(bore).straight, AimAnswer::met) << "bore " << bore;
}

// With a tenth dial and a ring a difference is known to 0.21 thou: bores 1 and 3 are too close to
// the taper limit of 2.0 thou to be called.
TEST(Saltmarsh, TheDoubtLeavesWhatLiesNearALimitOpen) {
    const Truth found(demo::correctedSaltmarsh(), "s1", true);
    const Verdict taper[] = {Verdict::tooCloseToCall, Verdict::outside, Verdict::tooCloseToCall,
                             Verdict::outside,        Verdict::within,  Verdict::outside};
    for (int bore = 1; bore <= 6; ++bore)
        EXPECT_EQ(found.verdict(bore, Quality::taper), taper[bore - 1]) << "bore " << bore;
    EXPECT_EQ(found.bore(4).verdict, Verdict::outside);
    EXPECT_NE(found.bore(1).settles.find("would settle it"), std::string::npos)
        << found.bore(1).settles;
    EXPECT_NE(found.bore(3).settles.find("too near its limit"), std::string::npos)
        << "exactly on its limit: " << found.bore(3).settles;
    const Truth final(demo::saltmarsh(), "s4", true);
    EXPECT_EQ(final.survey().verdict, Verdict::within);
    EXPECT_EQ(final.bore(2).straight, AimAnswer::cannotTell)
        << "a quarter thou is beyond one reading of this gauge";
}

// A warm block, a dial of half a thou: what is proven, what is not, and what to do about it.
TEST(SaltmarshWarm, ProvesWhatItCanAndSaysWhatWouldHelp) {
    const Truth warm(demo::saltmarshWarm(), "s1", true);
    EXPECT_EQ(warm.bore(1).verdict, Verdict::within) << warm.bore(1).why;
    EXPECT_EQ(warm.bore(6).verdict, Verdict::within) << warm.bore(6).why;
    EXPECT_EQ(warm.bore(2).verdict, Verdict::tooCloseToCall);
    EXPECT_EQ(warm.bore(3).verdict, Verdict::tooCloseToCall);
    EXPECT_EQ(warm.bore(4).verdict, Verdict::outside) << warm.bore(4).why;
    EXPECT_EQ(warm.bore(5).verdict, Verdict::tooCloseToCall);
    for (const int bore : {2, 3, 5})
        EXPECT_NE(warm.bore(bore).settles, "") << "bore " << bore;
    EXPECT_FALSE(warm.survey().doubts.warnings.empty()) << "the block is warm";
    EXPECT_TRUE(warm.survey().suspicions.empty()) << "nothing is mistyped";
}

Workbook correctedRushmere() {
    Workbook workbook = demo::rushmere();
    correct(workbook, "s1", at(2, "70 mm", "B"), "73.261");
    correct(workbook, "s1", at(3, "70 mm", "A"), "73.241");
    correct(workbook, "s1", at(3, "70 mm", "B"), "73.259");
    correct(workbook, "s3", at(1, "70 mm", "B"), "30");
    return workbook;
}

TEST(Rushmere, CorrectedAllThreeAreOutsideOnTaperAlone) {
    const Truth found(correctedRushmere(), "s1");
    const char* largest[] = {"68", "71", "74"};
    const char* outOfRound[] = {"22", "23", "25"};
    const char* taper[] = {"53", "57", "57"};
    for (int bore = 1; bore <= 3; ++bore) {
        EXPECT_EQ(found.largest(bore, mm732), largest[bore - 1]) << "bore " << bore;
        EXPECT_EQ(found.outOfRound(bore), outOfRound[bore - 1]) << "bore " << bore;
        EXPECT_EQ(found.taper(bore), taper[bore - 1]) << "bore " << bore;
        EXPECT_EQ(found.bore(bore).why, "taper") << "bore " << bore;
    }
}

TEST(Rushmere, SwappedDigitsLeaveLargestAndTaperAsTheyWere) {
    const Truth typed(demo::rushmere(), "s1");
    EXPECT_EQ(typed.largest(2, mm732), "71");
    EXPECT_EQ(typed.taper(2), "57");
    EXPECT_EQ(typed.outOfRound(2), "23");
}

TEST(Rushmere, ThePortsLeaveNoWallAcross) {
    const Workbook workbook = demo::rushmere();
    const Bore& bore = workbook.block.bores.front();
    EXPECT_FALSE(hasWall(bore, *readLength("47", Unit::millimetre), "B"));
    EXPECT_TRUE(hasWall(bore, *readLength("47", Unit::millimetre), "A"));
    EXPECT_EQ(zoneAt(bore, *readLength("8", Unit::millimetre)), Zone::skirtOnly);
    EXPECT_TRUE(isJudged(bore, *readLength("24", Unit::millimetre)));
    EXPECT_TRUE(isJudged(bore, *readLength("80", Unit::millimetre)));
    EXPECT_EQ(Truth(workbook, "s1").bore(1).asked, 11);
}

TEST(Rushmere, AnEntryInTheWrongUnitLooksOdd) {
    const Truth typed(demo::rushmere(), "s3");
    EXPECT_FALSE(typed.odd(at(1, "70 mm", "B")).empty()) << "0.030 typed where µm are meant";
    EXPECT_TRUE(typed.odd(at(1, "70 mm", "A")).empty());
}

TEST(Rushmere, AGaugeThatReadsMinusInALargerBoreShowsWhatIsToGo) {
    EXPECT_EQ(Truth(correctedRushmere(), "s3").toGo(1), "24 to 42");
}

TEST(Rushmere, TheZeroDriftIsKnown) {
    const Workbook workbook = demo::rushmere();
    const auto drift = zeroDrift(findSurvey(workbook, "s2")->header);
    ASSERT_TRUE(drift);
    EXPECT_EQ(format(drift->spread, Unit::micrometre, 0), "6");
}

TEST(Rushmere, TheFinalSurveyIsStraight) {
    const Truth final(demo::rushmere(), "s4");
    const char* straight[] = {"3", "3", "3"};
    for (int bore = 1; bore <= 3; ++bore)
        EXPECT_EQ(final.straight(bore), straight[bore - 1]) << "bore " << bore;
    EXPECT_EQ(final.survey().verdict, Verdict::within);
}

std::string bytesOf(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream bytes;
    bytes << in.rdbuf();
    return bytes.str();
}

// The files in git are what the user opens; the tables say what was typed. With
// BOREWRIGHT_WRITE_DEMO set, the files are written anew from the tables.
void compareWithFile(const Workbook& workbook, const std::string& name) {
    const std::string path = std::string(BOREWRIGHT_SOURCE_DIR) + "/demo/" + name;
    if (std::getenv("BOREWRIGHT_WRITE_DEMO") != nullptr)
        std::ofstream(path, std::ios::binary) << writeWorkbook(workbook);
    const auto loaded = readWorkbook(bytesOf(path));
    ASSERT_TRUE(loaded) << path << ": " << loaded.error().message();
    EXPECT_EQ(*loaded == workbook, true) << path << " is not what the tables say";
    EXPECT_TRUE(loaded->invented) << "a demonstration is marked as invented";
    EXPECT_EQ(writeWorkbook(*loaded), bytesOf(path)) << path << " is not as this program writes it";
}

TEST(DemoFiles, SaltmarshIsAsTyped) {
    compareWithFile(demo::saltmarsh(), "saltmarsh-v6.borebook");
}

TEST(DemoFiles, RushmereIsAsTyped) {
    compareWithFile(demo::rushmere(), "rushmere-3.borebook");
}

TEST(DemoFiles, SaltmarshWarmIsAsTyped) {
    compareWithFile(demo::saltmarshWarm(), "saltmarsh-warm.borebook");
}

TEST(DemoFiles, SaltmarshHoningIsAsTyped) {
    compareWithFile(demo::saltmarshHoning(), "saltmarsh-honing.borebook");
}

} // namespace
} // namespace borewright
