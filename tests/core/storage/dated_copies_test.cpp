// SPDX-License-Identifier: GPL-3.0-or-later
// Which earlier states are kept, and that nothing else is ever touched.
#include "core/storage/dated_copies.h"
#include "core/storage/posix_file_system.h"
#include "tests/support/memory_file_system.h"

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include <gtest/gtest.h>

namespace borewright {
namespace {

namespace fs = std::filesystem;

Timestamp at(const std::string& iso) {
    const auto time = readIso(iso);
    EXPECT_TRUE(time) << iso;
    return time.value_or(Timestamp());
}

// The kept ones of these times, as written.
std::vector<std::string> kept(const std::vector<std::string>& times, int latest, int days,
                              int months) {
    std::vector<Timestamp> stamps;
    for (const std::string& time : times)
        stamps.push_back(at(time));
    const auto flags = worthKeeping(stamps, {"/copies", latest, days, months, {}});
    std::vector<std::string> result;
    for (std::size_t i = 0; i < times.size(); ++i)
        if (flags[i]) result.push_back(times[i]);
    return result;
}

using Times = std::vector<std::string>;

TEST(WorthKeeping, TheLatestStayWhateverTheirAge) {
    const Times all{"2026-03-14T09:00:00Z", "2026-03-14T10:00:00Z", "2020-01-01T08:00:00Z"};
    EXPECT_EQ(kept(all, 3, 0, 0), all);
    EXPECT_EQ(kept(all, 2, 0, 0), (Times{"2026-03-14T09:00:00Z", "2026-03-14T10:00:00Z"}));
    EXPECT_EQ(kept(all, 0, 0, 0), Times{});
    EXPECT_EQ(kept({}, 20, 30, 120), Times{});
}

TEST(WorthKeeping, ThenTheLastOfEachDayByTheClockOfTheBench) {
    const Times all{"2026-03-14T23:30:00+01:00", "2026-03-14T23:00:00+01:00",
                    "2026-03-13T23:59:00+01:00", // 22:59 UTC of the 13th
                    "2026-03-13T08:00:00+01:00", "2026-03-12T12:00:00+01:00",
                    "2026-03-12T11:00:00+01:00", "2026-03-11T11:00:00+01:00"};
    EXPECT_EQ(kept(all, 1, 2, 0), (Times{"2026-03-14T23:30:00+01:00", "2026-03-13T23:59:00+01:00",
                                         "2026-03-12T12:00:00+01:00"}))
        << "the 14th is there already and counts for none of the two days";
}

TEST(WorthKeeping, ThenTheLastOfEachMonth) {
    const Times all{"2026-03-14T09:00:00Z", "2026-03-02T09:00:00Z", "2026-02-28T09:00:00Z",
                    "2026-02-10T09:00:00Z", "2026-01-31T09:00:00Z", "2025-12-24T09:00:00Z"};
    EXPECT_EQ(kept(all, 1, 0, 2),
              (Times{"2026-03-14T09:00:00Z", "2026-02-28T09:00:00Z", "2026-01-31T09:00:00Z"}));
    EXPECT_EQ(kept(all, 1, 1, 3),
              (Times{"2026-03-14T09:00:00Z", "2026-03-02T09:00:00Z", "2026-02-28T09:00:00Z",
                     "2026-01-31T09:00:00Z", "2025-12-24T09:00:00Z"}));
}

// A copy an hour for two years, pruned at each, as at a bench: the promise holds at every moment.
TEST(WorthKeeping, PrunedHourByHourThePromiseHolds) {
    const CopyRules rules{"/copies", 20, 30, 120, {}};
    std::vector<Timestamp> copies;
    std::int64_t now = at("2024-01-01T00:00:00Z").secondsSinceEpoch;
    for (int hour = 0; hour < 2 * 365 * 24; ++hour, now += 3600) {
        copies.insert(copies.begin(), Timestamp{now, 0});
        const auto flags = worthKeeping(copies, rules);
        std::vector<Timestamp> left;
        for (std::size_t i = 0; i < copies.size(); ++i)
            if (flags[i]) left.push_back(copies[i]);
        copies = std::move(left);
    }
    const auto has = [&](const std::string& iso) {
        return std::ranges::find(copies, at(iso)) != copies.end();
    };
    EXPECT_EQ(toIso(copies.front()), "2025-12-30T23:00:00Z");
    EXPECT_TRUE(has("2025-12-30T04:00:00Z")) << "the twentieth before the last";
    EXPECT_TRUE(has("2025-12-29T23:00:00Z")) << "the end of the day before";
    EXPECT_TRUE(has("2025-12-01T23:00:00Z")) << "the end of a day four weeks ago";
    EXPECT_FALSE(has("2025-12-01T22:00:00Z"));
    for (const char* month : {"2025-11-30", "2025-02-28", "2024-02-29", "2024-01-31"})
        EXPECT_TRUE(has(std::string(month) + "T23:00:00Z")) << "the end of the month " << month;
    EXPECT_EQ(copies.size(), 20U + 30U + 22U);
}

class DatedCopies : public testing::Test {
protected:
    std::vector<std::string> names() const {
        auto found = files.names(copiesOf(rules, path));
        std::ranges::sort(found);
        return found;
    }
    Result<void> keep(const std::string& time, const std::string& bytes = "a workbook") {
        return keepCopy(files, rules, path, bytes, at(time));
    }

