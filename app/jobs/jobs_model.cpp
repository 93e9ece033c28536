// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/jobs/jobs_model.h"

#include "app/jobs/ledger_answers.h"
#include "app/pictures/verdict_mark.h"

#include <QDir>
#include <QFileInfo>

namespace borewright {
namespace {

bool isFigure(LedgerColumn column) {
    switch (column) {
    case LedgerColumn::bores:
    case LedgerColumn::before:
    case LedgerColumn::after:
    case LedgerColumn::oversize:
        return true;
    default:
        return false;
    }
}

// One line, whatever was typed.
QString shown(const std::string& text) {
    return QString::fromStdString(text).simplified();
}

QString spanText(const std::optional<SizeSpan>& span, const DisplayUnits& units) {
    if (!span) return {};
    const QString from = QString::fromStdString(formatSize(span->smallest, units));
    const QString to = QString::fromStdString(formatSize(span->largest, units));
    return from == to ? to : QStringLiteral("%1 – %2").arg(from, to);
}

QString symbolOf(const DisplayUnits& units) {
    const auto text = symbol(units.size);
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

} // namespace

const std::vector<LedgerColumn>& JobsModel::columns() {
    static const std::vector<LedgerColumn> all{
        LedgerColumn::opened,     LedgerColumn::customer, LedgerColumn::engine,
        LedgerColumn::serial,     LedgerColumn::bores,    LedgerColumn::before,
        LedgerColumn::after,      LedgerColumn::oversize, LedgerColumn::verdict,
        LedgerColumn::lastSurvey, LedgerColumn::file};
    return all;
}

QString JobsModel::nameOf(LedgerColumn column) {
    switch (column) {
    case LedgerColumn::opened:
        return tr("First survey");
    case LedgerColumn::lastSurvey:
        return tr("Last survey");
    case LedgerColumn::customer:
        return tr("Customer");
    case LedgerColumn::engine:
        return tr("Engine");
    case LedgerColumn::serial:
        return tr("Serial no.");
    case LedgerColumn::bores:
        return tr("Bores");
    case LedgerColumn::before:
        return tr("Before");
    case LedgerColumn::after:
        return tr("After");
    case LedgerColumn::oversize:
        return tr("Oversize");
    case LedgerColumn::verdict:
        return tr("Verdict");
    case LedgerColumn::file:
        return tr("File");
    }
    return {};
}

void JobsModel::begin(int count, std::vector<LedgerRow> first) {
    beginResetModel();
    m_count = count;
    m_pages.clear();
    m_wanted.clear();
    m_pages[0] = std::move(first);
    m_wanted.insert(0);
    endResetModel();
}

void JobsModel::setPage(int page, std::vector<LedgerRow> rows) {
    const int first = page * pageRows;
    if (rows.empty() || first >= m_count) return;
    const int last = std::min(m_count, first + static_cast<int>(rows.size())) - 1;
    m_pages[page] = std::move(rows);
    emit dataChanged(index(first, 0), index(last, columnCount() - 1));
}

void JobsModel::setUnits(LedgerSettings::Units units) {
    if (std::exchange(m_units, units) == units) return;
    if (m_count > 0) emit dataChanged(index(0, 0), index(m_count - 1, columnCount() - 1));
    emit headerDataChanged(Qt::Horizontal, 0, columnCount() - 1);
}

void JobsModel::setPalette(const QPalette& palette) {
    m_palette = palette;
    if (m_count > 0) emit dataChanged(index(0, 0), index(m_count - 1, columnCount() - 1));
}

const LedgerRow* JobsModel::rowAt(int row) const {
    const auto page = m_pages.find(row / pageRows);
    if (row < 0 || page == m_pages.end()) return nullptr;
    const auto place = static_cast<std::size_t>(row % pageRows);
    return place < page->second.size() ? &page->second[place] : nullptr;
}

int JobsModel::rowOf(const std::string& file) const {
    for (const auto& [page, rows] : m_pages)
        for (std::size_t i = 0; i < rows.size(); ++i)
            if (rows[i].file == file) return page * pageRows + static_cast<int>(i);
    return -1;
}

int JobsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : m_count;
}

int JobsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(columns().size());
}

