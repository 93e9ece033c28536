// SPDX-License-Identifier: GPL-3.0-or-later
// The form that begins a workbook, in under a minute: what most people need, Enter moves on, the
// last Enter begins. Beside it the workbooks of before.
#pragma once

#include "app/shell/new_block.h"
#include "app/shell/workshop.h"

#include <QWidget>

class QCheckBox;
class QComboBox;
class QGridLayout;
class QLabel;
class QPushButton;
class QVBoxLayout;

namespace borewright {

class StartField;

class StartForm : public QWidget {
    Q_OBJECT
public:
    explicit StartForm(Workshop& workshop, QWidget* parent = nullptr);
    // To the first field, with the last workbooks listed afresh.
    void start();

signals:
    void began();                            // a workbook was begun and is on its way to the disk
    void openAsked();                        // by the file dialog
    void openRequested(const QString& path); // one of the last

protected:
    void showEvent(QShowEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    QWidget* buildForm();
    void addFields(QGridLayout& grid);
    QWidget* buildEarlier();
    QWidget* labelled(const QString& label, QWidget* control);
    void listEarlier();
    void followEnds();
    void follow();
    void go();
    [[nodiscard]] NewBlock typed() const;
    [[nodiscard]] StartField* fieldNamed(const std::string& name) const;

    Workshop& m_workshop;
    StartField* m_bores;
    StartField* m_size;
    StartField* m_depth;
    StartField* m_openEnd;
    StartField* m_wornSize;
    StartField* m_wornRound;
    StartField* m_wornTaper;
    StartField* m_engine;
    StartField* m_customer;
    QComboBox* m_arrangement;
    QComboBox* m_combustion;
    QCheckBox* m_blind;
    QPushButton* m_go;
    QLabel* m_place;
    QVBoxLayout* m_earlier = nullptr;
    QList<QWidget*> m_order; // in which Enter moves on
    bool m_openEndTyped = false;
};

} // namespace borewright