    MemoryFileSystem files;
    CopyRules rules{"/home/copies", 2, 0, 0, std::chrono::seconds(300)};
    const std::string path = "/shop/Saltmarsh V6.borebook";
};

TEST_F(DatedCopies, AreNamedByTheWorkbookAndTheTimeAndFoundAgain) {
    ASSERT_TRUE(keep("2026-03-14T09:26:53+01:00", "morning"));
    ASSERT_TRUE(keep("2026-03-14T16:00:00Z", "evening"));
    EXPECT_EQ(names(), (Times{"Saltmarsh V6 2026-03-14T092653+0100.borebook",
                              "Saltmarsh V6 2026-03-14T160000+0000.borebook"}));
    const auto copies = datedCopies(files, rules, path);
    ASSERT_TRUE(copies);
    ASSERT_EQ(copies->size(), 2U);
    EXPECT_EQ(toIso((*copies)[0].time), "2026-03-14T16:00:00Z") << "the newest comes first";
    EXPECT_EQ(toIso((*copies)[1].time), "2026-03-14T09:26:53+01:00");
    EXPECT_EQ(files.content((*copies)[1].path), "morning");
    EXPECT_TRUE(datedCopies(files, rules, "/other/Saltmarsh V6.borebook")->empty())
        << "another workbook of the same name has its own";
}

TEST_F(DatedCopies, WhatHasNoNameOfOursIsNeverRemoved) {
    ASSERT_TRUE(keep("2026-03-14T09:00:00Z"));
    const std::string folder = copiesOf(rules, path) + '/';
    const Times strange{"Saltmarsh V6.borebook",
                        "Saltmarsh V6 2026-03-01T090000+0000.borebook.old",
                        "Saltmarsh V6 2026-03-01T090000+0000",
                        "Saltmarsh V6 2026-13-01T090000+0000.borebook",
                        "Saltmarsh V6 2026-03-01T0900000000.borebook",
                        "Saltmarsh V6 of Tuesday, before boring.borebook",
                        "saltmarsh v6 2026-03-01T090000+0000.borebook"};
    for (const std::string& name : strange)
        files.put(folder + name, "mine");
    for (int minute = 10; minute < 40; ++minute)
        ASSERT_TRUE(keep("2026-03-14T09:" + std::to_string(minute) + ":00Z"));
    for (const std::string& name : strange)
        EXPECT_EQ(files.content(folder + name), "mine") << name;
    EXPECT_EQ(names().size(), strange.size() + 2) << "of ours the last two";
}

TEST_F(DatedCopies, LongAndForeignNamesHaveCopiesToo) {
    std::string stem;
    for (int i = 0; i < 80; ++i)
        stem += "ü";
    const std::string longPath = "/shop/x" + stem + ".borebook"; // cut within a character, at 120
    ASSERT_TRUE(keepCopy(files, rules, longPath, "long", at("2026-03-14T09:00:00Z")));
    const auto copies = datedCopies(files, rules, longPath);
    ASSERT_EQ(copies->size(), 1U);
    const std::string name = copies->front().path.substr(copies->front().path.rfind('/') + 1);
    EXPECT_EQ(name, "x" + stem.substr(0, 118) + " 2026-03-14T090000+0000.borebook");
}

TEST_F(DatedCopies, AreDueAfterAWhileAndAfterAWrongClock) {
    EXPECT_TRUE(copyIsDue({}, rules, at("2026-03-14T09:00:00Z")));
    const std::vector<DatedCopy> one{{"", at("2026-03-14T09:00:00Z")}};
    EXPECT_FALSE(copyIsDue(one, rules, at("2026-03-14T09:04:59Z")));
    EXPECT_TRUE(copyIsDue(one, rules, at("2026-03-14T09:05:00Z")));
    EXPECT_TRUE(copyIsDue(one, rules, at("2026-03-14T08:00:00Z"))) << "the clock was put back";
}

TEST_F(DatedCopies, AFaultAtAnyCallLosesNoCopyThatWasThere) {
    int refused = 0;
    for (const bool persistent : {false, true})
        for (const FileFault fault : {FileFault::diskFull, FileFault::noRight, FileFault::readOnly})
            for (std::size_t call = 0; call < 40; ++call) {
                MemoryFileSystem fresh;
                const auto keepIn = [&](const std::string& time, const std::string& bytes) {
                    return keepCopy(fresh, rules, path, bytes, at(time));
                };
                ASSERT_TRUE(keepIn("2026-03-14T09:00:00Z", "first"));
                ASSERT_TRUE(keepIn("2026-03-14T09:10:00Z", "second"));
                fresh.inject(MemoryFileSystem::Fault{call, persistent, fault, false});
                const auto done = keepIn("2026-03-14T09:20:00Z", "third");
                fresh.inject(std::nullopt);
                const auto copies = datedCopies(fresh, rules, path);
                std::vector<std::string> held;
                for (const DatedCopy& copy : *copies)
                    held.push_back(*fresh.content(copy.path));
                refused += done ? 0 : 1;
                EXPECT_TRUE(std::ranges::find(held, "second") != held.end()) << "call " << call;
                if (done) {
                    EXPECT_EQ(held.front(), "third") << "call " << call << ": falsely told";
                } else {
                    EXPECT_FALSE(done.error().message().empty());
                    EXPECT_TRUE(std::ranges::find(held, "first") != held.end()) << "call " << call;
                }
                EXPECT_EQ(fresh.openHandles(), 0U);
            }
    EXPECT_GT(refused, 60);
}

class MovedCopies : public testing::Test {
protected:
    MovedCopies() {
        std::string name = (fs::temp_directory_path() / "borewright-copies-XXXXXX").string();
        folder = ::mkdtemp(name.data());
        rules.folder = folder / "copies";
    }
    ~MovedCopies() override { fs::remove_all(folder); }
    std::string file(const std::string& name) const {
        std::ofstream(folder / name) << "a workbook";
        return (folder / name).string();
    }
    std::vector<std::string> found(const std::string& path, const std::string& id) {
        std::vector<std::string> contents;
        for (const DatedCopy& copy : copiesOfEarlierPlaces(files, rules, path, id))
            contents.push_back(files.read(copy.path, 1000).value_or("?"));
        return contents;
    }

