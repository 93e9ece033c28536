// SPDX-License-Identifier: GPL-3.0-or-later
// The program on a disk of 2 MiB that is filled but for 0, 1, 2 … 199 pages.
#include "app/sheet/sheet_pdf.h"
#include "core/storage/readings_csv.h"
#include "core/storage/saver.h"
#include "core/storage/workbook_file.h"
#include "tests/app/bad_disk.h"
#include "tests/app/typist.h"

#include <QDir>
#include <QFile>

#include <cstdio>
#include <filesystem>

namespace borewright::test {
namespace {

constexpr int levels = 200;
constexpr std::size_t page = 4096; // bytes that such a disk hands out at a time

struct Tally {
    int told = 0, saved = 0, falselySaved = 0, damaged = 0, left = 0;
};

std::string read(FileSystem& files, const QString& path) {
    return files.read(path.toStdString(), largestWorkbookFile).value_or("");
}

// Leaves so many pages free.
bool fillBut(const QString& folder, std::size_t pages) {
    QFile::remove(folder + "/fill");
    const auto space = std::filesystem::space(folder.toStdString());
    QFile fill(folder + "/fill");
    if (!fill.open(QIODevice::WriteOnly | QIODevice::Unbuffered)) return false;
    const std::size_t room = pages * page;
    if (space.available <= room) return true;
    const QByteArray bytes(static_cast<int>(space.available - room), 'f');
    return fill.write(bytes) == bytes.size();
}

// One kind of output written over an earlier one at every level.
class Output {
public:
    Output(FileSystem& files, QString path)
        : m_files(files)
        , m_path(std::move(path)) {}
    template<class Write>
    void tryIt(const QString& folder, std::size_t pages, const std::string& wanted, Write write) {
        if (!save(m_files, m_path.toStdString(), "earlier") || !fillBut(folder, pages))
            return (void)++tally.damaged;
        const bool saved = write(m_path);
        const std::string found = read(m_files, m_path);
        const bool isNew =
            wanted.empty() ? found.size() > 1000 && found != "earlier" : found == wanted;
        ++(saved ? tally.saved : tally.told);
        if (saved && !isNew) ++tally.falselySaved;
        if (!saved && found != "earlier" && !isNew) ++tally.damaged;
        for (const QString& name : QDir(folder).entryList(QDir::Files | QDir::Hidden))
            if (name.startsWith(".borewright")) ++tally.left;
        QFile::remove(folder + "/fill");
        QFile::remove(m_path);
    }
    void print(const char* of) const {
        std::printf("%s saved %d told %d false %d damaged %d left %d\n", of, tally.saved,
                    tally.told, tally.falselySaved, tally.damaged, tally.left);
    }
    Tally tally;

private:
    FileSystem& m_files;
    QString m_path;
};

// A job with every reading repeated, so large that most levels are too full for it.
Workbook repeated(Workbook workbook) {
    std::vector<Reading>& readings = workbook.surveys.front().readings;
    const std::vector<Reading> once = readings;
    for (int times = 1; times < 10; ++times)
        readings.insert(readings.end(), once.begin(), once.end());
    return workbook;
}

// As the autosaver writes: the workbook at its place, or its copy where that place is gone.
bool saveWorkbook(FileSystem& files, const Workbook& workbook, const QString& path,
                  const QString& rescueFolder, bool rescue) {
    SaveJob job;
    job.workbook = workbook;
    job.revision = 1;
    job.overwrite = true;
    job.path = rescue ? "/nowhere/job.borebook" : path.toStdString();
    job.rescueFolder = rescueFolder.toStdString();
    if (rescue) job.rescuePath = path.toStdString();
    const SaveAnswer answer = runSave(files, job);
    return rescue ? answer.rescuedRevision == 1 : answer.mark.has_value();
}

} // namespace

int workOnSmallDisk(const QString& folder) {
    const QString home = folder + "-home";
    QDir().mkpath(home);
    Typist typist(home, home + "/rescue");
    while (typist.typed() < 384 && typist.typeNext()) {
    }
    const Workbook workbook = repeated(typist.workshop.document().workbook());
    const std::string bytes = writeWorkbook(workbook);
    const std::string csv = writeReadingsCsv(workbook, workbook.surveys.front(), ',');
    const SheetData sheet = sheetData(typist.workshop.document().workbook(),
                                      typist.workshop.document().settledResults(), {},
                                      typist.workshop.document().units(), {1'774'000'000, 60});
    const auto pdf = renderSheetPdf(sheet, Preferences::Paper::a4);
    PosixFileSystem& files = typist.files;
    Output job(files, folder + "/job.borebook"), copy(files, folder + "/rescue-job.borebook"),
        paper(files, folder + "/job.pdf"), table(files, folder + "/job.csv");
    for (int level = 0; level < levels; ++level) {
        const auto pages = static_cast<std::size_t>(level);
        job.tryIt(folder, pages, bytes, [&](const QString& path) {
            return saveWorkbook(files, workbook, path, home + "/rescue", false);
        });
        copy.tryIt(folder, pages, bytes, [&](const QString& path) {
            return saveWorkbook(files, workbook, path, folder, true);
        });
        paper.tryIt(folder, pages, {}, [&](const QString& path) {
            return exportSheetPdf(files, path, sheet, Preferences::Paper::a4).has_value();
        });
        table.tryIt(folder, pages, csv, [&](const QString& path) {
            return save(files, path.toStdString(), csv).has_value();
        });
    }
    std::printf("levels %d bytes %zu pdf %d csv %zu\n", levels, bytes.size(),
                static_cast<int>(pdf ? pdf->size() : 0), csv.size());
    job.print("workbook");
    copy.print("rescue");
    paper.print("pdf");
    table.print("csv");
    return 0;
}

} // namespace borewright::test
