// SPDX-License-Identifier: GPL-3.0-or-later
// What was done in the chosen bore, passes and surveys in their order. A pass logged by mistake is
// struck out with its reason, never deleted.
#pragma once

#include "app/context/page_context.h"
#include "app/fields/committed_field.h"
#include "app/fit/text_table.h"

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QWidget>

namespace borewright {

struct BoreHoneLog;
struct LoggedPass;

class LogTab : public QWidget {
    Q_OBJECT
public:
    explicit LogTab(const PageContext& context, QWidget* parent = nullptr);
    void refresh();

private:
    [[nodiscard]] TextModel::Content contentOf(const BoreHoneLog& log);
    void addSurveys(TextModel::Content& content, std::size_t from, std::size_t to);
    [[nodiscard]] std::vector<TextModel::Cell> rowOf(const LoggedPass& logged) const;
    void choose(int row);
    void strike();

    PageContext m_context;
    TextTable* m_table;
    QLabel* m_oddities;
    QLineEdit* m_reason;
    QPushButton* m_strike;
    QLabel* m_refusal;
    std::vector<std::string> m_rows; // id of the pass in each row; empty = a survey
    int m_row = -1;
};

} // namespace borewright
