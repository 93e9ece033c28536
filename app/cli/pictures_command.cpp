// SPDX-License-Identifier: GPL-3.0-or-later
// borewright pictures: each page of the window as PNG, light and dark, without a display; and,
// where stones are recorded, the set-up of the hone in each bore.
#include "app/cli/commands.h"
#include "app/cli/common.h"
#include "app/cli/offscreen.h"
#include "app/pictures/hone_section.h"
#include "app/shell/window.h"
#include "app/shell/workshop.h"
#include "core/storage/saver.h"

#include <QApplication>
#include <QBuffer>

#include <ostream>

namespace borewright {
namespace {

constexpr QSize pictureSize(1280, 800);
constexpr QSize setUpSize(900, 700);

struct NamedPage {
    Page page;
    const char* name;
};
constexpr NamedPage pages[] = {{Page::block, "block"}, {Page::measure, "measure"},
                               {Page::judge, "judge"}, {Page::size, "size"},
                               {Page::hone, "hone"},   {Page::fit, "fit"},
                               {Page::sheet, "sheet"}};

// Answers no question: nobody is there.
class NoDialogs final : public Dialogs {
public:
    QString fileToOpen(QWidget*, const QString&, const QString&) override { return {}; }
    QString fileToSave(QWidget*, const QString&, const QString&, const QString&) override {
        return {};
    }
    bool setUpPrinter(QWidget*, QPrinter&) override { return false; }
};

class NoSounds final : public Sounds {
public:
    void kept() override {}
    void odd() override {}
    void refused() override {}
};

std::string pngOf(const QImage& image) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "PNG");
    return bytes.toStdString();
}

Result<void> writePicture(const CliOutside& outside, const std::string& file, const QImage& image) {
    if (const auto saved = save(outside.files, file, pngOf(image)); !saved)
        return tl::unexpected(saved.error().within(file));
    outside.out << "Wrote " << file << ".\n";
    return {};
}

// The search for these takes its time: none where no stone is there to plan with.
std::vector<HoneSectionData> setUpsOf(const Workbook& workbook) {
    if (workbook.hone.stones.empty()) return {};
    const DisplayUnits units = naturalUnits(workbook);
    const HoneOutlook outlook =
        honeOutlook(workbook, compute(workbook, units), units, {}, {}, false);
    std::vector<HoneSectionData> setUps;
    for (const BoreOutlook& bore : outlook.bores) {
        HoneSectionData data = honeSectionData(workbook, bore, units);
        if (!data.empty()) setUps.push_back(std::move(data));
    }
    return setUps;
}

Result<void> writeSetUps(const PicturesOptions& options, const CliOutside& outside,
                         const std::vector<HoneSectionData>& setUps, bool dark) {
    const QFont font = QApplication::font();
    const PictureStyle style = dark ? PictureStyle::darkScreen(font) : PictureStyle::light(font);
    for (const HoneSectionData& data : setUps) {
        const std::string file = options.folder + "/hone-bore-" + std::to_string(data.bore) +
                                 (dark ? "-dark.png" : ".png");
        const auto written = writePicture(outside, file, renderHoneSection(setUpSize, data, style));
        if (!written) return written;
    }
    return {};
}

} // namespace

Result<int> picturesCommand(const PicturesOptions& options, const CliOutside& outside) {
    auto workbook = loadNamed(outside.files, options.file);
    if (!workbook) return tl::unexpected(workbook.error());
    const auto survey = chooseSurvey(*workbook, options.survey);
    if (!survey && !options.survey.empty()) return tl::unexpected(survey.error());
    const std::string chosen = survey ? (*survey)->header.id : std::string();
    if (const auto made = outside.files.makeFolders(options.folder); !made)
        return refuse(options.folder, std::string(inWords(made.error())));

    const std::vector<HoneSectionData> setUps = setUpsOf(*workbook);
    const Offscreen offscreen;
    NoDialogs dialogs;
    NoSounds sounds;
    PreferencesStore preferences;
    for (const bool dark : {false, true}) {
        if (options.theme == (dark ? "light" : "dark")) continue;
        offscreen.useTheme(dark);
        Workshop workshop({outside.files, outside.clock, dialogs, sounds, preferences, {}, {}});
        workshop.document().open(*workbook);
        workshop.selection().setSurvey(chosen);
        Window window(workshop);
        for (const NamedPage& page : pages) {
            const std::string file =
                options.folder + "/" + page.name + (dark ? "-dark.png" : ".png");
            const auto written =
                writePicture(outside, file, window.picture(page.page, pictureSize));
            if (!written) return tl::unexpected(written.error());
        }
        if (const auto written = writeSetUps(options, outside, setUps, dark); !written)
            return tl::unexpected(written.error());
    }
    return exitWithin;
}

} // namespace borewright
