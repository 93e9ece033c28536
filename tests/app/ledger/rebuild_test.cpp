// SPDX-License-Identifier: GPL-3.0-or-later
// The ledger made anew from real files: the workbooks are the truth.
#include "app/ledger/ledger_rebuild.h"

#include "core/storage/posix_file_system.h"
#include "core/storage/workbook_file.h"
#include "tests/support/blocks.h"

#include <gmock/gmock.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

namespace borewright {
namespace {

using namespace test;

class LedgerRebuild : public testing::Test {
protected:
    LedgerRebuild() {
        EXPECT_TRUE(QDir().mkpath(folder.filePath("jobs/2026")));
        store = std::move(*LedgerStore::open({folder.filePath("l.sqlite").toStdString(), {}}));
    }
    void write(const std::string& name, const std::string& customer) const {
        Workbook workbook = inchBlock(2);
        workbook.job.customer = customer;
        const std::string survey = addSurvey(workbook, SurveyKind::asFound, "as found");
        typeShape(workbook, survey, 1, [](double, const std::string&) { return 3; });
        writeBytes(name, writeWorkbook(workbook));
    }
    void writeBytes(const std::string& name, const std::string& bytes) const {
        QFile file(QString::fromStdString(jobs(name)));
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(bytes.data(), static_cast<qint64>(bytes.size()));
    }
    [[nodiscard]] std::string jobs(const std::string& name = {}) const {
        const std::string base = folder.filePath("jobs").toStdString();
        return name.empty() ? base : base + "/" + name;
    }
    Rebuilt rebuild(const std::vector<std::string>& places, const RebuildProgress& progress = {}) {
        const auto rebuilt = rebuildLedger(*store, files, places, progress);
        EXPECT_TRUE(rebuilt.has_value()) << rebuilt.error().message();
        return rebuilt.value_or(Rebuilt{});
    }
    std::vector<std::string> customers() {
        std::vector<std::string> names;
        const auto rows = store->find({"", LedgerColumn::customer, false, -1});
        EXPECT_TRUE(rows.has_value());
        for (const LedgerRow& row : *rows)
            names.push_back(row.customer);
        return names;
    }

    QTemporaryDir folder;
    PosixFileSystem files;
    std::unique_ptr<LedgerStore> store;
};

TEST_F(LedgerRebuild, TakesEveryWorkbookBelowItsFolders) {
    write("a.borebook", "Ash");
    write("2026/b.borebook", "Birch");
    writeBytes("notes.txt", "no workbook");
    const Rebuilt rebuilt = rebuild({jobs()});
    EXPECT_EQ(rebuilt.taken, 2);
    EXPECT_TRUE(rebuilt.unread.empty());
    EXPECT_THAT(customers(), testing::ElementsAre("Ash", "Birch"));
    const auto job = store->job(jobs("a.borebook")).value();
    ASSERT_TRUE(job.has_value());
    EXPECT_EQ(job->bores[0].before->largest, in("3.503"));
    EXPECT_THAT(store->folders().value(), testing::ElementsAre(jobs()));
}

TEST_F(LedgerRebuild, ListsWhatItCannotReadAndTakesTheRest) {
    write("a.borebook", "Ash");
    writeBytes("broken.borebook", "{\"format\": \"borewright");
    writeBytes("empty.borebook", "");
    const Rebuilt rebuilt = rebuild({jobs(), folder.filePath("nowhere").toStdString()});
    EXPECT_EQ(rebuilt.taken, 1);
    ASSERT_EQ(rebuilt.unread.size(), 3U);
    for (const UnreadFile& unread : rebuilt.unread)
        EXPECT_FALSE(unread.reason.empty()) << unread.file;
    EXPECT_THAT(customers(), testing::ElementsAre("Ash"));
}

TEST_F(LedgerRebuild, TakesOutWhatIsGoneAndKeepsWhatLiesElsewhere) {
    write("a.borebook", "Ash");
    write("2026/b.borebook", "Birch");
    rebuild({jobs()});
    QFile::remove(QString::fromStdString(jobs("a.borebook")));
    EXPECT_EQ(rebuild({jobs("2026")}).gone, 0) << "a lies elsewhere";
    EXPECT_THAT(customers(), testing::ElementsAre("Ash", "Birch"));
    EXPECT_EQ(rebuild({jobs() + "/"}).gone, 1);
    EXPECT_THAT(customers(), testing::ElementsAre("Birch"));
}

TEST_F(LedgerRebuild, AFileThatCannotBeReadTodayKeepsItsJob) {
    write("a.borebook", "Ash");
    rebuild({jobs()});
    writeBytes("a.borebook", "torn");
    const Rebuilt rebuilt = rebuild({jobs()});
    EXPECT_EQ(rebuilt.unread.size(), 1U);
    EXPECT_EQ(rebuilt.gone, 0);
    EXPECT_THAT(customers(), testing::ElementsAre("Ash"));
}

TEST_F(LedgerRebuild, AFolderThatIsNotMountedTodayKeepsItsJobs) {
    write("2026/b.borebook", "Birch");
    rebuild({jobs("2026")});
    ASSERT_TRUE(QDir(QString::fromStdString(jobs("2026"))).removeRecursively());
    const Rebuilt rebuilt = rebuild({jobs("2026")});
    EXPECT_EQ(rebuilt.unread.size(), 1U);
    EXPECT_THAT(customers(), testing::ElementsAre("Birch"));
}

TEST_F(LedgerRebuild, GivenUpItLeavesTheLedgerAsItWas) {
    write("a.borebook", "Ash");
    rebuild({jobs()});
    for (int i = 0; i < 150; ++i)
        write("2026/" + std::to_string(i) + ".borebook", "Many");
    std::vector<std::int64_t> told;
    const Rebuilt rebuilt = rebuild({jobs()}, [&](std::int64_t done, std::int64_t all) {
        EXPECT_EQ(all, 151);
        told.push_back(done);
        return done < 100;
    });
    EXPECT_TRUE(rebuilt.cancelled);
    EXPECT_THAT(told, testing::ElementsAre(0, 64, 128));
    EXPECT_THAT(customers(), testing::ElementsAre("Ash"));
    EXPECT_EQ(rebuild({jobs()}).taken, 151);
}

TEST_F(LedgerRebuild, AFolderLinkedIntoItselfIsLookedThroughOnce) {
    write("a.borebook", "Ash");
    ASSERT_TRUE(QFile::link(QString::fromStdString(jobs()), folder.filePath("jobs/2026/again")));
    ASSERT_TRUE(QFile::link("/nowhere/at/all", folder.filePath("jobs/lost.borebook")));
    const Rebuilt rebuilt = rebuild({jobs()});
    EXPECT_EQ(rebuilt.taken, 1);
    EXPECT_TRUE(rebuilt.unread.empty());
}

} // namespace
} // namespace borewright
