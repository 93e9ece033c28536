// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sizing/size_choice.h"

#include "core/verdict/verdict.h"

#include <algorithm>
#include <limits>
#include <tuple>

namespace borewright {
namespace {

using Bores = std::vector<std::optional<BoreCleanUp>>;

// The least finish size; an offer that is for no bore at all comes last.
Length leastFinish(const Offer& offer) {
    Length least = Length::fromPicometres(std::numeric_limits<std::int64_t>::max());
    for (const auto& bore : offer.bores)
        if (bore) least = std::min(least, bore->finish);
    return least;
}

// Of one finish size the oversize comes first: it is what limits and pistons are named by.
void sortOffers(std::vector<Offer>& offers) {
    std::ranges::stable_sort(offers, {}, [](const Offer& offer) {
        return std::tuple(leastFinish(offer), !offer.oversize, offer.oversize, offer.beyondGreatest,
                          offer.name);
    });
}

class Chooser {
public:
    Chooser(const Bores& bores, Centring centring, Length finishAllowance, const DecisionRule& rule)
        : m_bores(bores)
        , m_centring(centring)
        , m_allowance(finishAllowance)
        , m_rule(rule)
        , m_k(guardFactor(rule, std::numeric_limits<double>::infinity())) {}

    SizeChoice choose(std::vector<Offer> offers) const {
        sortOffers(offers);
        SizeChoice choice;
        for (Offer& offer : offers) {
            OfferResult& result = choice.offers.emplace_back();
            for (std::size_t bore = 0; bore < m_bores.size(); ++bore)
                result.cells.push_back(cellOf(bore, offer));
            result.offer = std::move(offer);
        }
        for (std::size_t bore = 0; bore < m_bores.size(); ++bore)
            addOwn(choice, bore);
        for (std::size_t i = 0; i < choice.offers.size(); ++i) {
            judgeBlock(choice.offers[i], choice.own);
            const OfferResult& result = choice.offers[i];
            if (!choice.chosen && result.cleansBlock && !result.offer.beyondGreatest)
                choice.chosen = i;
        }
        return choice;
    }

private:
    static const OfferedBore* offered(const Offer& offer, std::size_t bore) {
        return bore < offer.bores.size() && offer.bores[bore] ? &*offer.bores[bore] : nullptr;
    }

    [[nodiscard]] Length guard(std::size_t bore) const {
        return guardBand(cleanUpBy(*m_bores[bore], m_centring), m_rule);
    }

    [[nodiscard]] SizeCell cellOf(std::size_t bore, const Offer& offer) const {
        SizeCell cell;
        const OfferedBore* size = offered(offer, bore);
        if (size == nullptr || !m_bores[bore]) return cell;
        const CleanUp& cleanUp = cleanUpBy(*m_bores[bore], m_centring);
        const Length w = guard(bore);
        cell.margin = size->finish - cleanUp.size - m_allowance;
        cell.stock = size->finish - m_bores[bore]->smallest.diameter;
        cell.u = shownDoubt(cleanUp, w);
        cell.cleans = cell.margin >= w   ? Cleans::yes
                      : cell.margin < -w ? Cleans::no
                                         : Cleans::tooClose;
        return cell;
    }

    // The u of which w is k times.
    [[nodiscard]] std::optional<Length> shownDoubt(const CleanUp& cleanUp, Length w) const {
        if (m_k <= 0 || w <= Length{}) return cleanUp.u;
        const Length u = Length::nearest(w.in(Unit::micrometre) / m_k, Unit::micrometre);
        return std::max(u, cleanUp.u.value_or(Length{}));
    }

    // The smallest size, for this bore, that cleans it and may be advised.
    void addOwn(SizeChoice& choice, std::size_t bore) const {
        std::optional<std::size_t> own;
        bool onOffer = false;
        for (std::size_t i = 0; i < choice.offers.size(); ++i) {
            const auto& [offer, cells, cleansBlock, deciding] = choice.offers[i];
            const OfferedBore* size = offered(offer, bore);
            onOffer = onOffer || size != nullptr;
            if (cells[bore].cleans != Cleans::yes || offer.beyondGreatest) continue;
            if (!own || size->finish < offered(choice.offers[*own].offer, bore)->finish) own = i;
        }
        choice.own.push_back(own);
        choice.beyond.push_back(m_bores[bore] && onOffer && !own);
    }

    // A bore without a size of its own decides nothing.
    void judgeBlock(OfferResult& result, const std::vector<std::optional<std::size_t>>& own) const {
        bool any = false;
        bool all = true;
        std::optional<std::tuple<Length, int, std::size_t>> least; // room, bore's number, place
        for (std::size_t bore = 0; bore < own.size(); ++bore) {
            if (!own[bore]) continue;
            any = true;
            const SizeCell& cell = result.cells[bore];
            all = all && cell.cleans == Cleans::yes;
            if (cell.cleans == Cleans::unknown) continue;
            const std::tuple room{cell.margin - guard(bore), m_bores[bore]->bore, bore};
            if (!least || room < *least) least = room;
        }
        result.cleansBlock = any && all;
        if (least) result.deciding = std::get<2>(*least);
    }

    const Bores& m_bores;
    Centring m_centring;
    Length m_allowance;
    const DecisionRule& m_rule;
    double m_k;
};

} // namespace

std::string_view nameOf(Cleans cleans) {
    switch (cleans) {
    case Cleans::unknown:
        return "not known";
    case Cleans::yes:
        return "cleans";
    case Cleans::no:
        return "does not clean";
    case Cleans::tooClose:
        return "too close to call";
    }
    return "";
}

Verdict verdictOf(Cleans cleans) {
    switch (cleans) {
    case Cleans::yes:
        return Verdict::within;
    case Cleans::no:
        return Verdict::outside;
    case Cleans::tooClose:
        return Verdict::tooCloseToCall;
    case Cleans::unknown:
        break;
    }
    return Verdict::notMeasured;
}

SizeChoice chooseSize(const std::vector<std::optional<BoreCleanUp>>& bores,
                      std::vector<Offer> offers, Centring centring, Length finishAllowance,
                      const DecisionRule& rule) {
    return Chooser(bores, centring, finishAllowance, rule).choose(std::move(offers));
}

} // namespace borewright
