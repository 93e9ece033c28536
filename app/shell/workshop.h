// SPDX-License-Identifier: GPL-3.0-or-later
// What the program owns while it runs: the open workbook, what is selected, the preferences.
// Opens, begins and keeps workbooks; the window only shows what it says.
#pragma once

#include "app/context/page_context.h"
#include "app/document/autosaver.h"

#include <QObject>

#include <memory>

namespace borewright {

// What reaches the program from outside, handed in so that tests have their own. All must outlive
// the workshop.
struct Outside {
    FileSystem& files;
    const Clock& clock;
    Dialogs& dialogs;
    Sounds& sounds;
    PreferencesStore& preferences;
    QString rescueFolder;   // where a workbook goes whose own place fails
    QString workbookFolder; // where a new workbook is put
};

class Workshop : public QObject {
    Q_OBJECT
public:
    explicit Workshop(const Outside& outside, QObject* parent = nullptr);
    ~Workshop() override;

    [[nodiscard]] Document& document() { return m_document; }
    [[nodiscard]] Selection& selection() { return m_selection; }
    [[nodiscard]] Autosaver& autosaver() { return m_autosaver; }
    [[nodiscard]] FileSystem& files() { return m_outside.files; }
    [[nodiscard]] const QString& workbookFolder() const { return m_outside.workbookFolder; }
    [[nodiscard]] PreferencesStore& preferences() { return m_outside.preferences; }
    [[nodiscard]] Dialogs& dialogs() { return m_outside.dialogs; }
    [[nodiscard]] PageContext context();

    // Whether a workbook is open; else the start form is shown.
    [[nodiscard]] bool isOpen() const { return m_open; }

    // Opens the file at `path`. Refused in a sentence, with what was open left open.
    Result<void> open(const QString& path);
    // Begins a workbook and has it on disk at once, under a name of its own.
    void begin(Workbook workbook);
    // Keeps the open workbook at `path` from now on.
    void saveAs(const QString& path);

signals:
    void opened(); // another workbook is open now

private:
    void becameOpen(const QString& path);
    void remember(const QString& path);

    Outside m_outside;
    Document m_document;
    Selection m_selection;
    Autosaver m_autosaver; // after the document: it saves what the document holds when it ends
    bool m_open = false;
};

} // namespace borewright
