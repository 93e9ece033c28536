// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/jobs/jobs_list.h"

#include "app/fields/ink.h"
#include "app/jobs/jobs_table.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDir>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollBar>
#include <QStackedLayout>
#include <QVBoxLayout>

#include <algorithm>

namespace borewright {
namespace {

const QString listKind = QStringLiteral("list");

struct Found {
    int count = 0;
    std::vector<LedgerRow> rows;
};

Result<Found> findFirst(LedgerStore& store, const LedgerQuestion& question) {
    auto rows = store.find(question);
    if (!rows) return tl::unexpected(rows.error());
    Found found{static_cast<int>(rows->size()), std::move(*rows)};
    if (found.count < JobsModel::pageRows) return found;
    const auto count = store.count(question.text);
    if (!count) return tl::unexpected(count.error());
    found.count = std::max(found.count, static_cast<int>(*count));
    return found;
}

} // namespace

JobsList::JobsList(LedgerClerk& clerk, LedgerSettingsStore& settings, QWidget* parent)
    : QWidget(parent)
    , m_clerk(clerk)
    , m_settings(settings)
    , m_model(new JobsModel(this))
    , m_filter(new QLineEdit(this))
    , m_sortedBy(new QComboBox(this))
    , m_down(new QCheckBox(tr("latest or greatest first"), this))
    , m_units(new QComboBox(this))
    , m_count(new QLabel(this))
    , m_stack(new QStackedLayout)
    , m_table(new JobsTable(*m_model, this))
    , m_empty(new QLabel(this))
    , m_place(new QLabel(this)) {
    build();
    connectParts();
    followUnits();
    showSort();
}

void JobsList::build() {
    m_table->installEventFilter(this);
    m_empty->setWordWrap(true);
    m_empty->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_empty->setMargin(24);
    m_empty->setTextFormat(Qt::PlainText);
    m_stack->addWidget(m_table);
    m_stack->addWidget(m_empty);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 12, 0, 0);
    column->addLayout(makeHead());
    column->addLayout(m_stack, 1);
    column->addLayout(makeFoot());
}

QLayout* JobsList::makeHead() {
    m_filter->setPlaceholderText(tr("Any part of customer, engine, serial number or file"));
    m_filter->setAccessibleName(tr("Find"));
    m_filter->setClearButtonEnabled(true);
    m_filter->installEventFilter(this);
    for (const LedgerColumn column : JobsModel::columns())
        m_sortedBy->addItem(JobsModel::nameOf(column));
    m_sortedBy->setAccessibleName(tr("Sorted by"));
    m_units->addItems({tr("as each job"), tr("inches"), tr("millimetres")});
    m_units->setAccessibleName(tr("Sizes in"));
    auto* row = new QHBoxLayout;
    row->setSpacing(8);
    const auto add = [&](const QString& text, QWidget* control, int stretch) {
        auto* label = new QLabel(text, this);
        label->setBuddy(control);
        row->addWidget(label);
        row->addWidget(control, stretch);
    };
    add(tr("&Find"), m_filter, 1);
    add(tr("&Sorted by"), m_sortedBy, 0);
    row->addWidget(m_down);
    add(tr("S&izes in"), m_units, 0);
    return row;
}

QLayout* JobsList::makeFoot() {
    m_count->setAccessibleName(tr("Jobs found"));
    m_place->setTextFormat(Qt::PlainText);
    m_place->setForegroundRole(QPalette::PlaceholderText);
    m_place->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    m_place->setAccessibleName(tr("File of the chosen job"));
    auto* open = new QPushButton(tr("&Open the workbook"), this);
    auto* exported = new QPushButton(tr("&Export …"), this);
    connect(open, &QPushButton::clicked, this, &JobsList::openCurrent);
    connect(exported, &QPushButton::clicked, this, &JobsList::exportAsked);
    auto* row = new QHBoxLayout;
    row->addWidget(m_count);
    row->addWidget(m_place, 1);
    row->addWidget(exported);
    row->addWidget(open);
    return row;
}

void JobsList::connectParts() {
    connect(m_filter, &QLineEdit::textChanged, this, [this] { ask(false); });
    connect(m_model, &JobsModel::pageWanted, this, &JobsList::askPage);
    connect(m_table->horizontalHeader(), &QHeaderView::sectionClicked, this, &JobsList::sortBy);
    connect(m_sortedBy, &QComboBox::activated, this, [this](int column) {
        m_sort = JobsModel::columns().at(static_cast<std::size_t>(column));
        showSort();
        ask(true);
    });
    connect(m_down, &QCheckBox::clicked, this, [this](bool down) {
        m_descending = down;
        showSort();
        ask(true);
    });
    connect(m_units, &QComboBox::activated, this, [this](int units) {
        LedgerSettings chosen = m_settings.value();
        chosen.units = static_cast<LedgerSettings::Units>(units);
        m_settings.set(chosen);
    });
    connect(&m_settings, &LedgerSettingsStore::changed, this, &JobsList::followUnits);
    connect(m_table, &QTableView::doubleClicked, this, &JobsList::openCurrent);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentChanged, this,
            &JobsList::showPlace);
    connect(m_model, &QAbstractItemModel::dataChanged, this, &JobsList::showPlace);
}

LedgerQuestion JobsList::question() const {
    return {m_filter->text().toStdString(), m_sort, m_descending, -1};
}

