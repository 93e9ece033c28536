// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/workbook/renumber.h"

#include <map>
#include <optional>
#include <set>

namespace borewright {
namespace {

class NewNumbers {
public:
    explicit NewNumbers(const Renumber& edit) {
        for (const auto& [from, number] : edit.numbers)
            m_to[from] = number;
    }

    int operator()(int number) const {
        const auto found = m_to.find(number);
        return found == m_to.end() ? number : found->second;
    }

    [[nodiscard]] Result<void> check(const Block& block) const {
        std::set<int> given, borne;
        for (const auto& [from, number] : m_to) {
            if (number < 1 || number > 999)
                return refuse(std::to_string(number) + " is no number of a bore");
            if (!given.insert(number).second) return bothBe(number);
        }
        for (const Bore& bore : block.bores)
            if (!borne.insert((*this)(bore.number)).second) return bothBe((*this)(bore.number));
        return {};
    }

    // Limits, targets and pistons may name a bore that has left the block. Where its number is
    // given anew it takes one that falls free, so that two bores never run into one and undo
    // parts them.
    void freeTakenNumbers() {
        std::set<int> taken, free;
        for (const auto& [from, number] : m_to) {
            if (!m_to.contains(number)) taken.insert(number);
            free.insert(from);
        }
        for (const auto& [from, number] : m_to)
            free.erase(number);
        for (const int number : taken) // as many as are free: what is given is given once
            m_to[number] = free.extract(free.begin()).value();
    }

    void apply(std::optional<int>& number) const {
        if (number) number = (*this)(*number);
    }
    template<class T>
    void apply(std::map<int, T>& byBore) const {
        std::map<int, T> moved;
        for (auto& [number, value] : byBore)
            moved[(*this)(number)] = std::move(value);
        byBore = std::move(moved);
    }
    void apply(Survey& survey) const {
        if (survey.header.asked)
            for (Station& station : *survey.header.asked)
                station.bore = (*this)(station.bore);
        for (Reading& reading : survey.readings)
            reading.station.bore = (*this)(reading.station.bore);
    }
    void apply(HoneRecord& hone) const {
        for (Pass& pass : hone.passes)
            pass.bore = (*this)(pass.bore);
        apply(hone.ticks);
    }
    void apply(FitRecord& fit) const {
        for (Piston& piston : fit.pistons)
            apply(piston.bore);
        for (Ring& ring : fit.rings) {
            apply(ring.measuredIn);
            apply(ring.bore);
        }
    }

private:
    static tl::unexpected<Error> bothBe(int number) {
        return refuse("two bores cannot both be number " + std::to_string(number));
    }

    std::map<int, int> m_to;
};

} // namespace

Result<Edit> renumber(Workbook& workbook, const Renumber& edit) {
    NewNumbers renamed(edit);
    if (auto good = renamed.check(workbook.block); !good) return tl::unexpected(good.error());
    renamed.freeTakenNumbers();
    for (Bore& bore : workbook.block.bores)
        bore.number = renamed(bore.number);
    for (LimitSet& set : workbook.limitSets)
        renamed.apply(set.perBore);
    renamed.apply(workbook.sizing.bores);
    renamed.apply(workbook.targets);
    renamed.apply(workbook.fit);
    renamed.apply(workbook.hone);
    for (Survey& survey : workbook.surveys)
        renamed.apply(survey);
    Renumber inverse;
    for (const auto& [from, number] : edit.numbers)
        inverse.numbers.emplace_back(number, from);
    return inverse;
}

} // namespace borewright
