// SPDX-License-Identifier: GPL-3.0-or-later
// Makes the parts of a workbook by chance. Part of random_workbook.h.
#pragma once

#include "core/workbook/workbook.h"
#include "tests/support/lengths.h"

#include <iterator>
#include <optional>
#include <random>
#include <string>

namespace borewright::test {

class Maker {
public:
    explicit Maker(unsigned seed)
        : m_random(seed) {}

    Workbook make();

private:
    int upTo(int most) { return std::uniform_int_distribution<int>(0, most)(m_random); }
    bool chance() { return upTo(1) == 1; }
    template<class Choice>
    Choice choice(int count) {
        return static_cast<Choice>(upTo(count - 1));
    }

    std::string text() {
        static const char* const pieces[] = {"",     "bore ", "\"quoted\"", "\\",     "ü µ Ø",
                                             "\n",   "\t",    "=1+1",       "−1,5",   "/",
                                             "漢字", "\x01",  "'apos'",     "a;b,c ", "{\"x\":1}"};
        std::string made;
        for (int i = upTo(4); i > 0; --i)
            made += pieces[upTo(std::size(pieces) - 1)];
        return made;
    }

    // A number as people type them, of this many thousandths.
    TypedLength length(int most, bool sign = false, Unit unit = Unit::inch) {
        static const char* const points[] = {".", ","};
        const int whole = upTo(most);
        std::string made = sign && chance() ? (chance() ? "-" : "\u2212") : "";
        if (sign && made.empty() && chance()) made = "+";
        made += std::to_string(whole);
        if (chance()) {
            made += points[upTo(1)];
            for (int i = upTo(3); i > 0; --i)
                made += static_cast<char>('0' + upTo(9));
        }
        return typed(made, unit);
    }
    Unit unit() { return allUnits[static_cast<std::size_t>(upTo(5))]; }
    TypedLength size() {
        return typed(std::to_string(1 + upTo(8)) + (chance() ? ".5" : ",25"), Unit::inch);
    }
    TypedTemperature temperature() {
        return *readTemperature(chance() ? "22.5 C" : "72 F", Scale::celsius);
    }
    Timestamp time() { return {1'700'000'000 + upTo(100'000'000), 30 * (upTo(56) - 28)}; }

    UnknownFields unknown() {
        if (upTo(3) != 0) return {};
        return {{"later", R"({"a": [1, 2.50, null], "b": "ü\n"})"}, {"other " + text(), "true"}};
    }
    template<class Make>
    auto maybe(Make make) -> std::optional<decltype(make())> {
        if (chance()) return make();
        return std::nullopt;
    }

    Bore bore(int number, const std::vector<Axis>& axes);
    LimitSet limitSet(const std::string& id, int bores);
    Limits limits();
    Survey survey(const std::string& id, const Block& block);
    GaugeSetting gauge();
    Gear gear();
    RepeatStudy study(const std::string& id);
    Station station(const Block& block);
    SizingPlan sizing(int bores);
    BoreWear wear();
    FinishTargets targets(int bores);
    FitRecord fit(int bores);
    Piston piston(const std::string& id);
    Ring ring(const std::string& id);
    FitLimits fitLimits();
    HoneRecord hone(const Workbook& workbook); // of its bores, between its surveys
    History history();
    Stone stone(int number);
    StrokeWindow window();
    Pass pass(const std::string& id, const Workbook& workbook, const HoneRecord& record);

    std::mt19937 m_random;
};

} // namespace borewright::test
