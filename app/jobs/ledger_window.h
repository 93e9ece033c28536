// SPDX-License-Identifier: GPL-3.0-or-later
// The ledger in a window of its own: all jobs, and what a rebuilder asks of them. It shows and
// asks; what it has changed in the ledger are verbs of the ledger's own.
#pragma once

#include "app/context/dialogs.h"
#include "app/jobs/jobs_list.h"
#include "app/jobs/ledger_clerk.h"
#include "app/jobs/ledger_desk.h"
#include "app/jobs/take_in_bar.h"
#include "app/jobs/totals_page.h"

#include <QWidget>

#include <optional>

class QLineEdit;
class QPushButton;
class QTabWidget;

namespace borewright {

// What the window works with; all must outlive it.
struct LedgerOutside {
    LedgerDesk& desk;
    LedgerSettingsStore& settings;
    Dialogs& dialogs;
    std::function<QString(QWidget*, const QString&, const QString&)> chooseFolder;
    FileSystem& files;
    QString workbookFolder; // where a new ledger is made from, if it is there
    // Opens a workbook in the main window; why not, in a sentence, or empty.
    std::function<QString(const QString&)> open;
};

class LedgerWindow : public QWidget {
    Q_OBJECT
public:
    explicit LedgerWindow(LedgerOutside outside);
    ~LedgerWindow() override;

    // Opens the job's workbook; says here why it cannot.
    void openJob(const QString& file);
    // What has to be said; empty where nothing has.
    [[nodiscard]] QString notice() const;
    [[nodiscard]] TakeInBar& takeInBar() { return *m_foot; }

signals:
    // The user wants to say where the ledger lies.
    void placeAsked();

protected:
    void showEvent(QShowEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    QWidget* makePasswordRow();
    QWidget* makeNoticeRow();
    void addPages();
    void connectParts();
    void followAccess();
    void followUnits();
    void refresh();
    void focusPage();
    void ledgerOpened(const QString& notice, bool isNew);
    void refused(const QString& kind, const QString& problem);
    void say(const QString& sentence, const QString& remedy = {},
             std::function<void()> action = {});
    void takeOut(const QString& file);
    void exportSheet(const QString& proposal, const QString& list,
                     const std::function<Result<LedgerSheet>(LedgerStore&)>& sheet);
    void exportJobs();

    LedgerOutside m_outside;
    LedgerClerk m_clerk;
    QTabWidget* m_tabs;
    JobsList* m_list;
    TakeInBar* m_foot;
    std::vector<TotalsPage*> m_totals;
    QWidget* m_passwordRow = nullptr;
    QLabel* m_passwordWhy = nullptr;
    QLineEdit* m_password = nullptr;
    QWidget* m_noticeRow = nullptr;
    QLabel* m_notice = nullptr;
    QPushButton* m_remedy = nullptr;
    std::function<void()> m_action;        // of the remedy
    std::optional<LedgerAccess> m_filling; // the ledger that was last begun to be filled unasked
};

} // namespace borewright
