// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/history_view.h"

#include "core/storage/saver.h"

#include <QAction>
#include <QClipboard>
#include <QDir>
#include <QFileInfo>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPointer>
#include <QPushButton>
#include <QTableView>
#include <QThreadPool>
#include <QVBoxLayout>

#include <algorithm>

namespace borewright {
namespace {

constexpr int readAfter_ms = 150;

} // namespace

HistoryView::HistoryView(Workshop& workshop, QWidget* parent)
    : QDialog(parent)
    , m_workshop(workshop)
    , m_filter(new QLineEdit(this))
    , m_sentence(new QLabel(this))
    , m_table(new QTableView(this))
    , m_csv(new QPushButton(tr("Save as CSV …"), this)) {
    setAttribute(Qt::WA_DeleteOnClose);
    setWindowTitle(tr("History"));
    build();
    m_soon.setSingleShot(true);
    m_soon.setInterval(readAfter_ms);
    connect(&m_soon, &QTimer::timeout, this, &HistoryView::read);
    connect(m_filter, &QLineEdit::textChanged, this, [this](const QString& typed) {
        m_written.clear();
        m_model.setFilter(typed);
        tell();
    });
    connect(m_csv, &QPushButton::clicked, this, &HistoryView::saveCsv);
    Document& document = workshop.document();
    connect(&document, &Document::changed, this, [this](Change change) {
        if (change != Change::units && change != Change::doubts) m_soon.start();
    });
    connect(&document, &Document::noted, &m_soon, [this] { m_soon.start(); });
    tell();
    read();
}

void HistoryView::build() {
    m_filter->setAccessibleName(tr("Find in the history"));
    m_filter->setPlaceholderText(tr("Find: a name, a bore, a value …"));
    m_filter->setClearButtonEnabled(true);
    m_csv->setAccessibleName(m_csv->text());
    m_csv->setAutoDefault(false);
    m_sentence->setWordWrap(true);
    m_table->setModel(&m_model);
    m_table->setAccessibleName(tr("History, newest first"));
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::ExtendedSelection);
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setTabKeyNavigation(false);
    m_table->setShowGrid(false);
    m_table->setWordWrap(false);
    m_table->setFrameShape(QFrame::NoFrame);
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 8);
    m_table->horizontalHeader()->setHighlightSections(false);
    m_table->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    m_table->horizontalHeader()->setStretchLastSection(true);
    const int letter = fontMetrics().averageCharWidth();
    const QList<int> letters{24, 13, 36, 33, 15};
    for (int i = 0; i < letters.size(); ++i)
        m_table->setColumnWidth(i, letters[i] * letter);
    auto* copyRows = new QAction(m_table);
    copyRows->setShortcut(QKeySequence::Copy);
    copyRows->setShortcutContext(Qt::WidgetShortcut);
    connect(copyRows, &QAction::triggered, this, &HistoryView::copy);
    m_table->addAction(copyRows);
    auto* top = new QHBoxLayout;
    top->addWidget(m_filter, 1);
    top->addWidget(m_csv);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(20, 20, 20, 18);
    column->setSpacing(12);
    column->addLayout(top);
    column->addWidget(m_sentence);
    column->addWidget(m_table, 1);
    resize(1160, 540);
}

// On a thread of the pool, from a copy: the way back through a long history takes a while.
void HistoryView::read() {
    if (m_reading) return m_soon.start();
    m_reading = true;
    const QPointer<HistoryView> still(this);
    QThreadPool::globalInstance()->start([still, workbook = m_workshop.document().workbook()] {
        auto lines =
            std::make_shared<HistoryModel::Prepared>(HistoryModel::prepare(historyLines(workbook)));
        QMetaObject::invokeMethod(
            QCoreApplication::instance(),
            [still, lines] {
                if (still) still->take(std::move(*lines));
            },
            Qt::QueuedConnection);
    });
}

void HistoryView::take(HistoryModel::Prepared lines) {
    m_reading = false;
    m_readOnce = true;
    m_model.setLines(std::move(lines));
    tell();
}

void HistoryView::tell() {
    QString text;
    if (!m_readOnce)
        text = tr("The history is being read.");
    else if (m_model.all() == 0)
        text = tr("Nothing has been changed yet and no sheet was printed. Every change will stand "
                  "here with its name and time; readings that are only added stand in their "
                  "survey.");
    else if (m_model.rowCount() == 0)
        text = tr("Nothing in the history holds all of these words.");
    else if (m_model.rowCount() == m_model.all())
        text = (m_model.all() == 1
                    ? tr("One change or printed sheet.")
                    : tr("%L1 changes and printed sheets, newest first.").arg(m_model.all())) +
               tr(" Readings that were only added stand in their survey.");
    else
        text = tr("%L1 of %L2.").arg(m_model.rowCount()).arg(m_model.all());
    if (!m_written.isEmpty()) text = m_written;
    m_sentence->setText(text);
    m_csv->setEnabled(m_model.rowCount() > 0);
}

QString HistoryView::told() const {
    return m_sentence->text();
}

// The chosen rows, a line each, with tabs between: as a spreadsheet takes them.
void HistoryView::copy() {
    QModelIndexList rows = m_table->selectionModel()->selectedRows();
    std::ranges::sort(rows, {}, [](const QModelIndex& row) { return row.row(); });
    QString text;
    for (const QModelIndex& row : rows) {
        QStringList cells;
        for (int column = 0; column < HistoryModel::columns; ++column)
            cells += row.siblingAtColumn(column).data().toString().simplified();
        text += cells.join(u'\t') + u'\n';
    }
    if (!text.isEmpty()) QGuiApplication::clipboard()->setText(text);
}

void HistoryView::saveCsv() {
    const QFileInfo file(m_workshop.autosaver().path());
    const QString proposed =
        file.path() + u'/' + file.completeBaseName() + QStringLiteral(", history.csv");
    QString path = m_workshop.dialogs().fileToSave(this, tr("Save the history"), proposed,
                                                   tr("Table (*.csv)"));
    if (path.isEmpty()) return;
    if (QFileInfo(path).suffix().isEmpty()) path += QStringLiteral(".csv");
    const auto saved = save(m_workshop.files(), path.toStdString(), historyCsv(m_model.shown()));
    m_written = saved ? tr("Written: %1").arg(QDir::toNativeSeparators(path))
                      : tr("%1 was not written: %2.")
                            .arg(QDir::toNativeSeparators(path),
                                 QString::fromStdString(saved.error().message()));
    tell();
}

} // namespace borewright
