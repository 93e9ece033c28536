// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/new_block.h"

namespace borewright {
namespace {

const Length inchesBelow = Length::whole(14, Unit::millimetre);

// Whether the text says its unit itself: then the unit offered makes no difference.
bool saysUnit(const std::string& text) {
    const auto one = readTyped(text, Unit::inch);
    const auto other = readTyped(text, Unit::millimetre);
    return one && other && one->unit() == other->unit();
}

bool saysInchFamily(const TypedLength& size) {
    return isInchFamily(size.unit());
}

Result<TypedLength> positive(Result<TypedLength> length) {
    if (length && length->value() <= Length()) return refuse("It must be more than zero.");
    return length;
}

Result<int> readBores(const std::string& text) {
    const auto number = readDecimal(text);
    if (!number) return tl::unexpected(number.error());
    if (number->decimals != 0) return refuse("A number of bores is whole.");
    if (number->digits < 1 || number->digits > mostBoresTyped)
        return refuse("A block has 1 to " + std::to_string(mostBoresTyped) + " bores.");
    return static_cast<int>(number->digits);
}

Result<std::optional<TypedLength>> optionalLength(const std::string& text, const TypedLength& size,
                                                  decltype(&readAllowance) read) {
    if (text.empty()) return std::optional<TypedLength>();
    return read(text, size).map([](const TypedLength& length) { return std::optional(length); });
}

Result<Limits> readLimits(const NewBlock& typed, const TypedLength& size) {
    Limits limits;
    const auto upper = optionalLength(typed.wornSize, size, &readBeside);
    if (!upper) return tl::unexpected(upper.error().within(new_block_field::wornSize));
    if (*upper && (*upper)->value() <= size.value())
        return refuse(new_block_field::wornSize, "It must be more than the standard size.");
    if (*upper && 10 * ((*upper)->value() - size.value()) > size.value())
        return refuse(new_block_field::wornSize, "It is more than a tenth over the standard size: "
                                                 "are point and unit right?");
    const auto round = optionalLength(typed.wornOutOfRound, size, &readAllowance);
    if (!round) return tl::unexpected(round.error().within(new_block_field::wornOutOfRound));
    const auto taper = optionalLength(typed.wornTaper, size, &readAllowance);
    if (!taper) return tl::unexpected(taper.error().within(new_block_field::wornTaper));
    limits.sizeUpper = *upper;
    limits.outOfRound = *round;
    limits.taper = *taper;
    return limits;
}

} // namespace

Result<TypedLength> readSize(const std::string& text) {
    const auto metric = readTyped(text, Unit::millimetre);
    if (!metric || saysUnit(text) || metric->value() >= inchesBelow) return positive(metric);
    return positive(readTyped(text, Unit::inch));
}

Result<TypedLength> readBeside(const std::string& text, const TypedLength& size) {
    return positive(readTyped(text, saysInchFamily(size) ? Unit::inch : Unit::millimetre));
}

Result<TypedLength> readAllowance(const std::string& text, const TypedLength& size) {
    const bool inch = saysInchFamily(size);
    const auto large = readTyped(text, inch ? Unit::inch : Unit::millimetre);
    const Length most = inch ? Length::whole(100, Unit::thou) : Length::whole(1, Unit::millimetre);
    if (!large || saysUnit(text) || large->value() < most) return positive(large);
    return positive(readTyped(text, inch ? Unit::thou : Unit::micrometre));
}

Result<Workbook> makeWorkbook(const NewBlock& typed) {
    const auto bores = readBores(typed.bores);
    if (!bores) return tl::unexpected(bores.error().within(new_block_field::bores));
    const auto size = readSize(typed.size);
    if (!size) return tl::unexpected(size.error().within(new_block_field::size));
    const auto depth = readBeside(typed.depth, *size);
    if (!depth) return tl::unexpected(depth.error().within(new_block_field::depth));
    const auto limits = readLimits(typed, *size);
    if (!limits) return tl::unexpected(limits.error());

    Workbook workbook = emptyWorkbook();
    workbook.job.engine = typed.engine;
    workbook.job.customer = typed.customer;
    workbook.job.measuredBy = typed.measuredBy;
    workbook.block.arrangement = typed.arrangement;
    Bore bore;
    bore.standardSize = *size;
    bore.depth = *depth;
    bore.openEnd = typed.openEnd;
    bore.combustionEnd = typed.combustionEnd;
    if (typed.blind) bore.roomAtClosedEnd = typedFrom(Length(), depth->unit());
    bore.levels = proposeLevels(bore);
    for (int number = 1; number <= *bores; ++number) {
        bore.number = number;
        workbook.block.bores.push_back(bore);
    }
    if (*limits != Limits()) {
        LimitSet worn;
        worn.id = "l1";
        worn.name = "worn";
        worn.limits = *limits;
        workbook.limitSets.push_back(worn);
    }
    return workbook;
}

} // namespace borewright
