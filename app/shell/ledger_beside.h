// SPDX-License-Identifier: GPL-3.0-or-later
// The ledger beside the main window: made when first called for, closed with it.
#pragma once

#include "app/shell/workshop.h"

#include <QObject>

#include <memory>

class QMainWindow;

namespace borewright {

class FileVerbs;
class LedgerWindow;

class LedgerBeside : public QObject {
    Q_OBJECT
public:
    // `main` is the window that jobs are opened in.
    LedgerBeside(QMainWindow& main, Workshop& workshop, FileVerbs& verbs);
    ~LedgerBeside() override;

    void show();
    // Where the ledger lies, to be chosen; before `parent`.
    void showPlace(QWidget* parent);
    void close();
    // Null before it was first shown.
    [[nodiscard]] LedgerWindow* window() { return m_window.get(); }

private:
    QString open(const QString& path);

    QMainWindow& m_main;
    Workshop& m_workshop;
    FileVerbs& m_verbs;
    std::unique_ptr<LedgerWindow> m_window;
};

} // namespace borewright
