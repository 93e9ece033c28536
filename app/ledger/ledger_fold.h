// SPDX-License-Identifier: GPL-3.0-or-later
// Text as it is searched: "Müller & Søn" is found by "muller son".
#pragma once

#include <QString>
#include <QStringList>

namespace borewright {

// Lower case, accents off, control characters and runs of spaces as one space, none at the ends.
QString folded(const QString& text);

// The folded words of what was typed to search by; at most eight, more are left out.
QStringList searchWords(const QString& typed);

// For SQL's LIKE with ESCAPE '!': anything that holds `word`, whose own %, _ and ! mean themselves.
QString holding(const QString& word);

} // namespace borewright
