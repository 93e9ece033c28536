// SPDX-License-Identifier: GPL-3.0-or-later
// The levels of the bores in scope as a table: depth, whether it is judged, in which zone it lies,
// and on which axes the gauge finds wall. A last empty row takes a further depth.
#pragma once

#include "app/block/bore_scope.h"

#include <QAbstractTableModel>

namespace borewright {

class LevelsModel : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column { depthColumn, judgedColumn, zoneColumn, firstAxisColumn };

    explicit LevelsModel(BoreScope& scope, QObject* parent = nullptr);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

    // Takes levels off, as one step. Readings there stay.
    void removeLevels(const std::vector<int>& rows);
    // Puts the proposed levels in the place of those there are.
    Result<void> propose();

signals:
    void refused(const QString& sentence); // empty: nothing to refuse any more

private:
    [[nodiscard]] QString depthText(int row) const;
    [[nodiscard]] QString judgedText(int row) const;
    bool setDepth(int row, const QString& text);
    bool setJudged(int row);
    bool setWall(int row, int axis, bool wall);
    bool settle(const Result<void>& done);
    void refresh();

    BoreScope& m_scope;
    std::vector<Level> m_levels; // as shown
    std::vector<Axis> m_axes;
};

// "ridge land", "ring travel", …
QString zoneName(Zone zone);

} // namespace borewright
