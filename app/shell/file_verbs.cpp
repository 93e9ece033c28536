// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/file_verbs.h"

#include "app/document/kept_over.h"
#include "app/sheet/printed_sheets.h"
#include "app/sheet/sheet_pdf.h"
#include "app/shell/differences_view.h"
#include "app/shell/earlier_copies.h"
#include "app/shell/history_view.h"
#include "app/shell/import_readings.h"
#include "core/results/results_file.h"
#include "core/storage/readings_csv.h"
#include "core/storage/saver.h"
#include "core/storage/workbook_file.h"

#include <QDir>
#include <QFileInfo>

namespace borewright {
namespace {

QString native(const QString& path) {
    return QDir::toNativeSeparators(path);
}

QString withEnding(const QString& path, const QString& ending) {
    return QFileInfo(path).suffix().isEmpty() ? path + ending : path;
}

} // namespace

FileVerbs::FileVerbs(Workshop& workshop, Banner& banner, QWidget* parent)
    : QObject(parent)
    , m_workshop(workshop)
    , m_banner(banner)
    , m_window(parent) {}

void FileVerbs::open() {
    const QString path = m_workshop.dialogs().fileToOpen(m_window, tr("Open a workbook"),
                                                         tr("Workbooks (*.borebook)"));
    if (!path.isEmpty()) openPath(path);
}

void FileVerbs::commitTyped() {
    if (QWidget* focus = m_window->focusWidget(); focus != nullptr) focus->clearFocus();
}

bool FileVerbs::openPath(const QString& path) {
    commitTyped(); // or else it would go into the workbook that is opened
    // A workbook that is not on the disk stays open until it is, or until he says otherwise.
    Autosaver& autosaver = m_workshop.autosaver();
    if (m_workshop.isOpen() && !autosaver.flushAwake(2000)) {
        m_banner.say(tr("%1 %2 was not opened, so that nothing is lost.")
                         .arg(autosaver.sentence(), QFileInfo(path).fileName()));
        return false;
    }
    const auto opened = m_workshop.open(path);
    if (opened) {
        m_banner.clear();
        if (!m_workshop.lastTime().isEmpty()) m_banner.say(m_workshop.lastTime());
        sayLookOnly();
        return true;
    }
    m_banner.say(tr("%1 was not opened: %2. The file is left as it was.")
                     .arg(native(path), QString::fromStdString(opened.error().message())));
    return false;
}

void FileVerbs::sayLookOnly() {
    if (m_workshop.document().lookOnly().isEmpty()) return;
    const QString name = QFileInfo(m_workshop.autosaver().path()).fileName();
    const BannerAction elsewhere{tr("Save as …"), [this] { saveAs(); }};
    const auto& other = m_workshop.otherBench();
    if (!other)
        return m_banner.say(tr("%1 is an earlier copy. It is open to look at; nothing in it can be "
                               "changed.")
                                .arg(name),
                            {elsewhere});
    const QString since = tr("%1, %2").arg(QString::fromStdString(dateInWords(other->since)),
                                           QString::fromStdString(clockTime(other->since)));
    QString who = QString::fromStdString(inWords(*other));
    who[0] = who[0].toUpper(); // "somebody at bench-2" begins the sentence
    m_banner.say(tr("%1 has had %2 open since %3. It is open here to look at; nothing in it can be "
                    "changed.")
                     .arg(who, name, since),
                 {{tr("Open to change anyway"), [this] { changeAnyway(); }}, elsewhere});
}

void FileVerbs::changeAnyway() {
    const auto done = m_workshop.changeAnyway();
    if (done) return m_banner.clear();
    m_banner.say(
        tr("It stays open to look at: %1.").arg(QString::fromStdString(done.error().message())));
}

void FileVerbs::showEarlierCopies() {
    auto* copies = new EarlierCopies(m_workshop, m_window);
    connect(copies, &EarlierCopies::besideAsked, this, &FileVerbs::besideAsked);
    copies->show();
}

// One is enough: it follows the window.
void FileVerbs::showHistory() {
    commitTyped();
    auto* history = m_window->findChild<HistoryView*>();
    if (history == nullptr) history = new HistoryView(m_workshop, m_window);
    history->show();
    history->raise();
    history->activateWindow();
}

void FileVerbs::showUnderneath() {
    const QString path = m_workshop.autosaver().path();
    const auto theirs = loadWorkbook(m_workshop.files(), path.toStdString());
    const BannerAction mine{tr("Keep mine"), [this] { keepMine(); }};
    const BannerAction elsewhere{tr("Save mine elsewhere …"), [this] { saveAs(); }};
    if (!theirs)
        return m_banner.say(
            tr("%1 was changed by somebody else and cannot be read any more: %2.")
                .arg(native(path), QString::fromStdString(theirs.error().message())),
            {mine, elsewhere});
    const auto list = differences(*theirs, m_workshop.document().workbook());
    auto* view = new DifferencesView(
        tr("Somebody else changed %1. Nothing there has been overwritten yet.")
            .arg(QFileInfo(path).fileName()),
        list, {tr("In the file"), tr("Here")},
        {mine, {tr("Take theirs"), [this] { takeTheirs(); }}, elsewhere}, m_window);
    view->show();
}

// What the other noted stays in the history. It is read anew: he may have gone on since.
void FileVerbs::keepMine() {
    commitTyped();
    Autosaver& autosaver = m_workshop.autosaver();
    const auto theirs = loadWorkbook(m_workshop.files(), autosaver.path().toStdString());
    if (theirs) noteKeptOver(m_workshop.document(), *theirs);
    autosaver.overwrite();
}

// What was done here must lie somewhere before it leaves the window.
void FileVerbs::takeTheirs() {
    commitTyped();
    Autosaver& autosaver = m_workshop.autosaver();
    (void)autosaver.flush(2000);
    const QString rescued = autosaver.rescuePath();
    const auto held = loadWorkbook(m_workshop.files(), rescued.toStdString());
    if (!held || *held != m_workshop.document().workbook())
        return m_banner.say(tr("Yours is in no other file yet, so theirs was not opened."),
                            {{tr("Save mine elsewhere …"), [this] { saveAs(); }}});
    const auto opened = m_workshop.open(autosaver.path());
    m_banner.say(opened ? tr("Theirs is open now. Yours is kept in %1.").arg(native(rescued))
                        : tr("Theirs was not opened: %1.")
                              .arg(QString::fromStdString(opened.error().message())));
}

void FileVerbs::saveAs() {
    commitTyped();
    const QString path = m_workshop.dialogs().fileToSave(m_window, tr("Save the workbook as"),
                                                         m_workshop.autosaver().path(),
                                                         tr("Workbooks (*.borebook)"));
    if (!path.isEmpty()) m_workshop.saveAs(withEnding(path, QStringLiteral(".borebook")));
}

QString FileVerbs::besideWorkbook(const QString& ending) const {
    const QFileInfo file(m_workshop.autosaver().path());
    return file.path() + '/' + file.completeBaseName() + ending;
}

void FileVerbs::sayWritten(const QString& path, const Result<void>& done) {
    m_banner.say(done ? tr("Written: %1").arg(native(path))
                      : tr("%1 was not written: %2.")
                            .arg(native(path), QString::fromStdString(done.error().message())));
}

void FileVerbs::write(const QString& path, const std::string& bytes) {
    const auto saved = save(m_workshop.files(), path.toStdString(), bytes);
    sayWritten(path, saved ? Result<void>() : Result<void>(tl::unexpected(saved.error())));
}

void FileVerbs::exportResults() {
    const QString chosen = m_workshop.dialogs().fileToSave(
        m_window, tr("Export the results"), besideWorkbook(QStringLiteral(", results.csv")),
        tr("Table (*.csv);;JSON (*.json)"));
    if (chosen.isEmpty()) return;
    const QString path = withEnding(chosen, QStringLiteral(".csv"));
    Document& document = m_workshop.document();
    const bool json = path.endsWith(QStringLiteral(".json"), Qt::CaseInsensitive);
    write(path, json ? resultsJson(document.workbook(), document.results(), {})
                     : resultsCsv(document.workbook(), document.results(), {}, document.units()));
}

void FileVerbs::exportReadings() {
    const Document& document = m_workshop.document();
    const Survey* survey = findSurvey(document.workbook(), m_workshop.selection().survey());
    if (survey == nullptr) return m_banner.say(tr("There is no survey yet, so no readings."));
    const QString path = m_workshop.dialogs().fileToSave(
        m_window, tr("Export the readings of this survey"),
        besideWorkbook(QStringLiteral(", readings.csv")), tr("Table (*.csv)"));
    if (!path.isEmpty())
        write(withEnding(path, QStringLiteral(".csv")),
              writeReadingsCsv(document.workbook(), *survey));
}

void FileVerbs::savePdf() {
    const QString chosen =
        m_workshop.dialogs().fileToSave(m_window, tr("Save the sheet as PDF"),
                                        besideWorkbook(QStringLiteral(".pdf")), tr("PDF (*.pdf)"));
    if (chosen.isEmpty()) return;
    const QString path = withEnding(chosen, QStringLiteral(".pdf"));
    Document& document = m_workshop.document();
    const Preferences& preferences = m_workshop.preferences().value();
    // On paper stand whole doubts.
    const SheetData data = sheetData(document.workbook(), document.settledResults(), preferences,
                                     document.units(), document.now());
    const auto done = exportSheetPdf(m_workshop.files(), path, data, preferences.paper);
    if (done)
        document.noteSheet(printedSheet(document.workbook(), data, preferences, document.units()));
    sayWritten(path, done);
}

void FileVerbs::importReadings() {
    const QString path = m_workshop.dialogs().fileToOpen(
        m_window, tr("Import readings into this survey"), tr("Tables (*.csv *.txt)"));
    if (!path.isEmpty()) importReadingsFrom(path);
}

void FileVerbs::importReadingsFrom(const QString& path) {
    Document& document = m_workshop.document();
    const QString name = QFileInfo(path).fileName();
    const auto import = readImport(m_workshop.files(), path.toStdString(), document.workbook(),
                                   m_workshop.selection().survey(), document.now());
    if (!import)
        return m_banner.say(tr("Nothing was taken from %1: %2.")
                                .arg(name, QString::fromStdString(import.error().message())));
    if (import->errors.empty()) return take(import->readings, name);
    const QString list = errorList(*import);
    if (import->readings.empty())
        return m_banner.say(tr("Nothing was taken from %1.").arg(name) + '\n' + list);
    m_banner.say(
        tr("Nothing was taken from %1, since some rows are wrong.").arg(name) + '\n' + list,
        {{tr("Take the %n good row(s)", nullptr, static_cast<int>(import->readings.size())),
          [this, readings = import->readings, name] { take(readings, name); }}});
}

void FileVerbs::take(const std::vector<Reading>& readings, const QString& name) {
    Document& document = m_workshop.document();
    const auto edit = insertAll(document.workbook(), m_workshop.selection().survey(), readings);
    const auto done = document.edit(edit, tr("readings from %1").arg(name));
    m_banner.say(done ? tr("Took %1 readings from %2.").arg(readings.size()).arg(name)
                      : QString::fromStdString(done.error().message()));
}

} // namespace borewright
