// SPDX-License-Identifier: GPL-3.0-or-later
// The damages of one bore: where, how deep, felt or measured, what.
#pragma once

#include "app/size/entry_model.h"

#include <array>

namespace borewright {

class DamagesModel : public EntryModel {
    Q_OBJECT
public:
    enum Columns { depth, axis, deep, felt, what, columnsOfAll };
    explicit DamagesModel(Document& document, QObject* parent = nullptr);
    void setBore(int bore);
    [[nodiscard]] QString turned(int row, int column) const override;

protected:
    [[nodiscard]] int count() const override;
    [[nodiscard]] std::vector<Column> columns() const override;
    [[nodiscard]] QString nameOf(int row) const override;
    [[nodiscard]] QString kind() const override;
    [[nodiscard]] QString textAt(int row, int column) const override;
    [[nodiscard]] QString hintAt(int row, int column) const override;
    [[nodiscard]] QString textOfNew(int column) const override;
    void clearNew() override;
    [[nodiscard]] Result<int> put(SizingPlan& plan, int row, int column,
                                  const QString& text) const override;
    [[nodiscard]] Result<int> begin(SizingPlan& plan, int column, const QString& text) override;
    void erase(SizingPlan& plan, int row) const override;

private:
    [[nodiscard]] const std::vector<Damage>& damages() const;
    [[nodiscard]] Result<void> write(Damage& damage, int column, const QString& text) const;
    [[nodiscard]] Result<void> writeDepth(Damage& damage, const QString& text) const;
    [[nodiscard]] Result<void> writeDeep(Damage& damage, const QString& text) const;
    [[nodiscard]] Result<void> writeAxis(Damage& damage, const QString& text) const;

    int m_bore = 0;
    // Of the next one, as far as it is typed.
    std::array<QString, columnsOfAll> m_begun;
};

} // namespace borewright
