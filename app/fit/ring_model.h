// SPDX-License-Identifier: GPL-3.0-or-later
// The rings with the one gap that was measured of each, a row a ring.
#pragma once

#include "app/fit/record_model.h"

namespace borewright {

class RingModel final : public RecordModel {
    Q_OBJECT
public:
    enum At { label, groove, measuredIn, measuredAt, gap, doubt, bore, columnsOfRing };
    explicit RingModel(Document& document, QObject* parent = nullptr);
    // "ring top 1": by its label, else by its row.
    static QString called(const FitRecord& fit, std::size_t ring);
    [[nodiscard]] int columnsTyped() const override { return gap + 1; }

protected:
    [[nodiscard]] int count() const override { return countIn(record()); }
    [[nodiscard]] int countIn(const FitRecord& fit) const override;
    [[nodiscard]] std::string idOf(int row) const override;
    [[nodiscard]] QString nameOf(int row) const override;
    [[nodiscard]] QString pieceName() const override { return tr("ring"); }
    [[nodiscard]] int columnsWanted() const override { return columnsOfRing; }
    [[nodiscard]] int columnOfList() const override { return gap; }
    [[nodiscard]] Column column(int column) const override;
    [[nodiscard]] QString textAt(int row, int column) const override;
    [[nodiscard]] QString hintAt(int row, int column) const override;
    [[nodiscard]] Result<void> put(FitRecord& fit, int row, int column,
                                   const QString& text) const override;
    void append(FitRecord& fit) const override;
    void erase(FitRecord& fit, int row) const override;
};

} // namespace borewright
