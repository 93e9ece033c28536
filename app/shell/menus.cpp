// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/menus.h"

#include "app/shell/file_verbs.h"
#include "app/shell/handbook.h"
#include "app/shell/ledger_beside.h"
#include "app/shell/status_line.h"
#include "app/shell/window.h"

#include <QActionGroup>
#include <QDir>
#include <QMenuBar>

namespace borewright {

Menus::Menus(Window& window, Workshop& workshop, FileVerbs& verbs)
    : QObject(&window)
    , m_window(window)
    , m_workshop(workshop)
    , m_verbs(verbs) {
    addFile(verbs);
    addEdit();
    addView();
    addHelp();
    connect(&workshop.document().undoStack(), &QUndoStack::indexChanged, this, &Menus::refresh);
    connect(&workshop.preferences(), &PreferencesStore::changed, this, &Menus::refresh);
    connect(&workshop, &Workshop::opened, this, &Menus::refresh);
    refresh();
}

// The window has the action too, so that its key works while the menu bar is hidden.
QAction* Menus::add(QMenu& menu, const QString& name, const QKeySequence& key) {
    QAction* action = menu.addAction(name);
    action->setShortcut(key);
    m_window.addAction(action);
    return action;
}

void Menus::addFile(FileVerbs& verbs) {
    QMenu& menu = *m_window.menuBar()->addMenu(tr("&File"));
    connect(add(menu, tr("&New block …"), QKeySequence::New), &QAction::triggered, &m_window,
            &Window::showStart);
    connect(add(menu, tr("&Open …"), QKeySequence::Open), &QAction::triggered, &verbs,
            &FileVerbs::open);
    m_recent = menu.addMenu(tr("Open &recent"));
    connect(m_recent, &QMenu::aboutToShow, this, &Menus::listRecent);
    connect(add(menu, tr("&Ledger of jobs …"), QKeySequence(Qt::CTRL | Qt::Key_L)),
            &QAction::triggered, &m_window.ledger(), &LedgerBeside::show);
    QAction* saveAs = add(menu, tr("Save &as …"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_S));
    connect(saveAs, &QAction::triggered, &verbs, &FileVerbs::saveAs);
    m_ofWorkbook += saveAs;
    QAction* earlier = add(menu, tr("Earlier &copies …"), {});
    connect(earlier, &QAction::triggered, &verbs, &FileVerbs::showEarlierCopies);
    m_ofWorkbook += earlier;
    QAction* history = add(menu, tr("&History …"), QKeySequence(Qt::CTRL | Qt::Key_H));
    connect(history, &QAction::triggered, &verbs, &FileVerbs::showHistory);
    m_ofWorkbook += history;
    m_changeAnyway = add(menu, tr("Open to chan&ge anyway"), {});
    connect(m_changeAnyway, &QAction::triggered, &verbs, &FileVerbs::changeAnyway);
    menu.addSeparator();
    addFileExports(menu, verbs);
    menu.addSeparator();
    connect(add(menu, tr("&Quit"), QKeySequence(Qt::CTRL | Qt::Key_Q)), &QAction::triggered,
            &m_window, &QWidget::close);
}

void Menus::addFileExports(QMenu& menu, FileVerbs& verbs) {
    const auto addVerb = [&](const QString& name, const QKeySequence& key,
                             void (FileVerbs::*verb)()) {
        QAction* action = add(menu, name, key);
        connect(action, &QAction::triggered, &verbs, verb);
        m_ofWorkbook += action;
    };
    addVerb(tr("&Import readings (CSV) …"), {}, &FileVerbs::importReadings);
    addVerb(tr("Export rea&dings (CSV) …"), {}, &FileVerbs::exportReadings);
    addVerb(tr("&Export results …"), {}, &FileVerbs::exportResults);
    addVerb(tr("Save the sheet as &PDF …"), {}, &FileVerbs::savePdf);
}

void Menus::listRecent() {
    m_recent->clear();
    for (const QString& path : m_workshop.preferences().value().recentFiles) {
        QAction* action = m_recent->addAction(QDir::toNativeSeparators(path).replace('&', "&&"));
        connect(action, &QAction::triggered, this, [this, path] { m_verbs.openPath(path); });
    }
    if (m_recent->isEmpty()) m_recent->addAction(tr("none yet"))->setEnabled(false);
}

void Menus::addEdit() {
    QMenu& menu = *m_window.menuBar()->addMenu(tr("&Edit"));
    QUndoStack& stack = m_workshop.document().undoStack();
    m_undo = add(menu, {}, QKeySequence::Undo);
    m_redo = add(menu, {}, {});
    m_redo->setShortcuts(
        {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z), QKeySequence(Qt::CTRL | Qt::Key_Y)});
    connect(m_undo, &QAction::triggered, &stack, &QUndoStack::undo);
    connect(m_redo, &QAction::triggered, &stack, &QUndoStack::redo);
    menu.addSeparator();
    connect(add(menu, tr("&Preferences …"), QKeySequence(Qt::CTRL | Qt::Key_Comma)),
            &QAction::triggered, &m_window, &Window::showPreferences);
}

void Menus::addView() {
    QMenu& menu = *m_window.menuBar()->addMenu(tr("&View"));
    for (int i = 0; i < pageCount; ++i) {
        const auto page = static_cast<Page>(i);
        QAction* action = add(menu, titleOf(page), QKeySequence(Qt::CTRL | (Qt::Key_1 + i)));
        connect(action, &QAction::triggered, this, [this, page] { m_window.showPage(page); });
        m_ofWorkbook += action;
    }
    menu.addSeparator();
    m_bench = add(menu, tr("&Bench mode: large type"), Qt::Key_F11);
    m_bench->setCheckable(true);
    connect(m_bench, &QAction::triggered, &m_window, &Window::setBench);
    m_ofWorkbook += m_bench;
    menu.addSeparator();
    m_themes = new QActionGroup(this);
    int index = 0;
    for (const QString& name : {tr("Look of the &desk"), tr("&Light"), tr("Da&rk")}) {
        QAction* action = m_themes->addAction(menu.addAction(name));
        action->setCheckable(true);
        action->setData(index++);
    }
    connect(m_themes, &QActionGroup::triggered, this, [this](const QAction* action) {
        Preferences preferences = m_workshop.preferences().value();
        preferences.theme = static_cast<Preferences::Theme>(action->data().toInt());
        m_workshop.preferences().set(preferences);
    });
}

void Menus::addHelp() {
    QMenu& menu = *m_window.menuBar()->addMenu(tr("&Help"));
    connect(add(menu, tr("&Handbook"), QKeySequence::HelpContents), &QAction::triggered, this,
            [this] { showHandbook(&m_window); });
    connect(menu.addAction(tr("&About Borewright")), &QAction::triggered, this,
            [this] { showAbout(&m_window); });
}

void Menus::showBench(bool bench) {
    m_bench->setChecked(bench);
}

void Menus::refresh() {
    Document& document = m_workshop.document();
    m_undo->setText(undoName(document).replace('&', "&&"));
    m_redo->setText(redoName(document).replace('&', "&&"));
    m_undo->setEnabled(document.undoStack().canUndo());
    m_redo->setEnabled(document.undoStack().canRedo());
    const int theme = static_cast<int>(m_workshop.preferences().value().theme);
    m_themes->actions().at(theme)->setChecked(true);
    m_changeAnyway->setVisible(m_workshop.otherBench().has_value());
    for (QAction* action : m_ofWorkbook)
        action->setEnabled(m_workshop.isOpen());
}

} // namespace borewright
