// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/sheet/sheet_page.h"

#include "app/fields/ink.h"
#include "app/pictures/reading_words.h"
#include "app/sheet/sheet_pdf.h"
#include "app/sheet/sheet_preview.h"
#include "app/sheet/summary_field.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPageSize>
#include <QPrinter>
#include <QPushButton>
#include <QRegularExpression>
#include <QScrollArea>
#include <QScrollBar>
#include <QShortcut>
#include <QVBoxLayout>

#include <algorithm>

namespace borewright {

SheetPage::SheetPage(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_context(context)
    , m_next(new QLabel(this))
    , m_told(new QLabel(this))
    , m_paper(new SheetPaper)
    , m_scroll(new QScrollArea(this))
    , m_sentences(new SummaryField(this))
    , m_suggested(new QPushButton(tr("&As suggested"), this))
    , m_sheets(new QComboBox(this))
    , m_papers(new QComboBox(this))
    , m_zoom(new QComboBox(this))
    , m_print(new QPushButton(tr("&Print…"), this))
    , m_save(new QPushButton(tr("Save P&DF…"), this)) {
    build();
    connectParts();
}

void SheetPage::build() {
    QFont large = font();
    large.setPointSizeF(large.pointSizeF() > 0 ? large.pointSizeF() * 1.25 : 13);
    m_next->setFont(large);
    m_next->setWordWrap(true);
    m_next->setAccessibleName(tr("What to do next"));
    m_scroll->setWidget(m_paper);
    m_scroll->setAlignment(Qt::AlignHCenter);
    m_scroll->setAccessibleName(tr("The sheet as it will be printed"));
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setFocusPolicy(Qt::StrongFocus);
    m_scroll->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
    auto* row = new QHBoxLayout;
    row->setSpacing(16);
    row->addWidget(m_scroll, 1);
    row->addWidget(buildControls());
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(16, 12, 16, 12);
    layout->setSpacing(10);
    layout->addWidget(m_next);
    layout->addLayout(row, 1);
}

QWidget* SheetPage::buildControls() {
    auto* side = new QWidget(this);
    side->setFixedWidth(280);
    auto* layout = new QVBoxLayout(side);
    layout->setContentsMargins(0, 0, 0, 0);
    const auto label = [&](const QString& text, QWidget* buddy) {
        auto* made = new QLabel(text, side);
        made->setBuddy(buddy);
        layout->addWidget(made);
        layout->addWidget(buddy);
    };
    m_sheets->setAccessibleName(tr("Which sheet"));
    m_sheets->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_sheets->setToolTip(tr("The sheet as it stands now, or one as it was printed"));
    label(tr("Sheet of &date"), m_sheets);
    layout->addSpacing(12);
    label(tr("&Sentences for the customer"), m_sentences);
    m_sentences->setMaximumHeight(190);
    m_suggested->setToolTip(tr("Puts the sentences back to what the readings suggest"));
    layout->addWidget(m_suggested);
    layout->addSpacing(12);
    m_papers->addItems({tr("A4"), tr("Letter")});
    m_papers->setAccessibleName(tr("Paper"));
    label(tr("Pap&er"), m_papers);
    m_zoom->addItem(tr("As wide as the window"), 0);
    m_zoom->addItem(tr("Paper's own size"), 100);
    m_zoom->addItem(tr("Twice the size"), 200);
    m_zoom->setAccessibleName(tr("Shown at"));
    label(tr("Sh&own at"), m_zoom);
    layout->addSpacing(12);
    m_print->setToolTip(tr("Prints these pages (Ctrl+P)"));
    m_save->setToolTip(tr("Writes these pages as a PDF file"));
    layout->addWidget(m_print);
    layout->addWidget(m_save);
    m_told->setWordWrap(true);
    m_told->setAccessibleName(tr("What became of it"));
    m_told->setTextInteractionFlags(Qt::TextSelectableByMouse);
    layout->addWidget(m_told);
    layout->addStretch(1);
    return side;
}

void SheetPage::connectParts() {
    connect(&m_context.document, &Document::changed, this, [this](Change change) {
        if (change == Change::everything) {
            tell({}, false);
            m_then.reset();
        }
        markOld();
    });
    connect(&m_context.document, &Document::noted, this, &SheetPage::listSheets);
    connect(m_sheets, &QComboBox::activated, this, &SheetPage::chooseSheet);
    connect(&m_context.preferences, &PreferencesStore::changed, this, &SheetPage::markOld);
    connect(m_sentences, &SummaryField::committed, this, [this](const QString& text) {
        // An emptied field is an answer too: no sentences.
        setSentences(text.trimmed().toStdString());
    });
    connect(m_suggested, &QPushButton::clicked, this, [this] { setSentences(std::nullopt); });
    connect(m_papers, &QComboBox::activated, this, &SheetPage::setPaper);
    connect(m_zoom, &QComboBox::activated, this, &SheetPage::fitWidth);
    connect(m_print, &QPushButton::clicked, this, &SheetPage::print);
    connect(m_save, &QPushButton::clicked, this, &SheetPage::savePdf);
    auto* shortcut = new QShortcut(QKeySequence::Print, this);
    shortcut->setContext(Qt::WidgetWithChildrenShortcut);
    connect(shortcut, &QShortcut::activated, this, &SheetPage::print);
}

// Composing waits until somebody looks.
void SheetPage::markOld() {
    m_old = true;
    if (isVisible()) refresh();
}

void SheetPage::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (m_old) refresh();
    fitWidth();
}

void SheetPage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    fitWidth();
}

