// SPDX-License-Identifier: GPL-3.0-or-later
// A ledger of a test's own, on a file or on a real server.
#pragma once

#include "app/ledger/ledger_store.h"
#include "tests/app/ledger/made_jobs.h"
#include "tests/app/ledger/postgres_server.h"

#include <QTemporaryDir>

#include <gtest/gtest.h>

namespace borewright::test {

enum class Kind { file, server };

class Ledger : public testing::TestWithParam<Kind> {
protected:
    void SetUp() override {
        if (GetParam() == Kind::file) {
            place = {m_folder.filePath("ledger.sqlite").toStdString(), {}};
        } else {
            place = PostgresServer::theOne().freshDatabase();
            ASSERT_EQ(PostgresServer::theOne().problem(), "");
        }
        auto opened = LedgerStore::open(place);
        ASSERT_TRUE(opened.has_value()) << opened.error().message();
        store = std::move(*opened);
    }
    void put(const JobEntry& job) const {
        const auto done = store->put(job);
        ASSERT_TRUE(done.has_value()) << done.error().message();
    }
    // The files found, in order, by their number.
    [[nodiscard]] std::vector<std::string> found(const LedgerQuestion& question) const {
        const auto rows = store->find(question);
        if (!rows) return {rows.error().message()};
        std::vector<std::string> files;
        for (const LedgerRow& row : *rows)
            files.push_back(row.file.substr(row.file.rfind('/') + 6, 1));
        return files;
    }
    [[nodiscard]] std::vector<std::string> holding(const std::string& text) const {
        return found({text, LedgerColumn::file, false, -1});
    }

    LedgerPlace place;
    std::unique_ptr<LedgerStore> store;

private:
    QTemporaryDir m_folder;
};

inline std::string nameOfKind(const testing::TestParamInfo<Kind>& one) {
    return one.param == Kind::file ? "AFile" : "AServer";
}

} // namespace borewright::test
