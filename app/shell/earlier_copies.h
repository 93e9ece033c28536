// SPDX-License-Identifier: GPL-3.0-or-later
// "What did this look like on Tuesday": the dated copies of the open workbook, what each differs by
// from now, and the ways to look at one or bring it back. It stands beside the window.
#pragma once

#include "app/shell/workshop.h"
#include "core/storage/differences.h"
#include "core/workbook/edit.h"

#include <QDialog>

class QComboBox;
class QLabel;
class QListWidget;
class QPushButton;
class QTableWidget;

namespace borewright {

class EarlierCopies : public QDialog {
    Q_OBJECT
public:
    EarlierCopies(Workshop& workshop, QWidget* parent);

signals:
    // The copy at `path` is to be opened beside, to look at.
    void besideAsked(const QString& path);

private:
    void build();
    void list();
    void showCopy(int row);
    void compare();
    void offerSurveys(const std::vector<Difference>& found);
    void bringBackOne();
    void bringBackAll();
    void keep(const Result<Edit>& edit, const QString& name);

    Workshop& m_workshop;
    std::vector<DatedCopy> m_copies;
    std::optional<Workbook> m_shown;
    QListWidget* m_list;
    QLabel* m_sentence;
    QTableWidget* m_table;
    QComboBox* m_surveys;
    QPushButton* m_beside;
    QPushButton* m_one;
    QPushButton* m_all;
};

} // namespace borewright
