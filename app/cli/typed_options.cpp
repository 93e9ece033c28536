// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/typed_options.h"

namespace borewright {
namespace {

auto within(const std::string& option) {
    return [&option](const Error& error) { return error.within(option); };
}

} // namespace

bool hasOwnUnit(const std::string& text) {
    const auto inch = readTyped(text, Unit::inch);
    const auto metric = readTyped(text, Unit::millimetre);
    return inch && metric && inch->unit() == metric->unit();
}

Result<TypedLength> lengthOption(const std::string& option, const std::string& text, Unit usual) {
    return readTyped(text, usual).map_error(within(option));
}

Result<std::optional<TypedLength>> maybeLength(const std::string& option, const std::string& text,
                                               Unit usual) {
    if (text.empty()) return std::optional<TypedLength>();
    return lengthOption(option, text, usual).map([](const TypedLength& length) {
        return std::optional(length);
    });
}

Result<double> numberOption(const std::string& option, const std::string& text) {
    return readDecimal(text).map(toDouble).map_error(within(option));
}

Result<Timestamp> timeOption(const std::string& option, const std::string& text, Timestamp now) {
    if (text.empty()) return now;
    return readIso(text).map_error(within(option));
}

} // namespace borewright
