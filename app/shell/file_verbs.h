// SPDX-License-Identifier: GPL-3.0-or-later
// What the File menu does. A refusal is a sentence in the banner; nothing stops the work.
#pragma once

#include "app/shell/banner.h"
#include "app/shell/workshop.h"

#include <QObject>

namespace borewright {

class FileVerbs : public QObject {
    Q_OBJECT
public:
    // `parent` is what dialogs stand before; `banner` is where refusals are said.
    FileVerbs(Workshop& workshop, Banner& banner, QWidget* parent);

    void open();
    // True where it is open now.
    bool openPath(const QString& path);
    // What the banner says.
    [[nodiscard]] QString said() const { return m_banner.sentence(); }
    void saveAs();
    // Says why the open workbook is open to look at only, with the way out of it.
    void sayLookOnly();
    // Takes it to change it though another bench has it.
    void changeAnyway();
    void importReadings();
    void importReadingsFrom(const QString& path);
    void exportResults();
    void exportReadings();
    void savePdf();

    // Lists the dated copies of the open workbook.
    void showEarlierCopies();
    void showHistory();
    // Shows what differs between the file that somebody else changed and the workbook here, with
    // the ways out: keep mine, take theirs, save mine elsewhere. Nothing is overwritten before.
    void showUnderneath();

signals:
    // A copy is to be opened in a window of its own, to look at.
    void besideAsked(const QString& path);

private:
    void commitTyped(); // what stands in the field that has the focus
    void keepMine();
    void takeTheirs();
    [[nodiscard]] QString besideWorkbook(const QString& ending) const;
    void take(const std::vector<Reading>& readings, const QString& name);
    void write(const QString& path, const std::string& bytes);
    void sayWritten(const QString& path, const Result<void>& done);

    Workshop& m_workshop;
    Banner& m_banner;
    QWidget* m_window;
};

} // namespace borewright
