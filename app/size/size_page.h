// SPDX-License-Identifier: GPL-3.0-or-later
// The page that answers: which size cleans up the block?
#pragma once

#include "app/context/page_context.h"

#include <QWidget>

namespace borewright {

class SizePage : public QWidget {
    Q_OBJECT
public:
    explicit SizePage(const PageContext& context, QWidget* parent = nullptr);

private:
    PageContext m_context;
};

} // namespace borewright
