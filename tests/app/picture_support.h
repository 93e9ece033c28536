// SPDX-License-Identifier: GPL-3.0-or-later
// What the tests of the pictures share: pinned type, a bore with a V, the data of a section.
#pragma once

#include "app/pictures/section.h"
#include "tests/support/blocks.h"

namespace borewright::test {

inline QFont pictureFont() {
    QFont font("Noto Sans");
    font.setPixelSize(14);
    return font;
}

inline PictureStyle styleOf(bool dark) {
    return dark ? PictureStyle::darkScreen(pictureFont()) : PictureStyle::light(pictureFont());
}

// A block of one bore whose closed end is `v_thou` smaller than its open end, straight between.
inline Workbook vBlock(double v_thou, std::string& survey) {
    Workbook workbook = inchBlock(1);
    survey = addSurvey(workbook, SurveyKind::asFound, "as found");
    typeShape(workbook, survey, 1, [v_thou](double depth_in, const std::string&) {
        return 3.0 - v_thou * (depth_in - 0.5) / 3.0;
    });
    return workbook;
}

inline SectionData sectionOf(const Workbook& workbook, const std::string& survey, int bore,
                      SectionOptions::Mode mode = SectionOptions::Mode::trueSize) {
    const DisplayUnits units = naturalUnits(workbook);
    SectionOptions options;
    options.mode = mode;
    return sectionData(workbook, compute(workbook, units), survey, bore, units, options);
}

} // namespace borewright::test
