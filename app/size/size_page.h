// SPDX-License-Identifier: GPL-3.0-or-later
// The page that answers: which size cleans up the block? The sentence and the picture first; what
// they follow from is entered beneath. One key hands the size to the hone.
#pragma once

#include "app/context/page_context.h"

#include <QWidget>

class QLabel;
class QPushButton;

namespace borewright {

class SizeBarsView;

class SizePage : public QWidget {
    Q_OBJECT
public:
    explicit SizePage(const PageContext& context, QWidget* parent = nullptr);

private:
    QWidget* buildHead();
    QWidget* buildForms();
    QWidget* buildWords();
    void refresh();
    void honeToThis();

    PageContext m_context;
    QLabel* m_headline;
    QLabel* m_refusal;
    QLabel* m_words;
    QPushButton* m_hone;
    SizeBarsView* m_bars;
};

} // namespace borewright
