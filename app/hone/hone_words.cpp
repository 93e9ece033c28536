// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/hone/hone_words.h"

#include "app/pictures/reading_words.h"

#include <QCoreApplication>

#include <algorithm>

namespace borewright::hone_words {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("HoneWords", text);
}

bool hasFinishSize(const Workbook& workbook, const Bore& bore) {
    return workbook.targets.contains(bore.number) ||
           std::ranges::any_of(workbook.limitSets, [&](const LimitSet& set) {
               return set.purpose == LimitPurpose::finish &&
                      finishSizeFor(workbook, set, bore).has_value();
           });
}

QString missingOf(const Workbook& workbook, const Bore& bore) {
    if (bore.surface == Surface::plated)
        return tr("Bore %1 is plated: ordinary stones only ruin it. Plated bores want diamond; "
                  "follow the plater. Nothing is planned here.")
            .arg(bore.number);
    if (!bore.depth)
        return tr("How deep is bore %1? Enter its depth on the Block page (Ctrl+1).")
            .arg(bore.number);
    if (!hasFinishSize(workbook, bore))
        return tr("To what size? Choose it on the Size page (Ctrl+4) and hand it over there with "
                  "F10, or enter finish limits on the Block page.");
    return {};
}

} // namespace

QString missing(const Workbook& workbook, int bore) {
    const Bore* map = findBore(workbook.block, bore);
    if (map == nullptr) return tr("There is no bore yet: describe the block (Ctrl+1).");
    if (const QString why = missingOf(workbook, *map); !why.isEmpty()) return why;
    if (workbook.hone.stones.empty())
        return tr("With which stones? Take the usual set by one click, or enter your own under "
                  "“Stones”.");
    return {};
}

bool wantsStones(const Workbook& workbook, int bore) {
    const Bore* map = findBore(workbook.block, bore);
    return map != nullptr && map->surface != Surface::plated && map->depth &&
           workbook.hone.stones.empty();
}

QString nameOf(const HoneRecord& record, const std::string& stone) {
    const Stone* found = findStone(record, stone);
    return qs(found != nullptr ? found->name : stone);
}

QString paragraphs(const QString& heading, const std::vector<std::string>& sentences) {
    if (sentences.empty()) return {};
    QString text;
    if (!heading.isEmpty())
        text += QStringLiteral("<p style='margin-top:8px; margin-bottom:2px'><b>%1</b></p>")
                    .arg(heading.toHtmlEscaped());
    for (const std::string& sentence : sentences)
        text += QStringLiteral("<p style='margin-top:1px; margin-bottom:3px'>%1</p>")
                    .arg(qs(sentence).toHtmlEscaped());
    return text;
}

// Common practice, no source.
QStringList cautions() {
    return {
        tr("The engine maker's manual and the hone maker's rule stand above all that is said "
           "here."),
        tr("A hone driven by a hand drill can catch and break a wrist or throw its stones: speed "
           "as its maker has it, both hands, and never out of the bore while it turns."),
        tr("Eyes covered. Dry honing dusts: a mask, and no breath over it. With solvents: no "
           "flame, "
           "no spark, fresh air."),
        tr("A hot casting measures large: let it cool before the last thou."),
        tr("Wash the grit out with hot water and soap until a white cloth stays white, then oil."),
    };
}

} // namespace borewright::hone_words
