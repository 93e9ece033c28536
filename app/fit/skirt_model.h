// SPDX-License-Identifier: GPL-3.0-or-later
// One piston's skirt at several heights. A row is kept when both its height and its size are there.
#pragma once

#include "app/fit/record_model.h"

#include <array>

namespace borewright {

class SkirtModel final : public RecordModel {
    Q_OBJECT
public:
    enum At { height, size, columnsOfSkirt };
    explicit SkirtModel(Document& document, QObject* parent = nullptr);
    // Place of the piston in the record; −1 = none.
    void setPiston(int piston);
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;
    [[nodiscard]] int columnsTyped() const override { return columnsOfSkirt; }

protected:
    [[nodiscard]] int count() const override { return countIn(record()); }
    [[nodiscard]] int countIn(const FitRecord& fit) const override;
    [[nodiscard]] std::string idOf(int row) const override;
    [[nodiscard]] QString nameOf(int row) const override;
    [[nodiscard]] QString pieceName() const override { return tr("height"); }
    [[nodiscard]] int columnsWanted() const override { return columnsOfSkirt; }
    [[nodiscard]] int columnOfList() const override { return size; }
    [[nodiscard]] Column column(int column) const override;
    [[nodiscard]] QString textAt(int row, int column) const override;
    [[nodiscard]] QString textOfNew(int column) const override;
    [[nodiscard]] Result<void> put(FitRecord& fit, int row, int column,
                                   const QString& text) const override;
    void append(FitRecord& fit) const override;
    void erase(FitRecord& fit, int row) const override;

private:
    [[nodiscard]] bool has(const FitRecord& fit) const;

    int m_piston = -1;
    std::array<std::optional<TypedLength>, columnsOfSkirt> m_begun; // of the next row
};

} // namespace borewright
