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
    void saveAs();
    void importReadings();
    void importReadingsFrom(const QString& path);
    void exportResults();
    void exportReadings();
    void savePdf();

private:
    [[nodiscard]] QString besideWorkbook(const QString& ending) const;
    void take(const std::vector<Reading>& readings, const QString& name);
    void write(const QString& path, const std::string& bytes);
    void sayWritten(const QString& path, const Result<void>& done);

    Workshop& m_workshop;
    Banner& m_banner;
    QWidget* m_window;
};

} // namespace borewright
