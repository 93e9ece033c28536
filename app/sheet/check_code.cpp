// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/sheet/check_code.h"

#include <QCryptographicHash>

#include <array>
#include <cstdint>

namespace borewright {
namespace {

const QString letters = QStringLiteral("34679ACDEFGHJKMNPQRTWXY");
constexpr int lettersKept = 11;
constexpr int group = 4;

int modulus() {
    return static_cast<int>(letters.size());
}

// The letter that makes the sum of all, each times its place (1 …), nothing modulo 23.
QChar checkLetter(const QString& kept) {
    int sum = 0;
    for (int i = 0; i < lettersKept; ++i)
        sum += (i + 1) * static_cast<int>(letters.indexOf(kept[i]));
    for (const QChar letter : letters)
        if ((sum + (lettersKept + 1) * static_cast<int>(letters.indexOf(letter))) % modulus() == 0)
            return letter;
    return letters[0]; // not reached: 12 has an inverse modulo 23
}

QString grouped(const QString& code) {
    QStringList groups;
    for (int i = 0; i < code.size(); i += group)
        groups << code.mid(i, group);
    return groups.join('-');
}

QString plain(QString code) {
    return code.remove('-');
}

bool isDash(QChar c) {
    return c.isSpace() || c.category() == QChar::Punctuation_Dash || c == QChar(0x2212);
}

// One letter differs, or two that stand side by side changed about.
bool near(const QString& a, const QString& b) {
    if (a.size() != b.size()) return false;
    QList<int> differ;
    for (int i = 0; i < a.size(); ++i)
        if (a[i] != b[i]) differ << i;
    return differ.size() == 1 || (differ.size() == 2 && differ[1] == differ[0] + 1 &&
                                  a[differ[0]] == b[differ[1]] && a[differ[1]] == b[differ[0]]);
}

std::string perhaps(const QString& typed, const QStringList& known) {
    for (const QString& code : known)
        if (near(plain(code), typed)) return ": perhaps " + code.toStdString();
    return {};
}

} // namespace

QString checkCodeOf(const QByteArray& shown) {
    const QByteArray hash = QCryptographicHash::hash(shown, QCryptographicHash::Sha256);
    std::uint64_t number = 0;
    for (int i = 0; i < 8; ++i)
        number = number << 8U | static_cast<unsigned char>(hash[i]);
    QString kept;
    for (int i = 0; i < lettersKept; ++i) {
        kept += letters[static_cast<qsizetype>(number % static_cast<unsigned>(modulus()))];
        number /= static_cast<unsigned>(modulus());
    }
    return grouped(kept + checkLetter(kept));
}

Result<QString> readCheckCode(const std::string& typed, const QStringList& known) {
    QString code;
    for (const QChar c : QString::fromStdString(typed).toUpper())
        if (!isDash(c)) code += c;
    if (code.size() != lettersKept + 1)
        return refuse(QStringLiteral("'%1' has %2 letters; a code has %3")
                          .arg(code.left(40))
                          .arg(code.size())
                          .arg(lettersKept + 1)
                          .toStdString());
    for (const QChar c : code)
        if (!letters.contains(c))
            return refuse(QStringLiteral("'%1' is in no code").arg(c).toStdString() +
                          perhaps(code, known));
    if (checkLetter(code.left(lettersKept)) != code.back())
        return refuse(grouped(code).toStdString() +
                      " is mistyped: its last letter does not agree "
                      "with the others" +
                      perhaps(code, known));
    return grouped(code);
}

} // namespace borewright
