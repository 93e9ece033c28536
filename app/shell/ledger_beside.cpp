// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/ledger_beside.h"

#include "app/jobs/ledger_window.h"
#include "app/jobs/place_dialog.h"
#include "app/shell/file_verbs.h"

#include <QMainWindow>

namespace borewright {

LedgerBeside::LedgerBeside(QMainWindow& main, Workshop& workshop, FileVerbs& verbs)
    : QObject(&main)
    , m_main(main)
    , m_workshop(workshop)
    , m_verbs(verbs) {}

LedgerBeside::~LedgerBeside() = default;

void LedgerBeside::show() {
    if (!m_window) {
        m_window = std::make_unique<LedgerWindow>(LedgerOutside{
            m_workshop.ledger(), m_workshop.ledgerSettings(), m_workshop.dialogs(),
            m_workshop.ledgerMeans().chooseFolder, m_workshop.files(), m_workshop.workbookFolder(),
            [this](const QString& path) { return open(path); }});
        connect(m_window.get(), &LedgerWindow::placeAsked, this,
                [this] { showPlace(m_window.get()); });
    }
    m_window->show();
    m_window->raise();
    m_window->activateWindow();
}

void LedgerBeside::showPlace(QWidget* parent) {
    auto* dialog = new PlaceDialog(m_workshop.ledger(), m_workshop.ledgerSettings(), parent);
    dialog->show();
}

void LedgerBeside::close() {
    if (m_window) m_window->close();
}

// What is said about it is said where the user looks.
QString LedgerBeside::open(const QString& path) {
    if (!m_verbs.openPath(path)) return m_verbs.said();
    m_main.raise();
    m_main.activateWindow();
    return {};
}

} // namespace borewright
