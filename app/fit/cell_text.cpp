// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/cell_text.h"

#include "app/pictures/reading_words.h"

#include <QCoreApplication>

namespace borewright::cell_text {
namespace {

Result<void> readWith(decltype(&readTyped) reader, std::optional<TypedLength>& length,
                      const QString& text, Unit unit) {
    if (text.isEmpty()) {
        length.reset();
        return {};
    }
    auto read = reader(text.toStdString(), unit);
    if (!read) return tl::unexpected(read.error());
    length = std::move(*read);
    return {};
}

} // namespace

QString length(const std::optional<TypedLength>& length, Unit unit) {
    if (!length) return {};
    if (length->unit() == unit) return qs(length->text());
    return qs(length->text()) + ' ' + unitSymbol(length->unit());
}

Result<void> readInto(std::optional<TypedLength>& length, const QString& text, Unit unit) {
    return readWith(&readTyped, length, text, unit);
}

Result<void> readAmountInto(std::optional<TypedLength>& length, const QString& text, Unit unit) {
    return readWith(&readAmount, length, text, unit);
}

QString temperature(const std::optional<TypedTemperature>& temperature) {
    if (!temperature) return {};
    return qs(temperature->text()) +
           (temperature->scale() == Scale::celsius ? QStringLiteral(" °C") : QStringLiteral(" °F"));
}

Result<void> readInto(std::optional<TypedTemperature>& temperature, const QString& text) {
    if (text.isEmpty()) {
        temperature.reset();
        return {};
    }
    auto read = readTemperature(text.toStdString(), Scale::celsius);
    if (!read) return tl::unexpected(read.error());
    temperature = std::move(*read);
    return {};
}

QString bore(const std::optional<int>& bore) {
    return bore ? QString::number(*bore) : QString();
}

Result<void> readInto(std::optional<int>& bore, const QString& text, const Block& block) {
    if (text.isEmpty()) {
        bore.reset();
        return {};
    }
    bool whole = false;
    const int number = text.toInt(&whole);
    if (!whole || findBore(block, number) == nullptr)
        return refuse(QCoreApplication::translate("CellText", "the block has no bore “%1”")
                          .arg(text)
                          .toStdString());
    bore = number;
    return {};
}

} // namespace borewright::cell_text
