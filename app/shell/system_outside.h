// SPDX-License-Identifier: GPL-3.0-or-later
// The world as the desk has it: its dialogs and its folders.
#pragma once

#include "app/context/dialogs.h"

namespace borewright {

class SystemDialogs final : public Dialogs {
public:
    QString fileToOpen(QWidget* parent, const QString& title, const QString& filter) override;
    QString fileToSave(QWidget* parent, const QString& title, const QString& proposal,
                       const QString& filter) override;
    bool setUpPrinter(QWidget* parent, QPrinter& printer) override;
};

// Where new workbooks go, rescue and dated copies, the preferences, where the ledger lies, the
// sounds.
QString workbookFolder();
QString rescueFolder();
QString copiesFolder();
QString preferencesPath();
QString ledgerSettingsPath();
QString soundFolder();

} // namespace borewright
