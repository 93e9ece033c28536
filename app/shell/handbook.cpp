// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/handbook.h"

#include <QCoreApplication>
#include <QDialog>
#include <QFile>
#include <QTextBrowser>
#include <QVBoxLayout>

namespace borewright {
namespace {

QString say(const char* text) {
    return QCoreApplication::translate("Handbook", text);
}

void showPaper(QWidget* parent, const QString& title, const QString& markdown, QSize size) {
    auto* window = new QDialog(parent);
    window->setAttribute(Qt::WA_DeleteOnClose);
    window->setModal(false);
    window->setWindowTitle(title);
    auto* browser = new QTextBrowser(window);
    browser->setAccessibleName(title);
    browser->setOpenExternalLinks(true);
    browser->setFrameShape(QFrame::NoFrame);
    browser->document()->setDocumentMargin(24);
    browser->setMarkdown(markdown);
    auto* column = new QVBoxLayout(window);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(browser);
    window->resize(size);
    window->show();
}

} // namespace

void showHandbook(QWidget* parent) {
    QFile file(QStringLiteral(":/handbook.md"));
    const QString text = file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll())
                                                        : say("The handbook is not built in.");
    showPaper(parent, say("Handbook"), text, {760, 720});
}

void showAbout(QWidget* parent) {
    const QString text =
        say("# Borewright %1\n\nA bench workbook for measuring, honing and fitting engine "
            "cylinders.\n\nFree software under the GNU General Public License, version 3 or later "
            "(GPL-3.0-or-later). It comes with no warranty.\n\nThe engine maker's manual rules "
            "over whatever this program says.\n\nBuilt with Qt %2 and QCustomPlot.")
            .arg(QStringLiteral(BOREWRIGHT_VERSION), QString::fromLatin1(qVersion()));
    showPaper(parent, say("About Borewright"), text, {460, 360});
}

} // namespace borewright
