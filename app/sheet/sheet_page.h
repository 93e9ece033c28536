// SPDX-License-Identifier: GPL-3.0-or-later
// The page that hands over: the sheet as it will be printed, the customer's sentences to change,
// paper, print and PDF. Enter the room's drawing by sheet_pdf.h.
#pragma once

#include "app/context/page_context.h"
#include "app/sheet/printed_sheets.h"

#include <QWidget>

class QComboBox;
class QLabel;
class QPushButton;
class QScrollArea;

namespace borewright {

class SheetPaper;
class SummaryField;

class SheetPage : public QWidget {
    Q_OBJECT
public:
    explicit SheetPage(const PageContext& context, QWidget* parent = nullptr);

    void print();
    void savePdf();

protected:
    void showEvent(QShowEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void build();
    QWidget* buildControls();
    void connectParts();
    void markOld();
    void refresh();
    void fitWidth();
    void setSentences(const std::optional<std::string>& text);
    void setPaper(int index);
    void tell(const QString& sentence, bool refused);
    // The list of sheets to show: as it stands now, then those printed.
    void listSheets();
    void chooseSheet();
    void noted(const SheetData& sheet);
    [[nodiscard]] QString nextStep() const;
    [[nodiscard]] SheetData data() const;
    [[nodiscard]] Preferences::Paper paper() const { return m_context.preferences.value().paper; }

    PageContext m_context;
    QLabel* m_next;
    QLabel* m_told;
    SheetPaper* m_paper;
    QScrollArea* m_scroll;
    SummaryField* m_sentences;
    QPushButton* m_suggested;
    QComboBox* m_sheets;
    QComboBox* m_papers;
    QComboBox* m_zoom;
    QPushButton* m_print;
    QPushButton* m_save;
    std::optional<SheetOfThen> m_then; // the sheet printed earlier that is shown
    bool m_old = true;
};

} // namespace borewright
