// SPDX-License-Identifier: GPL-3.0-or-later
// The sheet: what it says, that nothing is clipped or drawn over another text, that a PDF embeds
// its fonts, and that the page that hands it over writes by the document and the saver only.
#include "app/sheet/sheet_composer.h"
#include "app/sheet/sheet_page.h"
#include "app/sheet/sheet_pdf.h"
#include "app/sheet/summary_field.h"
#include "core/length/format.h"
#include "tests/support/bench_context.h"
#include "tests/support/blocks.h"
#include "tests/support/demo_scenarios.h"
#include "tests/support/memory_file_system.h"

#include <QDir>
#include <QFile>
#include <QLabel>
#include <QProcess>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>

#include <gtest/gtest.h>

#include <algorithm>

namespace borewright {
namespace {

using namespace test;
using Paper = Preferences::Paper;

constexpr Timestamp printed{1'774'000'000, 60};

Preferences shop() {
    Preferences preferences;
    preferences.shopName = "Harbour Lane Engine Works (invented)";
    preferences.shopAddress = "3 Harbour Lane\nSaltmarsh";
    return preferences;
}

SheetData dataOf(const Workbook& workbook, const Preferences& preferences = shop()) {
    const DisplayUnits units = naturalUnits(workbook);
    return sheetData(workbook, compute(workbook, units), preferences, units, printed);
}

// A block of `bores` bores in line, read as found and when finished, with long names.
Workbook longNamed(int bores) {
    Workbook workbook = inchBlock(bores);
    workbook.job.customer = "The Society for the Keeping of Very Old Pumping Engines of the Lower "
                            "Estuary and its Neighbouring Parishes";
    workbook.job.engine = "A long engine with a name that no plate was ever wide enough to hold";
    workbook.job.serial = "0123456789-ABCDEFGHIJKLMNOPQRSTUVWXYZ-0123456789";
    workbook.job.reason = "It smokes, knocks, drinks oil and will not start on a cold morning";
    addWornLimits(workbook, "3.504", "3", "2");
    const std::string found = addSurvey(workbook, SurveyKind::asFound, "as found");
    const std::string last = addSurvey(workbook, SurveyKind::final, "final");
    for (const auto& survey : {found, last}) {
        findSurvey(workbook, survey)->header.gauge.gear = tenthDialAndRing();
        findSurvey(workbook, survey)->header.gauge.stoodTogether = true;
    }
    for (int bore = 1; bore <= bores; ++bore) {
        typeShape(workbook, found, bore, [&](double depth, const std::string& axis) {
            return 4.5 - depth + (axis == "B" ? 0.7 : 0);
        });
        typeShape(workbook, last, bore, [](double, const std::string&) { return 6.1; });
    }
    return workbook;
}

std::string ran(const QString& program, const QStringList& arguments) {
    QProcess process;
    process.start(program, arguments);
    if (!process.waitForFinished(30000)) return "could not run " + program.toStdString();
    return process.readAllStandardOutput().toStdString();
}

class SheetPdf : public testing::Test {
protected:
    std::string textOf(const SheetData& data, Paper paper) {
        return ran("pdftotext", {"-layout", written(data, paper), "-"});
    }
    QString written(const SheetData& data, Paper paper) {
        const auto pdf = renderSheetPdf(data, paper);
        EXPECT_TRUE(pdf.has_value());
        QFile file(folder.filePath("sheet.pdf"));
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        if (pdf) file.write(*pdf);
        return file.fileName();
    }
    QTemporaryDir folder;
};

TEST_F(SheetPdf, SaysWhatTheCustomerHasToKnow) {
    // Sentences may break over lines: compared as words.
    const std::string text = QString::fromStdString(textOf(dataOf(demo::saltmarsh()), Paper::a4))
                                 .simplified()
                                 .toStdString();
    for (const char* part : {"Harbour Lane Engine Works",
                             "3 Harbour Lane",
                             "Invented demonstration",
                             "SALT-0006",
                             "Saltmarsh V6",
                             "A. Customer",
                             "3.4243",
                             "3.4240",
                             "3.4410",
                             "outside",
                             "within",
                             "A two-point gauge does not see an odd number of lobes.",
                             "The engine maker's manual rules over this sheet.",
                             "no correction was made",
                             "called with 5 % risk",
                             "setting ring 3.4400",
                             "Signed",
                             "Struck out, bore 6",
                             "read 4 minutes after its pass, still warm",
                             "page 1 of"})
        EXPECT_NE(text.find(part), std::string::npos) << "the sheet does not say: " << part;
}

TEST_F(SheetPdf, HoldsEveryReadingAsTypedAndAsADiameter) {
    const std::string text = textOf(dataOf(demo::rushmere()), Paper::letter);
    // A millimetre typed among micrometres keeps its unit; 73.700 less a reading of 97 µm, larger
    // reading minus, is 73.603.
    for (const char* part :
         {"0.030 mm", "97", "73.603", "µm", "no wall", "larger bore reads minus"})
        EXPECT_NE(text.find(part), std::string::npos) << "the record does not say: " << part;
}

TEST_F(SheetPdf, EmbedsItsFontsAndCarriesItsTitle) {
    const QString path = written(dataOf(demo::saltmarsh()), Paper::a4);
    const QString fonts = QString::fromStdString(ran("pdffonts", {path}));
    const QStringList lines = fonts.split('\n', Qt::SkipEmptyParts);
    ASSERT_GT(lines.size(), 2) << fonts.toStdString();
    for (const QString& line : lines.mid(2)) {
        // Columns: … emb sub uni object; the first "yes" is of embedding.
        EXPECT_TRUE(line.contains(" yes ")) << line.toStdString();
    }
    EXPECT_NE(ran("pdfinfo", {path}).find("Bore sheet, Saltmarsh V6"), std::string::npos);
}

// The demo on one page for the customer and few for the shop; every page is counted.
TEST(Sheet, CountsItsPages) {
    for (const Paper paper : {Paper::a4, Paper::letter}) {
        const SheetData data = dataOf(demo::saltmarsh());
        const int pages = sheetPageCount(data, paper);
        EXPECT_EQ(pages, static_cast<int>(renderSheetPages(data, paper, 1).size()));
        EXPECT_GE(pages, 2);
        EXPECT_LE(pages, 7);
    }
}

// What is drawn on a page, as texts.
std::vector<TextLog> textsOf(const SheetData& data, Paper paper) {
    std::vector<TextLog> pages;
    for (const SheetPageContent& page : composeSheet(data, paper)) {
        const QSize size = sheetSize(paper).toSize();
        QImage image(size / 4, QImage::Format_RGB32);
        QPainter painter(&image);
        TextLog log;
        drawSheetPage(painter, page, &log);
        pages.push_back(std::move(log));
    }
    return pages;
}

class SheetRoom : public testing::TestWithParam<std::tuple<int, Paper>> {};

TEST_P(SheetRoom, DrawsNothingOffThePageNorOverAnotherText) {
    const auto& [bores, paper] = GetParam();
    const QRectF page(QPointF(), sheetSize(paper));
    int number = 0;
    for (const TextLog& log : textsOf(dataOf(longNamed(bores)), paper)) {
        ++number;
        ASSERT_FALSE(log.empty());
        for (std::size_t i = 0; i < log.size(); ++i) {
            EXPECT_TRUE(page.adjusted(100, 100, -100, -80).contains(log[i].ink))
                << "page " << number << ": \"" << log[i].text.toStdString() << "\" is off the page";
            for (std::size_t j = 0; j < i; ++j) {
                // The letters' own height is less than their line's.
                const QRectF a = log[i].ink.adjusted(2, 7, -2, -7);
                EXPECT_FALSE(a.intersects(log[j].ink.adjusted(2, 7, -2, -7)))
                    << "page " << number << ": \"" << log[i].text.toStdString() << "\" over \""
                    << log[j].text.toStdString() << "\"";
            }
        }
    }
}

TEST_P(SheetRoom, KeepsTheCustomersPartOnPageOne) {
    const auto& [bores, paper] = GetParam();
    const auto pages = textsOf(dataOf(longNamed(bores)), paper);
    const auto says = [](const TextLog& log, const QString& text) {
        return std::ranges::any_of(log, [&](const DrawnText& t) { return t.text == text; });
    };
    EXPECT_TRUE(says(pages.front(), "Signed")) << "the place to sign is not on page one";
    EXPECT_TRUE(says(pages[1], "How far these figures can be trusted"));
    EXPECT_TRUE(std::ranges::any_of(
        pages, [&](const TextLog& log) { return says(log, "the shop's record"); }));
    // Each figure has its doubt, or the head has the largest of each column.
    EXPECT_EQ(says(pages.front(), QString::fromUtf8("± at most")), bores > 8);
}

TEST_P(SheetRoom, IsWrittenAsPictures) {
    const auto& [bores, paper] = GetParam();
    const QString folder = QStringLiteral(BOREWRIGHT_BUILD_DIR "/pictures");
    QDir().mkpath(folder);
    const auto pages = renderSheetPages(dataOf(longNamed(bores)), paper, 5);
    for (std::size_t i = 0; i < pages.size(); ++i)
        EXPECT_TRUE(pages[i].save(QStringLiteral("%1/sheet-%2-%3-%4.png")
                                      .arg(folder)
                                      .arg(bores)
                                      .arg(paper == Paper::a4 ? "a4" : "letter")
                                      .arg(i + 1)));
}

INSTANTIATE_TEST_SUITE_P(Bores, SheetRoom,
                         testing::Combine(testing::Values(1, 2, 6, 16),
                                          testing::Values(Paper::a4, Paper::letter)));

// Compared exactly; where it differs, what was drawn stands beside in the build folder.
TEST(Sheet, LooksAsItDid) {
    const auto pages = renderSheetPages(dataOf(demo::saltmarsh()), Paper::a4, 4);
    const QString folder = QStringLiteral(BOREWRIGHT_BUILD_DIR "/pictures");
    QDir().mkpath(folder);
    for (std::size_t i = 0; i < 2; ++i) {
        const QString name = QStringLiteral("sheet-%1.png").arg(i + 1);
        const QString drawn = folder + "/" + name;
        ASSERT_TRUE(pages[i].save(drawn));
        const QImage golden(QStringLiteral(BOREWRIGHT_SOURCE_DIR "/tests/app/golden/") + name);
        EXPECT_EQ(golden.convertToFormat(QImage::Format_RGB32), pages[i])
            << "look at " << drawn.toStdString() << "; if it is right, copy it to tests/app/golden";
    }
}

class SheetPageTest : public testing::Test {
protected:
    SheetPageTest()
        : bench(demo::saltmarsh())
        , context{bench.document, bench.selection, bench.preferences,
                  bench.dialogs,  bench.sounds,    disk}
        , page(context) {
        disk.makeFolder("/shop");
        page.resize(1100, 780);
        page.show();
        field = page.findChild<SummaryField*>();
    }
    QPushButton* button(const QString& text) {
        for (QPushButton* found : page.findChildren<QPushButton*>())
            if (found->text().remove('&').startsWith(text)) return found;
        ADD_FAILURE() << "no button " << text.toStdString();
        return nullptr;
    }
    bool said(const QString& part) {
        return std::ranges::any_of(page.findChildren<QLabel*>(), [&](const QLabel* label) {
            return label->text().contains(part);
        });
    }

    Bench bench;
    MemoryFileSystem disk;
    PageContext context;
    SheetPage page;
    SummaryField* field = nullptr;
};

TEST_F(SheetPageTest, SentencesAreOneUndoStepOnLeaving) {
    const QString suggested = field->toPlainText();
    EXPECT_FALSE(suggested.isEmpty());
    field->selectAll();
    QTest::keyClicks(field, "Straight as a die. Run it in gently.");
    EXPECT_EQ(bench.document.undoStack().count(), 0) << "written before the field was left";
    field->commitNow();
    EXPECT_EQ(bench.document.undoStack().count(), 1);
    EXPECT_EQ(bench.document.workbook().sheet.summary, "Straight as a die. Run it in gently.");
    field->commitNow();
    EXPECT_EQ(bench.document.undoStack().count(), 1) << "leaving again changed something";
    bench.document.undoStack().undo();
    EXPECT_EQ(bench.document.workbook().sheet.summary, std::nullopt);
    EXPECT_EQ(field->toPlainText(), suggested);
}

TEST_F(SheetPageTest, AsSuggestedTakesTheOwnSentencesBack) {
    const QString suggested = field->toPlainText();
    field->setPlainText("Mine.");
    field->commitNow();
    button("As suggested")->click();
    EXPECT_EQ(bench.document.workbook().sheet.summary, std::nullopt);
    EXPECT_EQ(field->toPlainText(), suggested);
}

TEST_F(SheetPageTest, SavesThePdfByTheSaver) {
    bench.dialogs.answer = "/shop/job";
    button("Save PDF")->click();
    const auto content = disk.content("/shop/job.pdf");
    ASSERT_TRUE(content.has_value());
    EXPECT_EQ(content->substr(0, 5), "%PDF-");
    EXPECT_NE(content->find("%%EOF"), std::string::npos) << "the PDF has no end";
    EXPECT_TRUE(said("on the disk"));
}

TEST_F(SheetPageTest, AFullDiskIsToldAndTheOldSheetStays) {
    disk.put("/shop/job.pdf", "the sheet of last week");
    disk.limitBytes(100);
    bench.dialogs.answer = "/shop/job.pdf";
    button("Save PDF")->click();
    EXPECT_EQ(disk.content("/shop/job.pdf"), "the sheet of last week");
    EXPECT_TRUE(said("the disk is full")) << "nothing was said of the full disk";
    EXPECT_FALSE(said("on the disk:"));
}

TEST_F(SheetPageTest, IsWrittenAsAPicture) {
    QDir().mkpath(QStringLiteral(BOREWRIGHT_BUILD_DIR "/pictures"));
    EXPECT_TRUE(page.grab().save(QStringLiteral(BOREWRIGHT_BUILD_DIR "/pictures/sheet-page.png")));
}

TEST_F(SheetPageTest, EveryControlHasAName) {
    for (const QWidget* widget : page.findChildren<QWidget*>()) {
        if (widget->focusPolicy() == Qt::NoFocus || !widget->isVisible()) continue;
        const auto* shown = qobject_cast<const QPushButton*>(widget);
        EXPECT_TRUE(!widget->accessibleName().isEmpty() || shown != nullptr)
            << widget->metaObject()->className() << " has no name";
    }
}

} // namespace
} // namespace borewright
