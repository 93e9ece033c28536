// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fields/length_text.h"

#include "core/length/format.h"

#include <QCoreApplication>

namespace borewright {
namespace {

QString say(const char* text) {
    return QCoreApplication::translate("LengthText", text);
}

tl::unexpected<Error> refuseWith(const QString& sentence) {
    return refuse(sentence.toStdString());
}

Unit largeUnit(Unit unit) {
    return isInchFamily(unit) ? Unit::inch : Unit::millimetre;
}

} // namespace

QString shownLength(const std::optional<TypedLength>& length) {
    if (!length) return {};
    const auto sign = symbol(length->unit());
    return QString::fromStdString(length->text()) + ' ' +
           QString::fromUtf8(sign.data(), static_cast<qsizetype>(sign.size()));
}

Unit unitOfSize(const QString& text) {
    const auto value = readLength(text.toStdString(), Unit::millimetre);
    return value && *value >= Length::whole(20, Unit::millimetre) ? Unit::millimetre : Unit::inch;
}

std::optional<Unit> unitOfBlock(const Block& block) {
    for (const Bore& bore : block.bores) {
        if (bore.standardSize) return largeUnit(bore.standardSize->unit());
        if (bore.depth) return largeUnit(bore.depth->unit());
    }
    return std::nullopt;
}

Result<std::optional<TypedLength>>
readField(const QString& text, const std::optional<TypedLength>& before, const Block& block) {
    if (text.trimmed().isEmpty()) return std::optional<TypedLength>();
    const Unit unit = before ? before->unit() : unitOfBlock(block).value_or(unitOfSize(text));
    auto typed = readAmount(text.toStdString(), unit);
    if (!typed) return tl::unexpected(typed.error());
    return std::optional(std::move(*typed));
}

Result<void> mustBePositive(const std::optional<TypedLength>& length, const QString& what) {
    if (length && length->value() <= Length())
        return refuseWith(say("%1 must be more than zero.").arg(what));
    return {};
}

Result<void> mustBeSmall(const std::optional<TypedLength>& length) {
    if (!length) return {};
    if (length->value() < Length()) return refuseWith(say("An allowance cannot be below zero."));
    if (length->value() <= Length::whole(100, Unit::thou)) return {};
    const bool inch = isInchFamily(length->unit());
    return refuseWith(say("%1 is more than any bore is allowed; for a small unit write %2.")
                          .arg(shownLength(length), QString::fromStdString(length->text()) +
                                                        (inch ? say(" thou") : say(" µm"))));
}

Result<void> mustBeNear(const std::optional<TypedLength>& size,
                        const std::optional<TypedLength>& standard) {
    if (!size || !standard) return {};
    if (10 * (size->value() - standard->value()).magnitude() <= standard->value()) return {};
    return refuseWith(say("%1 is far from the standard size of %2.")
                          .arg(shownLength(size), shownLength(standard)));
}

Result<void> mustBeOversize(const std::optional<TypedLength>& oversize, const Block& block) {
    if (!oversize) return {};
    if (oversize->value() < Length())
        return refuse("an oversize is counted from the standard size up");
    const auto standard = block.bores.empty() ? std::nullopt : block.bores.front().standardSize;
    if (!standard || 10 * oversize->value() <= standard->value()) return {};
    const QString asked = say("%1 over a standard size of %2: is the unit right?")
                              .arg(shownLength(oversize), shownLength(standard));
    const bool inch = isInchFamily(oversize->unit());
    const auto small = readTyped(oversize->text(), inch ? Unit::thou : Unit::micrometre);
    if (!small || 10 * small->value() > standard->value()) return refuseWith(asked);
    return refuseWith(
        asked + ' ' +
        say("%1 is %2.")
            .arg(shownLength(*small),
                 QString::fromStdString(
                     inch ? format(small->value(), Unit::inch, 3, Sign::plain) + " in"
                          : format(small->value(), Unit::millimetre, 3, Sign::plain) + " mm")));
}

} // namespace borewright
