// SPDX-License-Identifier: GPL-3.0-or-later
// The sizes on offer: oversize, smallest and largest finished size.
#pragma once

#include "app/size/entry_model.h"

namespace borewright {

class SizesModel : public EntryModel {
    Q_OBJECT
public:
    enum Columns { oversize, smallest, largest };
    explicit SizesModel(Document& document, QObject* parent = nullptr);

protected:
    [[nodiscard]] int count() const override;
    [[nodiscard]] std::vector<Column> columns() const override;
    [[nodiscard]] QString nameOf(int row) const override;
    [[nodiscard]] QString kind() const override;
    [[nodiscard]] QString textAt(int row, int column) const override;
    [[nodiscard]] QString hintAt(int row, int column) const override;
    [[nodiscard]] Result<int> put(SizingPlan& plan, int row, int column,
                                  const QString& text) const override;
    [[nodiscard]] Result<int> begin(SizingPlan& plan, int column, const QString& text) override;
    void erase(SizingPlan& plan, int row) const override;
};

} // namespace borewright
