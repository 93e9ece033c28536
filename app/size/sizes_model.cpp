// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/size/sizes_model.h"

#include "app/fields/length_text.h"
#include "app/pictures/reading_words.h"

#include <algorithm>

namespace borewright {
namespace {

std::optional<TypedLength> standardOf(const Block& block) {
    return block.bores.empty() ? std::nullopt : block.bores.front().standardSize;
}

Length oversizeOf(const SizeOnOffer& size) {
    return size.oversize.value();
}

// By rising oversize; the row where `oversize` comes to stand.
int sortSizes(SizingPlan& plan, Length oversize) {
    std::ranges::stable_sort(plan.sizes, {}, oversizeOf);
    return static_cast<int>(std::ranges::find(plan.sizes, oversize, oversizeOf) -
                            plan.sizes.begin());
}

} // namespace

SizesModel::SizesModel(Document& document, QObject* parent)
    : EntryModel(document, parent) {
    refresh();
}

int SizesModel::count() const {
    return static_cast<int>(plan().sizes.size());
}

std::vector<EntryModel::Column> SizesModel::columns() const {
    return {{tr("Oversize"), tr("oversize")},
            {tr("Smallest"), tr("smallest size")},
            {tr("Largest"), tr("largest size")}};
}

QString SizesModel::nameOf(int row) const {
    return tr("size %1").arg(shownLength(plan().sizes.at(static_cast<std::size_t>(row)).oversize));
}

QString SizesModel::kind() const {
    return tr("size");
}

QString SizesModel::textAt(int row, int column) const {
    const SizeOnOffer& size = plan().sizes.at(static_cast<std::size_t>(row));
    if (column == oversize) return shownLength(size.oversize);
    return shownLength(column == smallest ? size.lower : size.upper);
}

// The limits that are in force where none are typed: those of the finish limits.
QString SizesModel::hintAt(int row, int column) const {
    if (column == oversize) return {};
    const Length wanted = plan().sizes.at(static_cast<std::size_t>(row)).oversize.value();
    for (const OfferResult& result : document().results().sizing.choice.offers) {
        if (result.offer.oversize != wanted) continue;
        for (const auto& bore : result.offer.bores) {
            const auto& limit = !bore                ? std::optional<Length>()
                                : column == smallest ? bore->lower
                                                     : bore->upper;
            if (limit) return qs(sizeWithUnit(*limit, document().units()));
        }
    }
    return tr("not given");
}

Result<int> SizesModel::put(SizingPlan& plan, int row, int column, const QString& text) const {
    SizeOnOffer& size = plan.sizes.at(static_cast<std::size_t>(row));
    const auto before = column == oversize   ? std::optional(size.oversize)
                        : column == smallest ? size.lower
                                             : size.upper;
    const auto read = readField(text, before, block());
    if (!read) return tl::unexpected(read.error());
    if (column == oversize) {
        if (!*read) return refuse("a size has an oversize; “Take size off” takes the whole row");
        if (const auto good = mustBeOversize(*read, block()); !good)
            return tl::unexpected(good.error());
        size.oversize = **read;
        return sortSizes(plan, (*read)->value());
    }
    if (const auto near = mustBeNear(*read, standardOf(block())); !near)
        return tl::unexpected(near.error());
    (column == smallest ? size.lower : size.upper) = *read;
    return row;
}

Result<int> SizesModel::begin(SizingPlan& plan, int column, const QString& text) {
    if (text.isEmpty()) return entries();
    if (column != oversize) return refuse("first give the oversize that this is a limit of");
    SizeOnOffer size;
    const auto like = plan.sizes.empty() ? std::nullopt : std::optional(plan.sizes.back().oversize);
    const auto read = readField(text, like, block());
    if (!read) return tl::unexpected(read.error());
    if (const auto good = mustBeOversize(*read, block()); !good)
        return tl::unexpected(good.error());
    size.oversize = **read;
    plan.sizes.push_back(std::move(size));
    return sortSizes(plan, (*read)->value());
}

void SizesModel::erase(SizingPlan& plan, int row) const {
    plan.sizes.erase(plan.sizes.begin() + row);
}

} // namespace borewright
