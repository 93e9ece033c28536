// SPDX-License-Identifier: GPL-3.0-or-later
// Rings: which goes where, its gap by depth, where to measure and what to file; the rings as
// measured; what a gap may be.
#pragma once

#include "app/context/page_context.h"
#include "app/fit/ring_words.h"

#include <QLabel>
#include <QPushButton>
#include <QWidget>

namespace borewright {

class FitLimitsForm;
class LengthField;
class RecordForm;
class Sentences;
class RingModel;

class RingsTab : public QWidget {
    Q_OBJECT
public:
    explicit RingsTab(const PageContext& context, QWidget* parent = nullptr);
    void refresh(Change change);

private:
    QWidget* buildGaps();
    QWidget* buildRings();
    void connectParts();
    void chooseRow(int row);
    void turnRow(int row);
    void keepFileStep();
    void change(FitRecord fit, const QString& step);
    void refreshVerbs();

    PageContext m_context;
    RingModel* m_rings;
    std::vector<ring_words::Row> m_rows;
    QLabel* m_headline;
    Sentences* m_sentences;
    QLabel* m_refusal;
    QWidget* m_gaps = nullptr;
    TextTable* m_table;
    QLabel* m_title;
    QLabel* m_instruction;
    TextTable* m_depths;
    QPushButton* m_fix;
    QPushButton* m_take;
    QPushButton* m_free;
    RecordForm* m_form;
    FitLimitsForm* m_limits;
    LengthField* m_fileStep;
};

} // namespace borewright
