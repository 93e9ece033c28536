// SPDX-License-Identifier: GPL-3.0-or-later
// The one window: pages along the left in the order of the work, a sentence across the top where
// something has to be said, the file and its state along the bottom.
#pragma once

#include "app/shell/page_rail.h"
#include "app/shell/workshop.h"

#include <QImage>
#include <QMainWindow>

#include <array>

class QStackedWidget;

namespace borewright {

class Banner;
class FileVerbs;
class LedgerBeside;
class Menus;
class StartForm;
class StatusLine;

class Window : public QMainWindow {
    Q_OBJECT
public:
    explicit Window(Workshop& workshop, QWidget* parent = nullptr);
    ~Window() override;

    // Shows a page; it is built when it is first shown.
    void showPage(Page page);
    // Shows the form that begins a workbook.
    void showStart();
    [[nodiscard]] StartForm* startForm() { return m_start; }
    void showPreferences();
    // All jobs of the shop, in a window beside this one.
    [[nodiscard]] LedgerBeside& ledger() { return *m_ledger; }
    // Large type at the bench: nothing but the Measure page.
    void setBench(bool bench);
    // Opens a workbook, or says why not.
    bool openPath(const QString& path);
    // The page as built; for tests and pictures.
    QWidget* page(Page page);
    // The whole window with a page shown, as a picture of `size` device-independent pixels.
    QImage picture(Page page, const QSize& size, qreal pixelRatio = 1.0);
    // The sentence across the top; empty where there is none.
    [[nodiscard]] QString notice() const;
    void say(const QString& sentence);

signals:
    void firstPainted();
    void deskThemeChanged();

protected:
    void closeEvent(QCloseEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    bool event(QEvent* event) override;

private:
    void build();
    void connectParts();
    QWidget* makePage(Page page);
    void makeStart();
    void showOpened();
    void followSaving();
    void followTitle();
    void showBenchState(bool bench);

    Workshop& m_workshop;
    PageContext m_context;
    PageRail* m_rail;
    Banner* m_banner;
    QStackedWidget* m_stack;
    StatusLine* m_status;
    FileVerbs* m_verbs;
    LedgerBeside* m_ledger;
    Menus* m_menus;
    StartForm* m_start = nullptr;
    QString m_failureSaid;        // the failed save that the banner tells of
    bool m_warnedOnClose = false; // closing again closes
    bool m_painted = false;
    std::array<QWidget*, pageCount> m_pages{};
};

} // namespace borewright