void JobsList::refresh() {
    ask(true);
}

void JobsList::ask(bool keepsPlace) {
    LedgerQuestion asked = question();
    asked.most = JobsModel::pageRows;
    m_asked = true;
    if (!keepsPlace) m_openNext = false; // he types on
    m_clerk.ask<Found>(
        listKind, [asked](LedgerStore& store) { return findFirst(store, asked); },
        [this, keepsPlace](const Found& found) { show(found.count, found.rows, keepsPlace); });
}

void JobsList::askPage(int page) {
    LedgerQuestion asked = question();
    asked.most = JobsModel::pageRows;
    asked.skip = static_cast<std::int64_t>(page) * JobsModel::pageRows;
    m_clerk.ask<std::vector<LedgerRow>>(
        QStringLiteral("page %1").arg(page),
        [asked](LedgerStore& store) { return store.find(asked); },
        [this, page, answer = m_answer](const std::vector<LedgerRow>& rows) {
            if (answer == m_answer) m_model->setPage(page, rows);
        });
}

void JobsList::show(int count, std::vector<LedgerRow> rows, bool keepsPlace) {
    ++m_answer;
    const LedgerRow* chosen = m_model->rowAt(m_table->currentIndex().row());
    const std::string file = chosen != nullptr ? chosen->file : std::string();
    const int scrolled = m_table->verticalScrollBar()->value();
    m_model->begin(count, std::move(rows));
    const int row = keepsPlace && !file.empty() ? m_model->rowOf(file) : -1;
    m_asked = false;
    if (count > 0) m_table->setCurrentIndex(m_model->index(std::max(0, row), 0));
    m_count->setText(count == 1 ? tr("1 job") : tr("%L1 jobs").arg(count));
    if (row >= 0) m_table->verticalScrollBar()->setValue(scrolled);
    setObstacle({});
    showPlace();
    if (std::exchange(m_openNext, false)) openCurrent();
}

bool JobsList::isNearTop() const {
    return m_table->currentIndex().row() < JobsModel::pageRows;
}

void JobsList::setObstacle(const QString& sentence) {
    const bool nothing = m_model->rowCount() == 0;
    if (!sentence.isEmpty()) m_asked = m_openNext = false; // no answer comes
    if (!sentence.isEmpty())
        m_empty->setText(sentence);
    else if (m_filter->text().trimmed().isEmpty())
        m_empty->setText(tr("No job is in the ledger yet. Jobs come in by themselves as they are "
                            "saved. For those that are there already, press \"Take in a folder …\" "
                            "below and choose the folder that your workbooks lie in."));
    else
        m_empty->setText(tr("No job holds %1. Any part of customer, engine, serial number or file "
                            "name will do; each word must be in one of them.")
                             .arg(m_filter->text().simplified()));
    m_empty->setAccessibleName(m_empty->text());
    m_stack->setCurrentWidget(nothing || !sentence.isEmpty() ? static_cast<QWidget*>(m_empty)
                                                             : m_table);
}

// A head clicked again turns the order round.
void JobsList::sortBy(int column) {
    const LedgerColumn clicked = JobsModel::columns().at(static_cast<std::size_t>(column));
    m_descending = clicked == m_sort ? !m_descending : clicked == LedgerColumn::opened;
    m_sort = clicked;
    showSort();
    ask(true);
}

void JobsList::showSort() {
    const auto& columns = JobsModel::columns();
    const int column = static_cast<int>(std::ranges::find(columns, m_sort) - columns.begin());
    m_sortedBy->setCurrentIndex(column);
    m_down->setChecked(m_descending);
    m_table->horizontalHeader()->setSortIndicator(column, m_descending ? Qt::DescendingOrder
                                                                       : Qt::AscendingOrder);
}

void JobsList::showPlace() {
    const LedgerRow* job = m_model->rowAt(m_table->currentIndex().row());
    const QString path =
        job != nullptr ? QDir::toNativeSeparators(QString::fromStdString(job->file)) : QString();
    m_place->setText(m_place->fontMetrics().elidedText(path, Qt::ElideMiddle, m_place->width()));
    m_place->setToolTip(path);
}

// The job that is meant is the one of the list as it was asked for, not of the one before.
void JobsList::openCurrent() {
    if (m_asked) {
        m_openNext = true;
        return;
    }
    const LedgerRow* job = m_model->rowAt(m_table->currentIndex().row());
    if (job != nullptr) emit openAsked(QString::fromStdString(job->file));
}

void JobsList::followUnits() {
    const LedgerSettings::Units units = m_settings.value().units;
    m_units->setCurrentIndex(static_cast<int>(units));
    m_model->setUnits(units);
}

void JobsList::focusFilter() {
    m_filter->setFocus();
    m_filter->selectAll();
}

// Enter opens from either place; down leads from what is typed into the list, up leads back.
bool JobsList::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
    const auto* key = static_cast<QKeyEvent*>(event);
    const bool enter = key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter;
    if (enter) {
        openCurrent();
        return true;
    }
    if (watched == m_filter && key->key() == Qt::Key_Down) {
        m_table->setFocus();
        return true;
    }
    if (watched == m_table && key->key() == Qt::Key_Up && m_table->currentIndex().row() <= 0) {
        m_filter->setFocus();
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

void JobsList::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) m_model->setPalette(palette());
}

} // namespace borewright
