// SPDX-License-Identifier: GPL-3.0-or-later
// The ledger: all jobs of the shop in one list, made from the workbooks and made anew from them at
// any time; they are the truth. One row a job, told apart by its file.
//
// A store belongs to the thread that opened it; another thread opens its own on the same place.
// Nothing of it may be called from the window's thread where the place is a server.
#pragma once

#include "app/ledger/ledger_place.h"
#include "core/results/job_entry.h"

#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace borewright {

class LedgerConnection;

// A job as the list shows it.
struct LedgerRow {
    std::int64_t id = 0; // in this ledger
    std::string file;
    std::string customer;
    std::string engine;
    std::string serial;
    std::optional<Timestamp> opened;
    std::optional<Timestamp> lastSurvey;
    DisplayUnits units;
    bool invented = false;
    int bores = 0;
    std::optional<SizeSpan> before;
    std::optional<SizeSpan> after;
    std::optional<Length> oversize;
    Verdict verdict = Verdict::notMeasured;
};

enum class LedgerColumn {
    opened,
    lastSurvey,
    customer,
    engine,
    serial,
    bores,
    before,
    after,
    oversize,
    verdict,
    file,
};

struct LedgerQuestion {
    std::string text; // each word must be in customer, engine, serial or file; empty = all
    LedgerColumn sort = LedgerColumn::opened;
    bool descending = true; // what has no value stands last either way
    std::int64_t most = -1; // rows at most; < 0 = all
    std::int64_t skip = 0;  // of the first rows in that order; counts only with `most`
};

class LedgerStore {
public:
    // Opens the ledger, and makes it where there is none. A file that is damaged or was made by a
    // newer version is set aside under another name, an empty one begun, and notice() says so; a
    // server's is refused. Tables of an older version are made anew, to be filled from the
    // workbooks. Refuses a file that is no ledger.
    // With Check::whole a file is looked through first, which takes a second where it is large.
    enum class Check { beginning, whole };
    static Result<std::unique_ptr<LedgerStore>> open(const LedgerPlace& place,
                                                     Check check = Check::beginning,
                                                     const std::string& password = {});

    ~LedgerStore();
    LedgerStore(const LedgerStore&) = delete;
    LedgerStore& operator=(const LedgerStore&) = delete;

    // What was set aside and why; empty where nothing was.
    [[nodiscard]] const std::string& notice() const { return m_notice; }
    // It waits to be filled from the workbooks: nobody has done so since it was made.
    [[nodiscard]] bool isNew() const { return m_new; }
    // Its tables were made as it was opened.
    [[nodiscard]] bool wasMade() const { return m_made; }

    // Enters a job, in place of what stood there of its file. Of a rebuilding, its round.
    Result<void> put(const JobEntry& job, std::int64_t round = 0);
    // The same of many, in few statements; all of it becomes true together, or nothing. Of jobs
    // with the same file the last counts.
    Result<void> putAll(std::span<const JobEntry> jobs, std::int64_t round = 0);
    // Takes the file's job out; nothing happens where there is none.
    Result<void> forget(const std::string& file);

    Result<std::vector<LedgerRow>> find(const LedgerQuestion& question);
    // How many jobs hold these words.
    Result<std::int64_t> count(const std::string& text = {});
    // All that was entered of a file; nothing where it is not in the ledger.
    Result<std::optional<JobEntry>> job(const std::string& file);

    // The folders and files that the ledger is made from, as last given; giving them says that it
    // was filled from there.
    Result<std::vector<std::string>> folders();
    Result<void> setFolders(const std::vector<std::string>& folders);
    // After many jobs were entered: lets the database look at what it holds, so that it searches
    // by the shortest way.
    Result<void> settle();

    [[nodiscard]] LedgerConnection& connection() { return *m_connection; }

private:
    explicit LedgerStore(std::unique_ptr<LedgerConnection> connection);

    std::unique_ptr<LedgerConnection> m_connection;
    std::string m_notice;
    bool m_new = false;
    bool m_made = false;
};

} // namespace borewright
