// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/system_outside.h"

#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QPrintDialog>
#include <QStandardPaths>

namespace borewright {

QString SystemDialogs::fileToOpen(QWidget* parent, const QString& title, const QString& filter) {
    return QFileDialog::getOpenFileName(parent, title, workbookFolder(), filter);
}

// The ending is added by the dialog, so that it asks before another file is replaced.
QString SystemDialogs::fileToSave(QWidget* parent, const QString& title, const QString& proposal,
                                  const QString& filter) {
    QFileDialog dialog(parent, title, QFileInfo(proposal).path(), filter);
    dialog.setAcceptMode(QFileDialog::AcceptSave);
    dialog.setDefaultSuffix(QFileInfo(proposal).suffix());
    dialog.selectFile(QFileInfo(proposal).fileName());
    if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return {};
    return dialog.selectedFiles().constFirst();
}

bool SystemDialogs::setUpPrinter(QWidget* parent, QPrinter& printer) {
    return QPrintDialog(&printer, parent).exec() == QDialog::Accepted;
}

QString workbookFolder() {
    return QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation) +
           QStringLiteral("/Borewright");
}

// The state folder of the desk's conventions (XDG base directories), which Qt 6.4 does not know.
QString rescueFolder() {
    const QString given = qEnvironmentVariable("XDG_STATE_HOME");
    const QString state =
        QDir::isAbsolutePath(given) ? given : QDir::homePath() + QStringLiteral("/.local/state");
    return state + QStringLiteral("/borewright/rescue");
}

QString copiesFolder() {
    return QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation) +
           QStringLiteral("/borewright/copies");
}

QString preferencesPath() {
    return QStandardPaths::writableLocation(QStandardPaths::GenericConfigLocation) +
           QStringLiteral("/borewright/preferences.json");
}

QString ledgerSettingsPath() {
    return QStandardPaths::writableLocation(QStandardPaths::GenericConfigLocation) +
           QStringLiteral("/borewright/ledger.json");
}

QString soundFolder() {
    return QStandardPaths::writableLocation(QStandardPaths::GenericCacheLocation) +
           QStringLiteral("/borewright/sounds");
}

} // namespace borewright
