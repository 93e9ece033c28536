// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/judge/verdict_model.h"

#include "app/judge/doubt_text.h"
#include "app/judge/verdict_text.h"
#include "app/pictures/verdict_mark.h"

#include <QFont>
#include <QGuiApplication>

#include <algorithm>

namespace borewright {
namespace {

std::optional<Verdict> verdictOf(const BoreResult& bore, int column) {
    if (column == columns::verdict) return bore.verdict;
    const auto quality = verdict_text::qualityOf(column);
    if (!quality) return std::nullopt;
    for (const Judgement& judgement : bore.judgements)
        if (judgement.quality == *quality && judgement.verdict != Verdict::notJudged)
            return judgement.verdict;
    return std::nullopt;
}

bool isWord(int column) {
    return column == columns::verdict || column == columns::shape;
}

// Columns whose figures have a doubt where it is known.
bool isDoubted(int column) {
    return column >= columns::largest && column <= columns::straight;
}

} // namespace

VerdictModel::VerdictModel(const Document& document, const Selection& selection, QObject* parent)
    : QAbstractTableModel(parent)
    , m_document(document)
    , m_selection(selection)
    , m_palette(QGuiApplication::palette()) {
    refresh();
}

const SurveyResult* VerdictModel::result() const {
    return findResult(m_document.results(), m_survey);
}

int VerdictModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : m_rows;
}

int VerdictModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns::count;
}

const BoreResult* VerdictModel::boreAt(int row) const {
    const SurveyResult* survey = result();
    if (survey == nullptr || row < 0 || row >= static_cast<int>(survey->bores.size()))
        return nullptr;
    return &survey->bores[static_cast<std::size_t>(row)];
}

int VerdictModel::rowOf(int bore) const {
    for (int row = 0; row < m_rows; ++row)
        if (const BoreResult* result = boreAt(row); result != nullptr && result->bore == bore)
            return row;
    return -1;
}

bool VerdictModel::hasUnread() const {
    const SurveyResult* survey = result();
    return survey != nullptr && survey->measured < survey->asked;
}

bool VerdictModel::hasToGo() const {
    const SurveyResult* survey = result();
    return survey != nullptr && std::ranges::any_of(survey->bores, [](const BoreResult& bore) {
               return bore.leastToGo.has_value();
           });
}

bool VerdictModel::hasDoubt() const {
    const SurveyResult* survey = result();
    return survey != nullptr && survey->doubts.budget.known();
}

QVariant VerdictModel::data(const QModelIndex& index, int role) const {
    const BoreResult* bore = boreAt(index.row());
    if (bore == nullptr) return {};
    const int column = index.column();
    switch (role) {
    case Qt::DisplayRole:
        return verdict_text::cell(*bore, column, m_document.units());
    case Qt::ToolTipRole:
    case Qt::AccessibleTextRole:
        return verdict_text::sentence(*bore, column, result()->doubts.budget, m_document.units());
    case doubtRole:
        return doubt_text::cell(*bore, column, result()->doubts.budget, m_document.units());
    case Qt::TextAlignmentRole:
        return isWord(column) ? QVariant(Qt::AlignLeft | Qt::AlignVCenter)
                              : QVariant(Qt::AlignRight | Qt::AlignVCenter);
    case Qt::DecorationRole:
        if (const auto word = verdictOf(*bore, column))
            return verdictIcon(*word, PictureStyle::forPalette(m_palette, {}));
        return {};
    case Qt::FontRole:
        if (column == columns::bore || column == columns::verdict) {
            QFont font;
            font.setBold(true);
            return font;
        }
        return {};
    default:
        return {};
    }
}

QVariant VerdictModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal)
        return QAbstractTableModel::headerData(section, orientation, role);
    if (role == Qt::DisplayRole) return verdict_text::head(section, result(), m_document.units());
    if (role == Qt::TextAlignmentRole)
        return isWord(section) ? QVariant(Qt::AlignLeft | Qt::AlignBottom)
                               : QVariant(Qt::AlignRight | Qt::AlignBottom);
    return {};
}

void VerdictModel::setPalette(const QPalette& palette) {
    m_palette = palette;
    if (m_rows > 0) emit dataChanged(index(0, 0), index(m_rows - 1, columns::count - 1));
}

QString VerdictModel::asText() const {
    const bool doubted = hasDoubt();
    QStringList lines;
    QStringList heads;
    for (int column = 0; column < columns::count; ++column) {
        heads << headerData(column, Qt::Horizontal, Qt::DisplayRole).toString().replace('\n', ' ');
        if (doubted && isDoubted(column))
            heads << QString::fromUtf8("±, ") + QString::fromUtf8(symbol(m_document.units().small));
    }
    lines << heads.join('\t');
    for (int row = 0; row < m_rows; ++row) {
        QStringList cells;
        for (int column = 0; column < columns::count; ++column) {
            cells << data(index(row, column), Qt::DisplayRole).toString();
            if (doubted && isDoubted(column))
                cells << data(index(row, column), doubtRole).toString();
        }
        lines << cells.join('\t');
    }
    return lines.join('\n') + '\n';
}

void VerdictModel::refresh() {
    const SurveyResult* next = findResult(m_document.results(), m_selection.survey());
    const int rows = next == nullptr ? 0 : static_cast<int>(next->bores.size());
    if (rows == m_rows && m_selection.survey() == m_survey) {
        if (m_rows > 0) emit dataChanged(index(0, 0), index(m_rows - 1, columns::count - 1));
        emit headerDataChanged(Qt::Horizontal, 0, columns::count - 1);
        return;
    }
    beginResetModel();
    m_survey = m_selection.survey();
    m_rows = rows;
    endResetModel();
}

} // namespace borewright
