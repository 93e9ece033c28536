// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/sheet/printed_sheets.h"

#include "app/pictures/reading_words.h"
#include "app/sheet/check_code.h"
#include "core/storage/history_log.h"
#include "core/storage/workbook_file.h"

#include <QCryptographicHash>

namespace borewright {
namespace {

std::string hashOf(Workbook workbook) {
    workbook.history = {};
    const std::string bytes = writeWorkbook(workbook);
    const QByteArray view =
        QByteArray::fromRawData(bytes.data(), static_cast<qsizetype>(bytes.size()));
    return QCryptographicHash::hash(view, QCryptographicHash::Sha256).toHex().toStdString();
}

// Every way that the window can show lengths.
const std::vector<std::pair<SheetUnits, DisplayUnits>>& allWays() {
    static const std::vector<std::pair<SheetUnits, DisplayUnits>> ways{
        {SheetUnits::inch, DisplayUnits::inch()},
        {SheetUnits::metric, DisplayUnits::metric()},
        {SheetUnits::inchTenth, {Unit::inch, Unit::tenth}},
        {SheetUnits::inchHundredth, {Unit::inch, Unit::hundredth}},
        {SheetUnits::inchMicrometre, {Unit::inch, Unit::micrometre}},
        {SheetUnits::metricThou, {Unit::millimetre, Unit::thou}},
        {SheetUnits::metricTenth, {Unit::millimetre, Unit::tenth}},
        {SheetUnits::metricHundredth, {Unit::millimetre, Unit::hundredth}},
        {SheetUnits::inchMillimetre, {Unit::inch, Unit::millimetre}},
        {SheetUnits::metricMillimetre, {Unit::millimetre, Unit::millimetre}},
    };
    return ways;
}

DisplayUnits unitsFor(SheetUnits units) {
    for (const auto& [way, shown] : allWays())
        if (way == units) return shown;
    return DisplayUnits::inch();
}

SheetUnits wayOf(const DisplayUnits& units) {
    for (const auto& [way, shown] : allWays())
        if (shown == units) return way;
    return SheetUnits::inch;
}

// The codes of the sheet as it stands now, in each of these ways; the doubts are reckoned once.
QStringList codesNow(const Workbook& workbook) {
    DoubtMemory memory;
    QStringList codes;
    for (const auto& [way, units] : allWays())
        codes << sheetData(workbook, compute(workbook, units, memory, Reckoning::whole), {}, units,
                           {})
                     .code;
    return codes;
}

// The way back, proved by the hash of what was recorded.
Result<Workbook> proved(const Workbook& now, std::size_t entry) {
    auto then = atSheet(now, entry);
    if (then && hashOf(*then) != now.history.entries[entry].sheet->record)
        return refuse("something changed the file since without noting what stood there before");
    return then;
}

void tellEarlier(const Workbook& workbook, CodeAnswer& answer) {
    answer.units = unitsFor(workbook.history.entries[*answer.entry].sheet->units);
    auto then = proved(workbook, *answer.entry);
    answer.says = CodeAnswer::Says::earlier;
    if (!then) {
        answer.broken = then.error().message();
        return;
    }
    Workbook now = workbook;
    now.history = {};
    if (*then == now) answer.says = CodeAnswer::Says::asNow; // said by other words only
    answer.then = std::move(*then);
}

} // namespace

std::vector<std::size_t> printedSheets(const Workbook& workbook) {
    std::vector<std::size_t> places;
    for (std::size_t i = workbook.history.entries.size(); i > 0; --i)
        if (workbook.history.entries[i - 1].sheet) places.push_back(i - 1);
    return places;
}

QString printedInWords(const HistoryEntry& entry) {
    QStringList parts{qs(dateInWords(entry.time)), qs(clockTime(entry.time))};
    if (!entry.who.empty()) parts << qs(entry.who);
    return parts.join(QStringLiteral(", "));
}

PrintedSheet printedSheet(const Workbook& workbook, const SheetData& data,
                          const Preferences& preferences, const DisplayUnits& units) {
    PrintedSheet sheet;
    sheet.code = data.code.toStdString();
    sheet.units = wayOf(units);
    sheet.shop = (preferences.shopName + '\n' + preferences.shopAddress).trimmed().isEmpty()
                     ? std::string()
                     : (preferences.shopName + '\n' + preferences.shopAddress).toStdString();
    sheet.record = hashOf(workbook);
    return sheet;
}

Result<SheetOfThen> sheetOfThen(const Workbook& now, std::size_t entry,
                                const Preferences& preferences) {
    auto then = proved(now, entry);
    if (!then) return tl::unexpected(then.error());
    const HistoryEntry& noted = now.history.entries[entry];
    const QString shop = qs(noted.sheet->shop);
    Preferences ofThen = preferences;
    ofThen.shopName = shop.section('\n', 0, 0);
    ofThen.shopAddress = shop.section('\n', 1);
    SheetOfThen sheet{std::move(*then), unitsFor(noted.sheet->units), {}};
    sheet.data = sheetData(sheet.workbook, compute(sheet.workbook, sheet.units), ofThen,
                           sheet.units, noted.time);
    sheet.reworded = sheet.data.code.toStdString() != noted.sheet->code;
    return sheet;
}

Result<CodeAnswer> askForCode(const Workbook& workbook, const std::string& typed) {
    QStringList known;
    for (const std::size_t place : printedSheets(workbook))
        known << qs(workbook.history.entries[place].sheet->code);
    const QStringList now = codesNow(workbook);
    const auto code = readCheckCode(typed, known + now);
    if (!code) return tl::unexpected(code.error());
    CodeAnswer answer;
    answer.code = *code;
    for (const std::size_t place : printedSheets(workbook))
        if (!answer.entry && qs(workbook.history.entries[place].sheet->code) == *code)
            answer.entry = place;
    if (const qsizetype way = now.indexOf(*code); way >= 0) {
        answer.says = CodeAnswer::Says::asNow;
        answer.units = allWays()[static_cast<std::size_t>(way)].second;
    }
    if (answer.says == CodeAnswer::Says::none && answer.entry) tellEarlier(workbook, answer);
    return answer;
}

} // namespace borewright
