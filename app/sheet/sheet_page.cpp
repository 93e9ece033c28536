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
        if (change == Change::everything) tell({}, false);
        markOld();
    });
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

SheetData SheetPage::data() const {
    const Document& document = m_context.document;
    return sheetData(document.workbook(), document.results(), m_context.preferences.value(),
                     document.units(), document.now());
}

void SheetPage::refresh() {
    m_old = false;
    const Document& document = m_context.document;
    m_paper->setPages(composeSheet(data(), paper()), paper());
    m_paper->setAccessibleDescription(
        sheetSentences(document.workbook(), document.results()).join(' '));
    m_papers->setCurrentIndex(paper() == Preferences::Paper::a4 ? 0 : 1);
    m_sentences->showData(
        sheetSentences(document.workbook(), document.results()).join(QStringLiteral("\n")));
    m_suggested->setEnabled(document.workbook().sheet.summary.has_value());
    const bool measured = std::ranges::any_of(
        document.results().surveys, [](const SurveyResult& survey) { return survey.measured > 0; });
    std::size_t odd = 0;
    for (const SurveyResult& survey : document.results().surveys)
        odd += survey.suspicions.size();
    m_next->setText(
        odd > 0
            ? tr("Readings that look like slips: %1. They would be printed as they stand; settle "
                 "them on Measure first (F9).")
                  .arg(odd)
        : measured
            ? tr("Read the sentences, change them if you would say it otherwise, then print.")
            : tr("Nothing has been measured yet. Measure first; the sheet fills itself."));
    fitWidth();
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
    const auto done = printSheet(printer, data(), paper());
    if (done)
        tell(tr("The sheet was given to the printer."), false);
    else
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
    if (done)
        tell(tr("The sheet is on the disk: %1").arg(path), false);
    else
        tell(tr("The sheet was not saved: %1.").arg(qs(done.error().message())), true);
}

} // namespace borewright
