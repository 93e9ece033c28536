// SPDX-License-Identifier: GPL-3.0-or-later
// borewright pictures: each page of the window as PNG, light and dark, without a display.
#include "app/cli/commands.h"
#include "app/cli/common.h"
#include "app/cli/offscreen.h"
#include "app/shell/window.h"
#include "app/shell/workshop.h"
#include "core/storage/saver.h"

#include <QBuffer>

#include <ostream>

namespace borewright {
namespace {

constexpr QSize pictureSize(1280, 800);

struct NamedPage {
    Page page;
    const char* name;
};
constexpr NamedPage pages[] = {{Page::block, "block"},
                               {Page::measure, "measure"},
                               {Page::judge, "judge"},
                               {Page::size, "size"},
                               {Page::hone, "hone"},
                               {Page::fit, "fit"},
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

} // namespace

Result<int> picturesCommand(const PicturesOptions& options, const CliOutside& outside) {
    auto workbook = loadNamed(outside.files, options.file);
    if (!workbook) return tl::unexpected(workbook.error());
    const auto survey = chooseSurvey(*workbook, options.survey);
    if (!survey && !options.survey.empty()) return tl::unexpected(survey.error());
    const std::string chosen = survey ? (*survey)->header.id : std::string();
    if (const auto made = outside.files.makeFolders(options.folder); !made)
        return refuse(options.folder, std::string(inWords(made.error())));

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
            const auto saved =
                save(outside.files, file, pngOf(window.picture(page.page, pictureSize)));
            if (!saved) return tl::unexpected(saved.error().within(file));
            outside.out << "Wrote " << file << ".\n";
        }
    }
    return exitWithin;
}

} // namespace borewright
