// SPDX-License-Identifier: GPL-3.0-or-later
// The page that answers: what is on the bench, and what is it judged by? What most people need
// comes first; the rest is folded away with good defaults.
#pragma once

#include "app/block/bore_scope.h"
#include "app/context/page_context.h"

#include <QLabel>
#include <QWidget>

class QVBoxLayout;

namespace borewright {

class BlockPage : public QWidget {
    Q_OBJECT
public:
    explicit BlockPage(const PageContext& context, QWidget* parent = nullptr);

private:
    QWidget* buildContent();
    QWidget* buildBlockAndPlan();
    void sayNext();

    PageContext m_context;
    BoreScope m_scope;
    QLabel* m_next;
};

} // namespace borewright
