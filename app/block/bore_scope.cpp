// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/block/bore_scope.h"

namespace borewright {

BoreScope::BoreScope(Document& document, QObject* parent)
    : QObject(parent)
    , m_document(document) {
    connect(&document, &Document::changed, this, [this](Change change) {
        if (change == Change::everything) m_bore = 0;
        if (findBore(m_document.workbook().block, m_bore) == nullptr) m_bore = 0;
        if (change == Change::everything || change == Change::record) emit changed();
    });
}

void BoreScope::setBore(int bore) {
    if (bore == m_bore) return;
    m_bore = bore;
    emit changed();
}

const Bore* BoreScope::shown() const {
    const Block& block = m_document.workbook().block;
    if (m_bore != 0) return findBore(block, m_bore);
    return block.bores.empty() ? nullptr : &block.bores.front();
}

QString BoreScope::name() const {
    return m_bore == 0 ? tr("all bores") : tr("bore %1").arg(m_bore);
}

Result<void> BoreScope::change(const QString& what, const std::function<void(Bore&)>& make) {
    Block block = m_document.workbook().block;
    for (Bore& bore : block.bores)
        if (m_bore == 0 || bore.number == m_bore) make(bore);
    return m_document.edit(SetBlock{std::move(block)}, what + ", " + name());
}

} // namespace borewright
