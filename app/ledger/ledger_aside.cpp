// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/ledger/ledger_aside.h"

#include <QFile>

namespace borewright {
namespace {

constexpr const char* sqliteBeginning = "SQLite format 3"; // sqlite.org/fileformat.html

} // namespace

bool looksLikeLedger(const std::string& file) {
    if (file.ends_with(".sqlite")) return true;
    QFile opened(QString::fromStdString(file));
    return opened.open(QIODevice::ReadOnly) &&
           opened.read(15) == QByteArray::fromRawData(sqliteBeginning, 15);
}

Result<std::string> setAside(const std::string& file) {
    const QString from = QString::fromStdString(file);
    QString to;
    int number = 0;
    do
        to = from + QStringLiteral(".aside-%1").arg(++number);
    while (QFile::exists(to));
    if (QFile moved(from); !moved.rename(to))
        return refuse(file, "it cannot be put aside (" + moved.errorString().toStdString() + ")");
    for (const QString& ending : {QStringLiteral("-wal"), QStringLiteral("-shm")}) {
        QFile beside(from + ending);
        // Left behind, it would be played into the new file.
        if (beside.exists() && !beside.rename(to + ending) && !beside.remove())
            return refuse(file + ending.toStdString(), "it cannot be put aside");
    }
    return to.toStdString();
}

} // namespace borewright
