// SPDX-License-Identifier: GPL-3.0-or-later
// Which bores the Block page speaks of: all alike, or one. The forms read and write through it.
#pragma once

#include "app/document/document.h"

#include <functional>
#include <optional>

namespace borewright {

class BoreScope : public QObject {
    Q_OBJECT
public:
    explicit BoreScope(Document& document, QObject* parent = nullptr);

    [[nodiscard]] int bore() const { return m_bore; } // 0 = all bores
    void setBore(int bore);
    // The bore the forms show: the one, or the first of all; null where the block has none.
    [[nodiscard]] const Bore* shown() const;
    // Whether all bores in scope say the same of something.
    template<class Get>
    [[nodiscard]] bool agree(Get get) const;
    // "all bores" or "bore 3", for the names of undo steps.
    [[nodiscard]] QString name() const;
    [[nodiscard]] Document& document() const { return m_document; }

    // Changes every bore in scope, as one step called "`what`, all bores".
    Result<void> change(const QString& what, const std::function<void(Bore&)>& make);

signals:
    void changed(); // another scope, or the record changed

private:
    Document& m_document;
    int m_bore = 0;
};

template<class Get>
bool BoreScope::agree(Get get) const {
    const Bore* first = shown();
    if (first == nullptr || m_bore != 0) return true;
    for (const Bore& bore : m_document.workbook().block.bores)
        if (!(get(bore) == get(*first))) return false;
    return true;
}

} // namespace borewright
