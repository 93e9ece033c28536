// SPDX-License-Identifier: GPL-3.0-or-later
// The table of the Judge page: a row a bore, each value beside its limit, each verdict as a word
// and a mark. Shows the results of the chosen survey and computes nothing.
#pragma once

#include "app/document/document.h"
#include "app/document/selection.h"

#include <QAbstractTableModel>
#include <QPalette>

namespace borewright {

class VerdictModel : public QAbstractTableModel {
    Q_OBJECT
public:
    // Beside a figure: its doubt, "±0.3"; an empty text where there is none.
    static constexpr int doubtRole = Qt::UserRole;

    VerdictModel(const Document& document, const Selection& selection, QObject* parent = nullptr);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;

    // The result of a row; null beyond the last.
    [[nodiscard]] const BoreResult* boreAt(int row) const;
    [[nodiscard]] int rowOf(int bore) const; // −1 where the survey did not ask for it
    // Whether the survey has a finish size, so that there is something to go.
    [[nodiscard]] bool hasToGo() const;
    // Whether a bore has stations left to read.
    [[nodiscard]] bool hasUnread() const;
    // The palette decides the marks' ink.
    void setPalette(const QPalette& palette);
    // Whether the survey's doubt is known, so that shapes are named.
    [[nodiscard]] bool hasDoubt() const;
    // The whole table, tab-separated, with heads, a known doubt in a column of its own; for the
    // clipboard.
    [[nodiscard]] QString asText() const;

    // Results changed: shows them.
    void refresh();

private:
    [[nodiscard]] const SurveyResult* result() const;

    const Document& m_document;
    const Selection& m_selection;
    QPalette m_palette;
    std::string m_survey;
    int m_rows = 0;
};

} // namespace borewright
