// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/words.h"

#include <algorithm>
#include <array>

namespace borewright {

std::string wordFor(const BoreResult& bore, bool underWay, const DisplayUnits& units) {
    if (bore.measured == 0 && !bore.form) return std::string(nameOf(Verdict::notMeasured));
    if (bore.verdict == Verdict::outside) return underWay ? "over size" : "outside";
    if (underWay && bore.leastToGo && *bore.mostToGo > Length()) {
        const std::string least = formatSmall(*bore.leastToGo, units);
        const std::string most = formatSmall(*bore.mostToGo, units);
        return (least == most ? most : least + "–" + most) + " to go";
    }
    if (bore.measured < bore.asked)
        return std::to_string(bore.measured) + " of " + std::to_string(bore.asked) + " read";
    return std::string(nameOf(bore.verdict));
}

std::string whyOf(const BoreResult& bore) {
    if (bore.verdict == Verdict::within || bore.verdict == Verdict::notJudged ||
        bore.verdict == Verdict::notMeasured)
        return {};
    std::string why;
    for (const Judgement& judgement : bore.judgements) {
        if (judgement.verdict != bore.verdict) continue;
        if (!why.empty()) why += ", ";
        why += nameOf(judgement.quality);
    }
    return why;
}

std::string numberWord(int number) {
    static constexpr std::array words{
        "none", "one", "two",    "three",  "four",     "five",     "six",     "seven",  "eight",
        "nine", "ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen"};
    if (number >= 0 && number < static_cast<int>(words.size()))
        return words[static_cast<std::size_t>(number)];
    return std::to_string(number);
}

std::string listed(const std::vector<int>& numbers) {
    std::vector<std::string> texts;
    for (const int number : numbers)
        texts.push_back(std::to_string(number));
    return listed(texts);
}

std::string listed(const std::vector<std::string>& texts) {
    std::string list;
    for (std::size_t i = 0; i < texts.size(); ++i) {
        if (i > 0) list += i + 1 == texts.size() ? " and " : ", ";
        list += texts[i];
    }
    return list;
}

std::string slipsWords(const Results& results, const std::vector<BoreOfSurvey>& used) {
    std::vector<int> bores;
    std::size_t readings = 0;
    for (const auto& [survey, number] : used) {
        const SurveyResult* result = findResult(results, survey);
        const BoreResult* bore = result != nullptr ? findBoreResult(*result, number) : nullptr;
        if (bore == nullptr) continue;
        const auto odd = std::ranges::count_if(
            bore->stations, [](const StationResult& station) { return !station.odd.empty(); });
        if (odd > 0) bores.push_back(number);
        readings += static_cast<std::size_t>(odd);
    }
    if (bores.empty()) return {};
    return (bores.size() == 1 ? "Bore " : "Bores ") + listed(bores) +
           (readings == 1 ? ": a reading looks like a slip; settle it first."
                          : ": readings look like slips; settle them first.");
}

std::string claimed(Length value, const DisplayUnits& units) {
    const int decimals = usualDecimals(units.small) + 1;
    std::int64_t step = picometresPer(units.small);
    for (int i = 0; i < decimals; ++i)
        step /= 10;
    const std::int64_t steps = (value.picometres() + step - 1) / step;
    std::string text = format(Length::fromPicometres(steps * step), units.small, decimals);
    if (text.find('.') != std::string::npos) {
        while (text.back() == '0')
            text.pop_back();
        if (text.back() == '.') text.pop_back();
    }
    return text + " " + std::string(symbol(units.small));
}

} // namespace borewright
