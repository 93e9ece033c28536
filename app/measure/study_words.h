// SPDX-License-Identifier: GPL-3.0-or-later
// What the readings of one spot tell, in words.
#pragma once

#include "core/gauging/study.h"

#include <QStringList>

namespace borewright {

QString unitWords(Unit unit);
// "−1.5 thou".
QString asTyped(const TypedLength& typed);
// "Ana · bore 1, 2.00 in, A".
QString runWords(const RepeatRun& run);
// Repeatability with its doubt; the shares of people and spots; what lies far out.
QStringList studySentences(const StudyResult& result, const DisplayUnits& units);

} // namespace borewright
