// SPDX-License-Identifier: GPL-3.0-or-later
// One question to the shop's past, and its answer: what an engine needed, how fast stones cut,
// which jobs a gauge touched.
#pragma once

#include "app/jobs/ledger_answers.h"
#include "app/jobs/ledger_clerk.h"

#include <QWidget>

class QLabel;
class QLineEdit;

namespace borewright {

class TextTable;

struct TotalsQuestion {
    QString kind;  // told apart by the clerk
    QString asked; // the question in a sentence
    QString field; // what is typed
    QString hint;
    QString nothing;       // said where nothing is found, "%1" = what was typed
    QString list;          // the name of the list in a file
    bool wantsText = true; // else an empty field asks for all
    std::function<Result<LedgerSheet>(LedgerStore&, const std::string&, const LedgerUnits&)> sheet;
};
// In the order of their tabs.
std::vector<TotalsQuestion> totalsQuestions();

class TotalsPage : public QWidget {
    Q_OBJECT
public:
    // No more rows than this are shown; a file has all.
    static constexpr std::size_t mostRows = 500;

    TotalsPage(TotalsQuestion question, LedgerClerk& clerk, QWidget* parent = nullptr);
    void setUnits(const LedgerUnits& units);
    void refresh();
    void focusField();
    void setObstacle(const QString& sentence);
    // The whole answer to what is typed.
    [[nodiscard]] std::function<Result<LedgerSheet>(LedgerStore&)> wholeSheet() const;
    [[nodiscard]] const TotalsQuestion& question() const { return m_question; }

signals:
    void openAsked(const QString& file);
    void exportAsked();

private:
    void show(const LedgerSheet& sheet, std::size_t all);

    const TotalsQuestion m_question;
    LedgerClerk& m_clerk;
    LedgerUnits m_units;
    LedgerSheet m_sheet;
    QLineEdit* m_field;
    QLabel* m_sentence;
    TextTable* m_table;
};

} // namespace borewright
