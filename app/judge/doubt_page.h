// SPDX-License-Identifier: GPL-3.0-or-later
// How far the survey's figures can be trusted: one line for who wants no more, the sources as bars
// or as the full table, what would help most, and what to beware of.
#pragma once

#include "app/document/document.h"
#include "app/document/selection.h"

#include <QWidget>

class QLabel;
class QPushButton;
class QStackedWidget;
class QTableWidget;

namespace borewright {

class DoubtPage : public QWidget {
    Q_OBJECT
public:
    DoubtPage(Document& document, Selection& selection, QWidget* parent = nullptr);

private:
    QWidget* buildSources();
    QWidget* buildWords();
    void refresh();
    void fillTable(const SurveyResult& survey);

    Document& m_document;
    Selection& m_selection;
    QLabel* m_line;
    QPushButton* m_whole;
    QStackedWidget* m_sources;
    QTableWidget* m_table;
    QLabel* m_sums;
    QLabel* m_words;
};

} // namespace borewright
