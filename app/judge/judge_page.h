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
class QTableView;

namespace borewright {

class VerdictModel;

class JudgePage : public QWidget {
    Q_OBJECT
public:
    explicit JudgePage(const PageContext& context, QWidget* parent = nullptr);

signals:
    // The user wants to see the chosen station's reading, on the Measure page.
    void goToReading();

protected:
    void changeEvent(QEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void build();
    void quietSelection();
    QWidget* buildHead();
    QWidget* buildPictures();
    QWidget* buildBore();
    QWidget* buildAllBores();
    void connectParts();
    void refresh();
    void refreshSurveys();
    void chooseRow(const QModelIndex& current);
    void openCell(const QModelIndex& index);
    void goTo(const Station& station);
    void copyTable();

    PageContext m_context;
    VerdictModel* m_model;
    QLabel* m_next;
    QLabel* m_summary;
    QLabel* m_plate;
    QComboBox* m_surveys;
    QPushButton* m_copy;
    QTableView* m_table;
    QTabWidget* m_pictures;
};

} // namespace borewright
