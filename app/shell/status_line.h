// SPDX-License-Identifier: GPL-3.0-or-later
// Along the bottom: undo and redo by name, the file and its place, whether it is on the disk, and
// the units that lengths are shown in.
#pragma once

#include "app/shell/workshop.h"

#include <QWidget>

class QComboBox;
class QLabel;
class QToolButton;

namespace borewright {

class StatusLine : public QWidget {
    Q_OBJECT
public:
    explicit StatusLine(Workshop& workshop, QWidget* parent = nullptr);
    // A word instead of the file's place, while the bench has the window; empty takes it away.
    void setWord(const QString& word);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void changeEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    void build();
    void refresh();
    void refreshPlace();
    void refreshLedger();
    void refreshUnits();
    void refreshIcons();
    void chooseUnits();

    Workshop& m_workshop;
    QToolButton* m_undo;
    QToolButton* m_redo;
    QLabel* m_place;
    QLabel* m_state;
    QLabel* m_ledger;
    QComboBox* m_sizes;
    QComboBox* m_smalls;
    QString m_word;
};

// "Undo reading bore 3, 1.75 in, B"; "Undo" where there is nothing to undo.
QString undoName(Document& document);
QString redoName(Document& document);

} // namespace borewright
