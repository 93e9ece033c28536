// SPDX-License-Identifier: GPL-3.0-or-later
// The preferences in a window that stops nothing: each change counts at once.
#pragma once

#include "app/context/dialogs.h"
#include "app/context/preferences.h"

#include <QDialog>

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QSpinBox;
class QFormLayout;

namespace borewright {

class PreferencesDialog : public QDialog {
    Q_OBJECT
public:
    PreferencesDialog(PreferencesStore& store, Dialogs& dialogs, QWidget* parent = nullptr);
    ~PreferencesDialog() override; // keeps what was typed and not yet left

signals:
    // The user wants to say where the ledger of jobs lies.
    void ledgerPlaceAsked();

private:
    void build();
    void connectParts();
    void fill();
    void keep();
    void choosePicture();
    void addSounds(QFormLayout& form);
    void addCopies(QFormLayout& form);
    void addLedger(QFormLayout& form);

    PreferencesStore& m_store;
    Dialogs& m_dialogs;
    QLineEdit* m_shopName;
    QPlainTextEdit* m_shopAddress;
    QLineEdit* m_shopPicture;
    QLineEdit* m_measuredBy;
    QComboBox* m_theme;
    QComboBox* m_paper;
    QComboBox* m_order;
    QCheckBox* m_soundKept;
    QCheckBox* m_soundOdd;
    QLineEdit* m_copiesFolder;
    QLabel* m_copiesRefused;
    QSpinBox* m_copiesLatest;
    QSpinBox* m_copiesDays;
    QSpinBox* m_copiesMonths;
    bool m_filling = false;
};

} // namespace borewright