// What was chosen stays chosen while others are printed.
void SheetPage::listSheets() {
    const Workbook& workbook = m_context.document.workbook();
    const auto places = printedSheets(workbook);
    const QVariant chosen = m_then ? m_sheets->currentData() : QVariant();
    m_sheets->clear();
    m_sheets->addItem(tr("As it stands now"));
    for (const std::size_t place : places)
        m_sheets->addItem(tr("Printed %1").arg(printedInWords(workbook.history.entries[place])),
                          QVariant::fromValue(static_cast<qulonglong>(place)));
    m_sheets->setCurrentIndex(chosen.isValid() ? std::max(0, m_sheets->findData(chosen)) : 0);
    m_sheets->setEnabled(!places.empty());
}

void SheetPage::chooseSheet() {
    m_then.reset();
    tell({}, false);
    const QVariant place = m_sheets->currentData();
    if (place.isValid()) {
        auto then = sheetOfThen(m_context.document.workbook(),
                                static_cast<std::size_t>(place.toULongLong()),
                                m_context.preferences.value());
        if (then)
            m_then = std::move(*then);
        else
            tell(tr("That sheet cannot be made again exactly: %1.").arg(qs(then.error().message())),
                 true);
    }
    refresh();
}

void SheetPage::noted(const SheetData& sheet) {
    Document& document = m_context.document;
    if (!m_then)
        document.noteSheet(printedSheet(document.workbook(), sheet, m_context.preferences.value(),
                                        document.units()));
}

SheetData SheetPage::data() const {
    if (m_then) return m_then->data;
    const Document& document = m_context.document;
    return sheetData(document.workbook(), document.results(), m_context.preferences.value(),
                     document.units(), document.now());
}

void SheetPage::refresh() {
    m_old = false;
    const SheetData sheet = data();
    m_paper->setPages(composeSheet(sheet, paper()), paper());
    m_paper->setAccessibleDescription(sheet.sentences.join(' '));
    m_papers->setCurrentIndex(paper() == Preferences::Paper::a4 ? 0 : 1);
    listSheets();
    // The sentences of a sheet printed are not to be changed.
    m_sentences->showData(sheet.sentences.join(QStringLiteral("\n")));
    m_sentences->setReadOnly(m_then.has_value());
    m_suggested->setEnabled(!m_then && m_context.document.workbook().sheet.summary.has_value());
    m_next->setText(nextStep());
    fitWidth();
}

