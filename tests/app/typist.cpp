// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/typist.h"

#include "tests/support/blocks.h"

#include <QLineEdit>
#include <QTest>

namespace borewright::test {
namespace {

Workbook sixteenBores(std::string& survey) {
    Workbook workbook = inchBlock(
        16, {"0.25", "0.5", "0.75", "1", "1.25", "1.5", "1.75", "2", "2.25", "2.5", "2.75", "3"});
    survey = addSurvey(workbook, SurveyKind::asFound, "found");
    return workbook;
}

// The page is built on a workbook that is open.
PageContext begun(Workshop& workshop, std::string& survey) {
    workshop.begin(sixteenBores(survey));
    return workshop.context();
}

} // namespace

std::string robotText(std::size_t n) {
    return "-" + std::to_string(n / 10 % 4) + "," + std::to_string(n % 10);
}

Typist::Typist(const QString& folder, const QString& rescueFolder)
    : workshop({files, clock, dialogs, sounds, preferences, rescueFolder, folder})
    , page(begun(workshop, survey))
    , m_entry(page.findChild<QLineEdit*>("entry")) {
    page.resize(1100, 700);
    page.show();
}

std::size_t Typist::typed() {
    return findSurvey(workshop.document().workbook(), survey)->readings.size();
}

bool Typist::typeNext() {
    const std::size_t before = typed();
    for (const char c : robotText(before))
        QTest::keyClick(m_entry, c, Qt::KeypadModifier);
    QTest::keyClick(m_entry, Qt::Key_Enter, Qt::KeypadModifier);
    return typed() == before + 1;
}

} // namespace borewright::test
