// SPDX-License-Identifier: GPL-3.0-or-later
// The pistons as they were measured, a row each.
#pragma once

#include "app/fit/record_model.h"

namespace borewright {

class PistonModel final : public RecordModel {
    Q_OBJECT
public:
    enum At { label, size, height, instrument, temperature, doubt, bore, columnsOfPiston };
    explicit PistonModel(Document& document, QObject* parent = nullptr);
    // "piston 3": by what is scribed on it, else by its row.
    static QString called(const FitRecord& fit, std::size_t piston);
    [[nodiscard]] int columnsTyped() const override { return height + 1; }

protected:
    [[nodiscard]] int count() const override { return countIn(record()); }
    [[nodiscard]] int countIn(const FitRecord& fit) const override;
    [[nodiscard]] std::string idOf(int row) const override;
    [[nodiscard]] QString nameOf(int row) const override;
    [[nodiscard]] QString pieceName() const override { return tr("piston"); }
    [[nodiscard]] int columnsWanted() const override { return columnsOfPiston; }
    [[nodiscard]] int columnOfList() const override { return size; }
    [[nodiscard]] Column column(int column) const override;
    [[nodiscard]] QString textAt(int row, int column) const override;
    [[nodiscard]] QString hintAt(int row, int column) const override;
    [[nodiscard]] Result<void> put(FitRecord& fit, int row, int column,
                                   const QString& text) const override;
    void append(FitRecord& fit) const override;
    void erase(FitRecord& fit, int row) const override;
};

} // namespace borewright
