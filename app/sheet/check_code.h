// SPDX-License-Identifier: GPL-3.0-or-later
// The check code of a sheet: "K7QW-3MXR-T9AD" on every page, so that a sheet on paper can be held
// against its file years later.
//
// It is of what the sheet shows of the job, and of nothing else: every figure and sentence, what
// the pictures draw, and the units chosen, since figures rounded in millimetres are others than in
// inches. It is not of the paper, the date of printing, or the shop's own head. The same data gives
// the same code on any machine, in any language and time zone.
//
// SHA-256 (FIPS 180-4, Qt's) of a canonical text, of which eleven letters are kept, and a twelfth
// that checks them. The 23 letters leave out what looks alike in print or by hand: 0 O, 1 I L, 2 Z,
// 5 S, 8 B, U V. 23 being a prime, a sum weighted by place modulo 23 finds every single wrong
// letter and every two that changed places, as the check figure of ISO 2108 (ISBN) does modulo 11.
#pragma once

#include "core/result.h"

#include <QByteArray>
#include <QString>
#include <QStringList>

#include <string>

namespace borewright {

struct SheetData;

// What the code of a sheet is made of: each thing shown, named and measured, so that no two sheets
// that differ have the same text.
QByteArray shownOnSheet(const SheetData& data);
// The code of such a text.
QString checkCodeOf(const QByteArray& shown);

// A code as somebody types it: small letters, other dashes, blanks or none. Refuses, saying what is
// wrong: a letter that is in no code, too many or too few, a letter mistyped; where one of the
// `known` codes is a single letter or a pair changed about away, it is named.
Result<QString> readCheckCode(const std::string& typed, const QStringList& known);

} // namespace borewright
