// SPDX-License-Identifier: GPL-3.0-or-later
// The page that answers: which bores are good? A row a bore beside its limits, and the pictures of
// the survey. Choosing in one chooses in all.
#pragma once

#include "app/context/page_context.h"

#include <QWidget>

class QComboBox;
class QLabel;
class QPushButton;
class QTabWidget;

namespace borewright {

class VerdictModel;
class VerdictTable;

class JudgePage : public QWidget {
    Q_OBJECT
public:
    explicit JudgePage(const PageContext& context, QWidget* parent = nullptr);

signals:
    // The user wants to see the chosen station's reading, on the Measure page.
    void goToReading();

protected:
    void changeEvent(QEvent* event) override;

private:
    void build();
    QWidget* buildHead();
    QWidget* buildPictures();
    QWidget* buildBore();
    QWidget* buildAllBores();
    void connectParts();
    void refresh();
    void refreshSurveys();
    void refreshLines(const SurveyResult* survey);
    static void say(QLabel& label, const QString& text);
    void chooseRow(const QModelIndex& current);
    void openCell(const QModelIndex& index);
    void goTo(const Station& station);
    void copyTable();

    PageContext m_context;
    VerdictModel* m_model;
    QLabel* m_next;
    QLabel* m_summary;
    QLabel* m_called; // the rule, or that the doubt is not known
    QLabel* m_chosen; // the chosen bore: its shape, and what would settle it
    QLabel* m_plate;
    QComboBox* m_surveys;
    QPushButton* m_copy;
    VerdictTable* m_table;
    QTabWidget* m_pictures;
};

} // namespace borewright
