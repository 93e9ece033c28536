// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/judge/judge_page.h"

#include "app/context/when_shown.h"

#include "app/judge/doubt_page.h"
#include "app/judge/doubt_text.h"
#include "app/judge/judge_words.h"
#include "app/judge/verdict_model.h"
#include "app/judge/verdict_table.h"
#include "app/judge/verdict_text.h"
#include "app/pictures/block_sections_view.h"
#include "app/pictures/depth_map_view.h"
#include "app/pictures/reading_words.h"
#include "app/pictures/section_view.h"
#include "app/pictures/strip_view.h"
#include "core/results/doubt_words.h"

#include <QCheckBox>
#include <QClipboard>
#include <QComboBox>
#include <QEvent>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QSplitter>
#include <QTabWidget>
#include <QVBoxLayout>

namespace borewright {

JudgePage::JudgePage(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_context(context)
    , m_model(new VerdictModel(context.document, context.selection, this))
    , m_next(new QLabel(this))
    , m_summary(new QLabel(this))
    , m_called(new QLabel(this))
    , m_chosen(new QLabel(this))
    , m_plate(new QLabel(this))
    , m_surveys(new QComboBox(this))
    , m_copy(new QPushButton(tr("Copy table"), this))
    , m_table(new VerdictTable(*m_model, this))
    , m_pictures(new QTabWidget(this)) {
    build();
    connectParts();
    refreshSurveys();
    refresh();
}

void JudgePage::build() {
    auto* split = new QSplitter(Qt::Vertical, this);
    split->addWidget(m_table);
    split->addWidget(buildPictures());
    split->setStretchFactor(0, 0);
    split->setStretchFactor(1, 1);
    split->setSizes({230, 470});
    split->setChildrenCollapsible(false);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(16, 12, 16, 12);
    layout->setSpacing(10);
    layout->addWidget(buildHead());
    layout->addWidget(split, 1);
}

QWidget* JudgePage::buildHead() {
    auto* head = new QWidget(this);
    QFont large = font();
    large.setPointSizeF(large.pointSizeF() > 0 ? large.pointSizeF() * 1.25 : 13);
    m_next->setFont(large);
    for (QLabel* label : {m_next, m_summary, m_called, m_chosen, m_plate}) {
        label->setWordWrap(true);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    }
    m_next->setAccessibleName(tr("What to do next"));
    m_summary->setAccessibleName(tr("What the survey says"));
    m_called->setAccessibleName(tr("How the verdicts were called"));
    m_chosen->setAccessibleName(tr("The chosen bore"));
    m_plate->setAccessibleName(tr("What does not compare"));
    auto* surveyLabel = new QLabel(tr("&Survey"), head);
    surveyLabel->setBuddy(m_surveys);
    m_surveys->setAccessibleName(tr("Survey"));
    m_surveys->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_surveys->setMinimumContentsLength(18);
    m_copy->setToolTip(tr("Copies the table as text, for a letter or a spreadsheet"));

    auto* row = new QHBoxLayout;
    row->addWidget(m_next, 1);
    row->addWidget(surveyLabel);
    row->addWidget(m_surveys);
    row->addWidget(m_copy);
    auto* layout = new QVBoxLayout(head);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addLayout(row);
    layout->addWidget(m_summary);
    layout->addWidget(m_called);
    layout->addWidget(m_chosen);
    layout->addWidget(m_plate);
    return head;
}

QWidget* JudgePage::buildPictures() {
    auto* strip = new StripView(m_context.document, m_context.selection, m_pictures);
    auto* map = new DepthMapView(m_context.document, m_context.selection, m_pictures);
    m_pictures->setAccessibleName(tr("Pictures"));
    m_pictures->setDocumentMode(true);
    m_pictures->addTab(buildBore(), tr("&Bore"));
    m_pictures->addTab(buildAllBores(), tr("&All bores"));
    m_pictures->addTab(strip, tr("S&trip"));
    m_pictures->addTab(map, tr("&Map"));
    m_pictures->addTab(new DoubtPage(m_context.document, m_context.selection, m_pictures),
                       tr("&Doubt"));
    connect(strip, &StripView::activated, this, &JudgePage::goTo);
    connect(map, &DepthMapView::activated, this, &JudgePage::goTo);
    return m_pictures;
}

// The two ways of looking at a bore side by side: against its limits, and about its own mean, where
// an oversize does not hide the shape.
QWidget* JudgePage::buildBore() {
    auto* both = new QWidget(m_pictures);
    auto* layout = new QHBoxLayout(both);
    layout->setContentsMargins(0, 8, 0, 0);
    layout->setSpacing(24);
    for (const auto mode : {SectionOptions::Mode::trueSize, SectionOptions::Mode::aboutMean}) {
        const bool trueSize = mode == SectionOptions::Mode::trueSize;
        auto* view = new SectionView(m_context.document, m_context.selection, both);
        view->setMode(mode);
        auto* title = new QLabel(
            trueSize ? tr("True size, against the limits") : tr("Shape, about its own mean"), both);
        title->setBuddy(view);
        title->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
        auto* column = new QVBoxLayout;
        column->addWidget(title);
        column->addWidget(view, 1);
        layout->addLayout(column, 1);
        connect(view, &SectionView::activated, this, &JudgePage::goTo);
    }
    return both;
}

QWidget* JudgePage::buildAllBores() {
    auto* page = new QWidget(m_pictures);
    auto* view = new BlockSectionsView(m_context.document, m_context.selection, page);
    auto* shape = new QCheckBox(tr("About its o&wn mean"), page);
    auto* earlier = new QCheckBox(tr("&Earlier surveys behind"), page);
    earlier->setChecked(true);
    auto* row = new QHBoxLayout;
    row->addWidget(shape);
    row->addWidget(earlier);
    row->addStretch(1);
    auto* layout = new QVBoxLayout(page);
    layout->setContentsMargins(0, 8, 0, 0);
    layout->addLayout(row);
    layout->addWidget(view, 1);
    connect(shape, &QCheckBox::toggled, view, [view](bool on) {
        view->setMode(on ? SectionOptions::Mode::aboutMean : SectionOptions::Mode::trueSize);
    });
    connect(earlier, &QCheckBox::toggled, view, &BlockSectionsView::setEarlierShown);
    connect(view, &BlockSectionsView::activated, this, &JudgePage::goToReading);
    return page;
}

void JudgePage::connectParts() {
    auto* whenShown = new WhenShown(this, [this](Change change) {
        if (change == Change::everything || change == Change::record) refreshSurveys();
        refresh();
    });
    connect(&m_context.document, &Document::changed, whenShown, &WhenShown::follow);
    connect(&m_context.selection, &Selection::changed, whenShown,
            [whenShown] { whenShown->follow(Change::readings); });
    connect(m_surveys, &QComboBox::activated, this, [this](int index) {
        m_context.selection.setSurvey(m_surveys->itemData(index).toString().toStdString());
    });
    connect(m_copy, &QPushButton::clicked, this, &JudgePage::copyTable);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentChanged, this,
            &JudgePage::chooseRow);
    connect(m_table, &VerdictTable::openWanted, this, &JudgePage::openCell);
    connect(m_table, &VerdictTable::copyWanted, this, &JudgePage::copyTable);
}

void JudgePage::refreshSurveys() {
    const QSignalBlocker quiet(m_surveys);
    m_surveys->clear();
    for (const Survey& survey : m_context.document.workbook().surveys)
        m_surveys->addItem(QString::fromStdString(survey.header.name),
                           QString::fromStdString(survey.header.id));
    m_surveys->setEnabled(m_surveys->count() > 0);
}

void JudgePage::refresh() {
    const Document& document = m_context.document;
    const std::string& id = m_context.selection.survey();
    const SurveyResult* survey = findResult(document.results(), id);
    m_model->refresh();
    m_table->setColumnHidden(columns::toGo, !m_model->hasToGo());
    // The room is needed: where all is read, there is nothing to say of it.
    m_table->setColumnHidden(columns::read, !m_model->hasUnread());
    m_table->setColumnHidden(columns::shape, !m_model->hasDoubt());
    m_table->fitColumns();
    refreshLines(survey);
    m_copy->setEnabled(m_model->rowCount() > 0);
    m_surveys->setCurrentIndex(m_surveys->findData(QString::fromStdString(id)));
    const int row = m_model->rowOf(m_context.selection.bore());
    if (row >= 0 && m_table->currentIndex().row() != row)
        m_table->setCurrentIndex(
            m_model->index(row, std::max(0, m_table->currentIndex().column())));
    if (row < 0) m_table->clearSelection();
}

void JudgePage::say(QLabel& label, const QString& text) {
    label.setText(text);
    label.setVisible(!text.isEmpty());
}

void JudgePage::refreshLines(const SurveyResult* survey) {
    const Document& document = m_context.document;
    const BoreResult* bore =
        survey != nullptr ? findBoreResult(*survey, m_context.selection.bore()) : nullptr;
    m_next->setText(judge_words::nextStep(document.workbook(), survey, document.units()));
    say(*m_summary, judge_words::summary(survey));
    say(*m_called, survey != nullptr ? qs(calledWords(*survey, document.units())) : QString());
    say(*m_chosen, bore != nullptr ? doubt_text::bore(*bore) : QString());
    say(*m_plate, judge_words::plateWarning(document.workbook(), m_context.selection.survey()));
}

void JudgePage::chooseRow(const QModelIndex& current) {
    if (const BoreResult* bore = m_model->boreAt(current.row()))
        m_context.selection.setBore(bore->bore);
}

void JudgePage::openCell(const QModelIndex& index) {
    const BoreResult* bore = m_model->boreAt(index.row());
    if (bore == nullptr) return;
    if (const auto station = verdict_text::stationOf(*bore, index.column())) goTo(*station);
}

void JudgePage::goTo(const Station& station) {
    m_context.selection.setStation(station);
    emit goToReading();
}

void JudgePage::copyTable() {
    QGuiApplication::clipboard()->setText(m_model->asText());
}

void JudgePage::changeEvent(QEvent* event) {
    if (event->type() == QEvent::PaletteChange) {
        m_model->setPalette(palette());
    }
    QWidget::changeEvent(event);
}

} // namespace borewright
