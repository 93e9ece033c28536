// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/ledger/ledger_fold.h"

namespace borewright {
namespace {

constexpr int mostWords = 8;

// Letters that Unicode does not take apart into a letter and its accent.
QString plainLetter(QChar letter) {
    switch (letter.unicode()) {
    case u'ø':
        return QStringLiteral("o");
    case u'ł':
        return QStringLiteral("l");
    case u'đ':
        return QStringLiteral("d");
    case u'æ':
        return QStringLiteral("ae");
    case u'œ':
        return QStringLiteral("oe");
    case u'ß':
        return QStringLiteral("ss");
    case u'ı':
        return QStringLiteral("i");
    default:
        return letter;
    }
}

} // namespace

QString folded(const QString& text) {
    QString plain;
    plain.reserve(text.size());
    for (const QChar c : text.normalized(QString::NormalizationForm_KD).toLower()) {
        if (c.isMark()) continue;
        if (c.category() == QChar::Other_Control)
            plain += u' ';
        else
            plain += plainLetter(c);
    }
    return plain.simplified();
}

QStringList searchWords(const QString& typed) {
    return folded(typed).split(u' ', Qt::SkipEmptyParts).mid(0, mostWords);
}

QString holding(const QString& word) {
    QString pattern = QStringLiteral("%");
    for (const QChar c : word) {
        if (c == u'%' || c == u'_' || c == u'!') pattern += u'!';
        pattern += c;
    }
    return pattern + u'%';
}

} // namespace borewright
