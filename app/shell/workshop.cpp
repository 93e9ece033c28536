// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/workshop.h"

namespace borewright {

Workshop::Workshop(const Outside& outside, QObject* parent)
    : QObject(parent)
    , m_outside(outside)
    , m_document(outside.clock)
    , m_selection(m_document) {}

Workshop::~Workshop() = default;

PageContext Workshop::context() {
    return {m_document,        m_selection,      m_outside.preferences,
            m_outside.dialogs, m_outside.sounds, m_outside.files};
}

void Workshop::begin(Workbook workbook) {
    m_document.open(std::move(workbook));
    m_open = true;
    emit opened();
}

} // namespace borewright
