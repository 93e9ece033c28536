// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/study_words.h"

#include <QCoreApplication>

namespace borewright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Study", text);
}

QString utf8(const std::string& text) {
    return QString::fromStdString(text);
}

} // namespace

QString unitWords(Unit unit) {
    const auto text = symbol(unit);
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

QString asTyped(const TypedLength& typed) {
    return utf8(typed.text()).replace(QLatin1Char('-'), QChar(0x2212)) + QLatin1Char(' ') +
           unitWords(typed.unit());
}

QString runWords(const RepeatRun& run) {
    QStringList words;
    for (const std::string* part : {&run.person, &run.spot})
        if (!part->empty()) words << utf8(*part);
    return words.isEmpty() ? tr("One person, one spot") : words.join(QStringLiteral(" · "));
}

QStringList studySentences(const StudyResult& result, const DisplayUnits& units) {
    QString first = utf8(studyWords(result, units));
    first[0] = first[0].toUpper();
    QStringList words{first + QLatin1Char('.')};
    if (result.belowTheStep)
        words << tr("They scatter less than the dial can show, so what one step of it leaves "
                    "is taken instead.");
    const auto share = [&](const std::optional<double>& um, const QString& who) {
        if (!um) return;
        words << (*um > 0 ? tr("Between %1 another %2, standard deviation.")
                                .arg(who, utf8(smallWithUnit(Length::nearest(*um, Unit::micrometre),
                                                             units, Sign::negative, 1)))
                          : tr("Between %1 nothing that shows.").arg(who));
    };
    share(result.betweenPeople_um, tr("people"));
    share(result.betweenSpots_um, tr("spots"));
    if (result.outlier)
        words << tr("One reading lies far from the others (Grubbs' test, 1 in 100). Strike it out "
                    "only if you know what went wrong; else it belongs.");
    return words;
}

} // namespace borewright
