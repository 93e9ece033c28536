// SPDX-License-Identifier: GPL-3.0-or-later
// The ledger of a shop with 100 000 jobs, all invented: filling it, and searching in it as somebody
// types, on a file and on a server of its own.
#include "app/ledger/ledger_connection.h"
#include "app/ledger/ledger_totals.h"
#include "tests/app/ledger/made_jobs.h"
#include "tests/app/ledger/postgres_server.h"

#include <benchmark/benchmark.h>

#include <QCoreApplication>
#include <QFile>

#include <algorithm>
#include <chrono>
#include <vector>

namespace borewright::bench {
namespace {

constexpr int jobCount = 100'000;
constexpr int jobsAtOnce = 64; // as a rebuilding reads them
constexpr int rowsShown = 200; // what a window asks for at once
constexpr int searches = 100;

enum Kind : int { file, server };

// Belongs to main, since Qt takes its part of a database down with the application: a store that is
// left for the end of the process finds nothing to close itself in.
class Ledgers {
public:
    LedgerStore& of(int kind) {
        if (!m_stores[kind]) {
            auto opened = LedgerStore::open(placeOf(kind));
            if (!opened) throw std::runtime_error(opened.error().message());
            m_stores[kind] = std::move(*opened);
        }
        return *m_stores[kind];
    }

private:
    LedgerPlace placeOf(int kind) {
        if (kind == server) return test::PostgresServer::theOne().freshDatabase();
        return {m_folder.filePath("ledger.sqlite").toStdString(), {}};
    }

    QTemporaryDir m_folder;
    std::unique_ptr<LedgerStore> m_stores[2];
};

Ledgers* ledgers = nullptr;

LedgerStore& storeOf(const benchmark::State& state) {
    return ledgers->of(static_cast<int>(state.range(0)));
}

void fill(LedgerStore& store) {
    const auto done = store.connection().together([&]() -> Result<void> {
        std::vector<JobEntry> jobs;
        for (int i = 0; i < jobCount; i += jobsAtOnce) {
            jobs.clear();
            for (int j = i; j < std::min(i + jobsAtOnce, jobCount); ++j)
                jobs.push_back(test::manyJobs(j));
            if (const auto put = store.putAll(jobs); !put) return put;
        }
        return store.settle();
    });
    if (!done) throw std::runtime_error(done.error().message());
}

void fill100000Jobs(benchmark::State& state) {
    for (auto _ : state)
        fill(storeOf(state));
}
BENCHMARK(fill100000Jobs)->Arg(file)->Arg(server)->Iterations(1)->Unit(benchmark::kSecond);

// Takes the time of each call by itself: what somebody waits for is not the mean.
template<class Call>
void timed(benchmark::State& state, Call&& call) {
    std::vector<double> took;
    for (auto _ : state) {
        const auto begun = std::chrono::steady_clock::now();
        call();
        const std::chrono::duration<double, std::milli> one =
            std::chrono::steady_clock::now() - begun;
        took.push_back(one.count());
    }
    std::ranges::sort(took);
    const auto at = [&](double share) {
        return took[static_cast<std::size_t>(share * static_cast<double>(took.size() - 1))];
    };
    state.counters["median_ms"] = at(0.5);
    state.counters["p95_ms"] = at(0.95);
    state.counters["worst_ms"] = took.back();
}

// What is typed, and how many rows it gives.
void search(benchmark::State& state, const LedgerQuestion& question) {
    LedgerStore& store = storeOf(state);
    std::size_t rows = 0;
    timed(state, [&] { rows = store.find(question).value().size(); });
    state.counters["rows"] = static_cast<double>(rows);
}

void addSearches() {
    struct Typed {
        const char* name;
        LedgerQuestion question;
    };
    using Column = LedgerColumn;
    static const Typed all[]{
        {"nothing typed", {"", Column::opened, true, rowsShown}},
        {"one letter", {"s", Column::opened, true, rowsShown}},
        {"a word of many", {"saltmarsh", Column::opened, true, rowsShown}},
        {"two words", {"saltmarsh heron", Column::opened, true, rowsShown}},
        {"a serial number", {"0047111", Column::opened, true, rowsShown}},
        {"not there", {"zzzz", Column::opened, true, rowsShown}},
        {"by customer", {"salt", Column::customer, false, rowsShown}},
        {"by engine", {"salt", Column::engine, false, rowsShown}},
        {"by serial", {"salt", Column::serial, true, rowsShown}},
        {"by last survey", {"salt", Column::lastSurvey, true, rowsShown}},
        {"by size before", {"salt", Column::before, true, rowsShown}},
        {"by size after", {"salt", Column::after, true, rowsShown}},
        {"by oversize", {"salt", Column::oversize, true, rowsShown}},
        {"by verdict", {"salt", Column::verdict, false, rowsShown}},
        {"by file, nothing typed", {"", Column::file, false, rowsShown}},
        {"by customer, nothing typed", {"", Column::customer, false, rowsShown}},
    };
    for (const Typed& one : all)
        for (const int kind : {file, server})
            benchmark::RegisterBenchmark(one.name, search, one.question)
                ->Arg(kind)
                ->Iterations(searches)
                ->Unit(benchmark::kMillisecond);
}

void count(benchmark::State& state) {
    timed(state, [&] { benchmark::DoNotOptimize(storeOf(state).count("salt").value()); });
}
BENCHMARK(count)->Arg(file)->Arg(server)->Iterations(searches)->Unit(benchmark::kMillisecond);

void neededByAnEngine(benchmark::State& state) {
    for (auto _ : state)
        benchmark::DoNotOptimize(neededBy(storeOf(state), "saltmarsh 17").value().size());
}
BENCHMARK(neededByAnEngine)->Arg(file)->Arg(server)->Unit(benchmark::kMillisecond);

void ratesOfAllStones(benchmark::State& state) {
    for (auto _ : state)
        benchmark::DoNotOptimize(stoneRates(storeOf(state), {}).value().size());
}
BENCHMARK(ratesOfAllStones)->Arg(file)->Arg(server)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace borewright::bench

int main(int argc, char** argv) {
    QCoreApplication application(argc, argv);
    borewright::bench::Ledgers ledgers;
    borewright::bench::ledgers = &ledgers;
    borewright::bench::addSearches(); // behind the filling, which is registered before main
    benchmark::Initialize(&argc, argv);
    benchmark::RunSpecifiedBenchmarks();
    return 0;
}
