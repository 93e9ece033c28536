// SPDX-License-Identifier: GPL-3.0-or-later
// The menu bar: everything that can be done, by name, with its key.
#pragma once

#include <QObject>

class QAction;
class QActionGroup;
class QMenu;

namespace borewright {

class FileVerbs;
class Window;
class Workshop;

class Menus : public QObject {
    Q_OBJECT
public:
    Menus(Window& window, Workshop& workshop, FileVerbs& verbs);
    void showBench(bool bench);

private:
    QAction* add(QMenu& menu, const QString& name, const QKeySequence& key);
    void addFile(FileVerbs& verbs);
    void addFileExports(QMenu& menu, FileVerbs& verbs);
    void addEdit();
    void addView();
    void addHelp();
    void listRecent();
    void refresh();

    Window& m_window;
    Workshop& m_workshop;
    FileVerbs& m_verbs;
    QMenu* m_recent = nullptr;
    QAction* m_undo = nullptr;
    QAction* m_redo = nullptr;
    QAction* m_bench = nullptr;
    QAction* m_changeAnyway = nullptr;
    QActionGroup* m_themes = nullptr;
    QList<QAction*> m_ofWorkbook; // that need one to be open
};

} // namespace borewright
