// SPDX-License-Identifier: GPL-3.0-or-later
// borewright ledger: all jobs of the shop, and what a rebuilder asks of them.
#include "app/cli/commands.h"
#include "app/cli/common.h"
#include "app/jobs/ledger_answers.h"
#include "app/jobs/ledger_desk.h"
#include "app/ledger/ledger_rebuild.h"
#include "app/shell/desk_keyring.h"
#include "app/shell/system_outside.h"

#include <QCoreApplication>
#include <QDir>
#include <QEventLoop>
#include <QFileInfo>

#include <optional>
#include <ostream>

namespace borewright {
namespace {

using Asked = LedgerOptions::Asked;
using Sheet = Result<LedgerSheet>;

constexpr std::size_t largestSettings = 1024UL * 1024;

// The secret of this name, waited for: a keyring may ask its owner first.
Result<std::string> fromKeyring(const QString& name) {
    std::optional<Result<std::string>> answer;
    QEventLoop loop;
    DeskKeyring keyring;
    keyring.read(name, [&](const Result<std::string>& found) {
        answer = found;
        loop.quit();
    });
    if (!answer) loop.exec();
    return *answer;
}

// The ledger that the window has; nothing in these settings is changed here.
Result<LedgerAccess> usualAccess(FileSystem& files) {
    const auto bytes = files.read(ledgerSettingsPath().toStdString(), largestSettings);
    if (!bytes && bytes.error() != FileFault::notFound)
        return refuse(ledgerSettingsPath().toStdString(), std::string(inWords(bytes.error())));
    const auto settings = bytes ? readLedgerSettings(*bytes) : Result<LedgerSettings>();
    if (!settings)
        return tl::unexpected(settings.error().within(ledgerSettingsPath().toStdString()));
    LedgerAccess access{placeOf(*settings, usualLedger().file), {}};
    if (!access.place.server || settings->password == LedgerSettings::Password::passwordFile)
        return access;
    const std::string hint = "; put it into the server's password file ~/.pgpass for the command "
                             "line";
    if (settings->password == LedgerSettings::Password::asked)
        return refuse(inWords(access.place), "its password is typed in at each start" + hint);
    auto secret = fromKeyring(LedgerDesk::secretName(*access.place.server));
    if (!secret) return refuse(inWords(access.place), secret.error().message() + hint);
    access.password = std::move(*secret);
    return access;
}

Result<LedgerAccess> accessTo(const std::string& named, FileSystem& files) {
    if (named.empty()) return usualAccess(files);
    const auto place = ledgerPlaceFrom(named);
    if (!place) return tl::unexpected(place.error());
    return LedgerAccess{*place, {}};
}

// A job is told apart by its file, so its folder is named the same from wherever it is named.
std::string absolute(const std::string& path) {
    return QDir::cleanPath(QFileInfo(QString::fromStdString(path)).absoluteFilePath())
        .toStdString();
}

Result<Rebuilt> rebuild(LedgerStore& store, const LedgerOptions& options,
                        const CliOutside& outside) {
    std::vector<std::string> folders;
    for (const std::string& folder : options.folders)
        folders.push_back(absolute(folder));
    if (folders.empty()) {
        const auto known = store.folders();
        if (!known) return tl::unexpected(known.error());
        folders = *known;
    }
    if (folders.empty()) folders.push_back(workbookFolder().toStdString());
    return rebuildLedger(store, outside.files, folders);
}

int told(const Rebuilt& rebuilt, std::ostream& out) {
    for (const UnreadFile& unread : rebuilt.unread)
        out << "Not read: " << unread.file << ": " << unread.reason << "\n";
    out << "Took in " << rebuilt.taken << (rebuilt.taken == 1 ? " workbook" : " workbooks");
    if (rebuilt.gone > 0) out << "; took out " << rebuilt.gone << " whose file is gone";
    out << ".\n";
    return rebuilt.unread.empty() ? exitWithin : exitUndecided;
}

Result<int> answer(LedgerStore& store, const LedgerOptions& options, std::ostream& out) {
    std::optional<DisplayUnits> units;
    if (options.units == "inch") units = DisplayUnits::inch();
    if (options.units == "metric") units = DisplayUnits::metric();
    std::string words;
    for (const std::string& word : options.words)
        words += word + ' ';
    const bool needed = options.asked == Asked::needed;
    const bool rates = options.asked == Asked::rates;
    const bool gauge = options.asked == Asked::gauge;
    const Sheet sheet = needed  ? neededSheet(store, options.engine, units)
                        : rates ? ratesSheet(store, options.engine, units)
                        : gauge ? gaugeSheet(store, options.gauge, units)
                                : jobsSheet(store, {words}, units);
    const char* list = needed ? "bores" : rates ? "stones" : gauge ? "surveys" : "jobs";
    if (!sheet) return tl::unexpected(sheet.error());
    if (options.json)
        out << sheet->json(list);
    else if (options.csv)
        out << sheet->csv();
    else
        out << (sheet->empty() ? "Nothing found.\n" : alignedTable(sheet->table()));
    return sheet->empty() ? exitOutside : exitWithin;
}

} // namespace

Result<int> ledgerCommand(const LedgerOptions& options, const CliOutside& outside) {
    // The database's driver is found through an application object; none is there in a script.
    int count = 1;
    char name[] = "borewright";
    char* arguments[] = {name, nullptr};
    std::optional<QCoreApplication> own;
    if (QCoreApplication::instance() == nullptr) own.emplace(count, arguments);

    const auto access = accessTo(options.ledger, outside.files);
    if (!access) return tl::unexpected(access.error());
    const auto check =
        options.asked == Asked::rebuild ? LedgerStore::Check::whole : LedgerStore::Check::beginning;
    const auto store = LedgerStore::open(access->place, check, access->password);
    if (!store) return tl::unexpected(store.error());
    if (!(*store)->notice().empty()) outside.err << (*store)->notice() << "\n";
    if (options.asked == Asked::rebuild || (*store)->isNew()) {
        const auto rebuilt = rebuild(**store, options, outside);
        if (!rebuilt) return tl::unexpected(rebuilt.error());
        const bool asked = options.asked == Asked::rebuild;
        const int status = told(*rebuilt, asked ? outside.out : outside.err);
        if (asked) return status;
    }
    return answer(**store, options, outside.out);
}

} // namespace borewright
