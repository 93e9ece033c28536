// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/section_data.h"

#include <QCoreApplication>

namespace borewright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Section", text);
}

// What the readings of one depth are, as a part of a sentence.
QString rowInWords(const SectionData& data, const SectionRow& row) {
    QStringList parts;
    for (qsizetype i = 0; i < row.values.size(); ++i) {
        if (row.values[i].isEmpty()) continue;
        const QString axis = data.columnHeads.value(i + 1);
        parts << axis + QStringLiteral(" ") +
                     (row.values[i] == QStringLiteral("–") ? tr("no wall") : row.values[i]);
    }
    if (parts.isEmpty()) return {};
    return row.depth + QStringLiteral(": ") + parts.join(QStringLiteral(", "));
}

} // namespace

QString describeSection(const SectionData& data) {
    if (data.bore == 0) return data.friendly;
    QString text = data.title;
    if (!data.word.isEmpty()) text += QStringLiteral(": ") + data.word;
    text += QStringLiteral(". ");
    if (data.empty()) return text + data.friendly;
    if (!data.finish.isEmpty())
        text += tr("Drawn against %1. ").arg(data.finish);
    else if (!data.base.isEmpty())
        text += tr("Drawn about %1. ").arg(data.base);
    QStringList rows;
    for (const SectionRow& row : data.rows) {
        const QString words = rowInWords(data, row);
        if (!words.isEmpty()) rows << words;
    }
    if (!rows.isEmpty())
        text += tr("From the %1 down, depth in %2, %3: ")
                    .arg(data.openEnd, data.columnHeads.value(0), data.valuesHead) +
                rows.join(QStringLiteral("; ")) + QStringLiteral(". ");
    if (!data.earlierNames.isEmpty())
        text += tr("Faint behind it: %1.").arg(data.earlierNames.join(QStringLiteral(", ")));
    return text.trimmed();
}

} // namespace borewright