    fs::path folder;
    PosixFileSystem files;
    CopyRules rules;
};

TEST_F(MovedCopies, AreFoundByTheWorkbooksIdWhereItsFileIsGone) {
    const std::string first = file("first.borebook");
    ASSERT_TRUE(keepCopy(files, rules, first, "monday", at("2026-03-09T09:00:00Z"), "id 1"));
    ASSERT_TRUE(keepCopy(files, rules, first, "tuesday", at("2026-03-10T09:00:00Z"), "id 1"));
    const std::string other = file("other.borebook");
    ASSERT_TRUE(keepCopy(files, rules, other, "another's", at("2026-03-10T09:00:00Z"), "id 2"));
    const std::string moved = (folder / "renamed.borebook").string();
    EXPECT_TRUE(found(moved, "id 1").empty())
        << "the first is still there: a file copied from it is another workbook by now";
    fs::rename(first, moved);
    EXPECT_EQ(found(moved, "id 1"), (Times{"tuesday", "monday"}));
    EXPECT_TRUE(found(moved, "").empty());
    EXPECT_TRUE(found(moved, "id 3").empty());
    ASSERT_TRUE(keepCopy(files, rules, moved, "wednesday", at("2026-03-11T09:00:00Z"), "id 1"));
    EXPECT_EQ(datedCopies(files, rules, moved)->size(), 1U);
    const std::string again = (folder / "again.borebook").string();
    fs::rename(moved, again);
    EXPECT_EQ(found(again, "id 1"), (Times{"wednesday", "tuesday", "monday"}));
}

TEST_F(MovedCopies, WhatSaysWhoseTheyAreIsNeverTrustedBeyondItsOwnFolder) {
    const std::string moved = (folder / "renamed.borebook").string();
    for (const char* hostile : {"", "[]",
                                "{\"format\": \"borewright copies\", \"path\": "
                                "\"../../etc\", \"id\": \"id 1\"}",
                                "{\"format\": \"another\", \"path\": \"/x\", \"id\": \"id 1\"}"}) {
        fs::create_directories(fs::path(rules.folder) / "hostile");
        std::ofstream(fs::path(rules.folder) / "hostile" / "whose copies these are.json")
            << hostile;
        EXPECT_TRUE(found(moved, "id 1").empty()) << hostile;
    }
}

} // namespace
} // namespace borewright