DisplayUnits JobsModel::unitsOf(const LedgerRow& job) const {
    return chosenUnits(m_units).value_or(job.units);
}

QString JobsModel::textOf(const LedgerRow& job, LedgerColumn column) const {
    const DisplayUnits units = unitsOf(job);
    // The unit stands at the head where it is the same for all.
    const QString unit = m_units == LedgerSettings::Units::ofEachJob
                             ? QChar(QChar::Nbsp) + symbolOf(units)
                             : QString();
    switch (column) {
    case LedgerColumn::opened:
        return QString::fromStdString(dayOf(job.opened));
    case LedgerColumn::lastSurvey:
        return QString::fromStdString(dayOf(job.lastSurvey));
    case LedgerColumn::customer:
        return shown(job.customer);
    case LedgerColumn::engine:
        return job.invented && !shown(job.engine).contains(tr("(invented)"))
                   ? tr("%1 (invented)").arg(shown(job.engine))
                   : shown(job.engine);
    case LedgerColumn::serial:
        return shown(job.serial);
    case LedgerColumn::bores:
        return QString::number(job.bores);
    case LedgerColumn::before:
        return job.before ? spanText(job.before, units) + unit : QString();
    case LedgerColumn::after:
        return job.after ? spanText(job.after, units) + unit : QString();
    case LedgerColumn::oversize:
        return job.oversize ? QString::fromStdString(formatSize(*job.oversize, units)) + unit
                            : QString();
    case LedgerColumn::verdict:
        return verdictWord(job.verdict);
    case LedgerColumn::file:
        return QFileInfo(QString::fromStdString(job.file)).completeBaseName();
    }
    return {};
}

QString JobsModel::toolTipOf(const LedgerRow& job, LedgerColumn column) const {
    return column == LedgerColumn::file ? QDir::toNativeSeparators(QString::fromStdString(job.file))
                                        : textOf(job, column);
}

QVariant JobsModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const LedgerColumn column = columns().at(static_cast<std::size_t>(index.column()));
    if (role == Qt::TextAlignmentRole)
        return static_cast<int>((isFigure(column) ? Qt::AlignRight : Qt::AlignLeft) |
                                Qt::AlignVCenter);
    const LedgerRow* job = rowAt(index.row());
    if (job == nullptr) {
        const int page = index.row() / pageRows;
        if (role == Qt::DisplayRole && m_wanted.insert(page).second) emit pageWanted(page);
        if (role == Qt::DisplayRole && index.column() == 0) return QStringLiteral("…");
        return {};
    }
    switch (role) {
    case Qt::DisplayRole:
        return textOf(*job, column);
    case Qt::ToolTipRole:
        return toolTipOf(*job, column);
    case Qt::AccessibleTextRole:
        return QStringLiteral("%1: %2").arg(nameOf(column), toolTipOf(*job, column));
    case Qt::DecorationRole:
        if (column != LedgerColumn::verdict) return {};
        return verdictIcon(job->verdict, PictureStyle::forPalette(m_palette, {}));
    default:
        return {};
    }
}

QVariant JobsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= columnCount()) return {};
    const LedgerColumn column = columns().at(static_cast<std::size_t>(section));
    if (role == Qt::TextAlignmentRole)
        return static_cast<int>((isFigure(column) ? Qt::AlignRight : Qt::AlignLeft) |
                                Qt::AlignVCenter);
    if (role != Qt::DisplayRole) return {};
    if (!isFigure(column) || column == LedgerColumn::bores ||
        m_units == LedgerSettings::Units::ofEachJob)
        return nameOf(column);
    return tr("%1, %2").arg(nameOf(column), symbolOf(unitsOf({})));
}

} // namespace borewright
