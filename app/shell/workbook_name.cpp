// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/workbook_name.h"

#include "core/storage/workbook_file.h"

#include <QStringList>

namespace borewright {
namespace {

constexpr qsizetype longestPart = 40; // three parts in UTF-8 stay below the 255 bytes of most disks
constexpr int mostTries = 10'000;

// Separators and signs that one system or another keeps for itself become spaces.
QString safe(const std::string& text) {
    static const QString forbidden = QStringLiteral("/\\:*?\"<>|");
    QString result;
    for (const QChar c : QString::fromStdString(text)) {
        const bool bad = forbidden.contains(c) || c.category() == QChar::Other_Control;
        result += bad ? QChar(' ') : c;
    }
    result = result.simplified();
    while (result.startsWith('.') || result.startsWith('-'))
        result.remove(0, 1);
    result.truncate(longestPart);
    if (!result.isEmpty() && result.back().isHighSurrogate()) result.chop(1);
    return result.trimmed();
}

} // namespace

QString proposedName(const Workbook& workbook, const Timestamp& now) {
    QStringList parts;
    for (const std::string& text : {workbook.job.engine, workbook.job.customer})
        if (const QString part = safe(text); !part.isEmpty()) parts += part;
    if (parts.isEmpty()) parts += QStringLiteral("Block of %1").arg(workbook.block.bores.size());
    parts += QString::fromStdString(toIso(now)).left(10);
    return parts.join(QStringLiteral(", "));
}

QString freshPath(FileSystem& files, const QString& folder, const QString& name) {
    const QString ending = QString::fromUtf8(workbookExtension.data(), workbookExtension.size());
    const QString start = folder.isEmpty() ? name : folder + '/' + name;
    QString path = start + ending;
    for (int i = 2; i < mostTries && files.facts(path.toStdString()); ++i)
        path = QStringLiteral("%1 (%2)%3").arg(start).arg(i).arg(ending);
    return path;
}

} // namespace borewright