QString SheetPage::nextStep() const {
    if (m_then && m_then->reworded)
        return tr("What was measured and allowed when it was printed, worded by this version of "
                  "Borewright: the check code on the paper was another.");
    if (m_then)
        return tr("The sheet as it was printed, check code %1. Print it again, or go back to how "
                  "it "
                  "stands now.")
            .arg(m_then->data.code);
    const Results& results = m_context.document.results();
    std::size_t odd = 0;
    for (const SurveyResult& survey : results.surveys)
        odd += survey.suspicions.size();
    if (odd > 0)
        return tr("Readings that look like slips: %1. They would be printed as they stand; settle "
                  "them on Measure first (F9).")
            .arg(odd);
    const bool measured = std::ranges::any_of(
        results.surveys, [](const SurveyResult& survey) { return survey.measured > 0; });
    return measured
               ? tr("Read the sentences, change them if you would say it otherwise, then print.")
               : tr("Nothing has been measured yet. Measure first; the sheet fills itself.");
}

void SheetPage::fitWidth() {
    const int percent = m_zoom->currentData().toInt();
    if (percent == 0) {
        m_paper->setPageWidth(m_scroll->viewport()->width() - 34);
        return;
    }
    const double inches = sheetSize(paper()).width() / sheetDotsPerInch;
    m_paper->setPageWidth(static_cast<int>(inches * logicalDpiX() * percent / 100));
}

void SheetPage::setSentences(const std::optional<std::string>& text) {
    SheetText sheet = m_context.document.workbook().sheet;
    sheet.summary = text;
    if (text && qs(*text) == [&] {
            Workbook plain = m_context.document.workbook();
            plain.sheet.summary.reset();
            return sheetSentences(plain, m_context.document.results()).join('\n');
        }())
        sheet.summary.reset();
    const auto done = m_context.document.edit(SetSheetText{sheet}, tr("sentences of the sheet"));
    if (!done) tell(tr("The sentences were not kept: %1.").arg(qs(done.error().message())), true);
}

void SheetPage::setPaper(int index) {
    Preferences preferences = m_context.preferences.value();
    preferences.paper = index == 0 ? Preferences::Paper::a4 : Preferences::Paper::letter;
    m_context.preferences.set(preferences);
}

void SheetPage::tell(const QString& sentence, bool refused) {
    QPalette colours = palette();
    if (refused) colours.setColor(QPalette::WindowText, warningColour(palette()));
    m_told->setPalette(colours);
    m_told->setText(sentence);
}

void SheetPage::print() {
    m_sentences->commitNow();
    QPrinter printer(QPrinter::HighResolution);
    printer.setPageSize(
        QPageSize(paper() == Preferences::Paper::a4 ? QPageSize::A4 : QPageSize::Letter));
    if (!m_context.dialogs.setUpPrinter(this, printer)) return;
    // On paper stand whole doubts, not the quick ones of the preview.
    (void)m_context.document.settledResults();
    const SheetData sheet = data();
    const auto done = printSheet(printer, sheet, paper());
    if (done) {
        noted(sheet);
        tell(tr("The sheet was given to the printer. Its check code is %1.").arg(sheet.code),
             false);
    } else

        tell(tr("Not printed: %1.").arg(qs(done.error().message())), true);
}

void SheetPage::savePdf() {
    m_sentences->commitNow();
    (void)m_context.document.settledResults();
    const SheetData sheet = data();
    QString proposal = sheet.title;
    proposal.remove(QRegularExpression(QStringLiteral("[^\\w ,.()-]")));
    QString path = m_context.dialogs.fileToSave(
        this, tr("Save the sheet"), proposal + QStringLiteral(".pdf"), tr("PDF files (*.pdf)"));
    if (path.isEmpty()) return;
    if (!path.endsWith(QStringLiteral(".pdf"), Qt::CaseInsensitive)) path += ".pdf";
    const auto done = exportSheetPdf(m_context.files, path, sheet, paper());
    if (done) {
        noted(sheet);
        tell(tr("The sheet is on the disk: %1. Its check code is %2.").arg(path, sheet.code),
             false);
    } else

        tell(tr("The sheet was not saved: %1.").arg(qs(done.error().message())), true);
}

} // namespace borewright
