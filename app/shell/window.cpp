// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/window.h"

#include "app/block/block_page.h"
#include "app/fit/fit_page.h"
#include "app/hone/hone_page.h"
#include "app/judge/judge_page.h"
#include "app/measure/measure_page.h"
#include "app/sheet/sheet_page.h"
#include "app/shell/banner.h"
#include "app/shell/file_verbs.h"
#include "app/shell/ledger_beside.h"
#include "app/shell/menus.h"
#include "app/shell/preferences_dialog.h"
#include "app/shell/start_form.h"
#include "app/shell/status_line.h"
#include "app/size/size_page.h"

#include <QCloseEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QMenuBar>
#include <QPainter>
#include <QPushButton>
#include <QStackedWidget>
#include <QTimer>
#include <QVBoxLayout>

namespace borewright {
namespace {

constexpr int closingPatience = 2000; // ms that closing waits for the disk
constexpr int leastLabel = 40;        // pixels of a wrapped sentence on a page

} // namespace

Window::Window(Workshop& workshop, QWidget* parent)
    : QMainWindow(parent)
    , m_workshop(workshop)
    , m_context(workshop.context())
    , m_rail(new PageRail)
    , m_banner(new Banner)
    , m_stack(new QStackedWidget)
    , m_status(new StatusLine(workshop))
    , m_verbs(new FileVerbs(workshop, *m_banner, this))
    , m_ledger(new LedgerBeside(*this, workshop, *m_verbs))
    , m_menus(new Menus(*this, workshop, *m_verbs)) {
    build();
    connectParts();
    followTitle();
}

Window::~Window() = default;

void Window::build() {
    auto* middle = new QWidget;
    auto* column = new QVBoxLayout(middle);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(m_banner);
    column->addWidget(m_stack, 1);
    column->addWidget(m_status);
    auto* whole = new QWidget;
    auto* row = new QHBoxLayout(whole);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    row->addWidget(m_rail);
    row->addWidget(middle, 1);
    setCentralWidget(whole);
    resize(1280, 800);
}

void Window::connectParts() {
    connect(m_rail, &PageRail::chosen, this, &Window::showPage);
    connect(&m_workshop, &Workshop::opened, this, &Window::showOpened);
    connect(&m_workshop.autosaver(), &Autosaver::stateChanged, this, &Window::followSaving);
    connect(&m_workshop.document(), &Document::changed, this, &Window::followTitle);
    connect(&m_workshop.document(), &Document::lookedAtOnly, m_verbs, &FileVerbs::sayLookOnly);
    connect(&m_workshop.autosaver(), &Autosaver::told, this, &Window::say);
    connect(&m_workshop, &Workshop::taken, m_verbs, &FileVerbs::sayLookOnly);
    connect(&m_workshop, &Workshop::taken, this, &Window::followTitle);
}

void Window::showOpened() {
    m_warnedOnClose = false;
    m_failureSaid.clear();
    m_rail->setEnabled(true);
    showPage(Page::measure);
    followSaving();
}

QWidget* Window::makePage(Page page) {
    switch (page) {
    case Page::block:
        return new BlockPage(m_context);
    case Page::measure: {
        auto* measure = new MeasurePage(m_context);
        connect(measure, &MeasurePage::benchChanged, this, &Window::showBenchState);
        return measure;
    }
    case Page::judge: {
        auto* judge = new JudgePage(m_context);
        connect(judge, &JudgePage::goToReading, this, [this] {
            showPage(Page::measure);
            static_cast<MeasurePage*>(this->page(Page::measure))->focusGrid();
        });
        return judge;
    }
    case Page::size:
        return new SizePage(m_context);
    case Page::hone: {
        auto* hone = new HonePage(m_context);
        connect(hone, &HonePage::measureAsked, this, [this] {
            showPage(Page::measure);
            static_cast<MeasurePage*>(this->page(Page::measure))->focusEntry();
        });
        return hone;
    }
    case Page::fit:
        return new FitPage(m_context);
    case Page::sheet:
        return new SheetPage(m_context);
    }
    return nullptr;
}

QWidget* Window::page(Page page) {
    QWidget*& slot = m_pages.at(static_cast<std::size_t>(page));
    if (slot == nullptr) {
        slot = makePage(page);
        for (auto* button : slot->findChildren<QPushButton*>())
            button->setAutoDefault(true); // Enter presses it, as it does everywhere at the bench
        // A word of thousands of letters cannot be wrapped; it is cut off before it widens the page.
        for (auto* label : slot->findChildren<QLabel*>())
            if (label->wordWrap() && label->minimumWidth() == 0) label->setMinimumWidth(leastLabel);
        m_stack->addWidget(slot);
    }
    return slot;
}

void Window::showPage(Page which) {
    if (which != Page::measure) setBench(false);
    m_stack->setCurrentWidget(page(which));
    m_rail->setCurrent(which);
}

void Window::makeStart() {
    m_start = new StartForm(m_workshop);
    m_stack->addWidget(m_start);
    connect(m_start, &StartForm::openAsked, m_verbs, &FileVerbs::open);
    connect(m_start, &StartForm::openRequested, m_verbs, &FileVerbs::openPath);
    connect(m_start, &StartForm::began, this,
            [this] { static_cast<MeasurePage*>(page(Page::measure))->startSurvey(); });
}

void Window::showStart() {
    setBench(false);
    if (m_start == nullptr) makeStart();
    m_stack->setCurrentWidget(m_start);
    m_rail->clearCurrent();
    m_rail->setEnabled(m_workshop.isOpen());
    m_start->start();
}

void Window::showPreferences() {
    auto* dialog = new PreferencesDialog(m_workshop.preferences(), m_workshop.dialogs(), this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &PreferencesDialog::ledgerPlaceAsked, this,
            [this, dialog] { m_ledger->showPlace(dialog); });
    dialog->show();
}

bool Window::openPath(const QString& path) {
    return m_verbs->openPath(path);
}

void Window::setBench(bool bench) {
    QWidget*& slot = m_pages.at(static_cast<std::size_t>(Page::measure));
    if (slot == nullptr && !bench) return;
    if (bench) showPage(Page::measure);
    static_cast<MeasurePage*>(page(Page::measure))->setBench(bench);
}

void Window::showBenchState(bool bench) {
    m_rail->setVisible(!bench);
    menuBar()->setVisible(!bench);
    m_menus->showBench(bench);
    m_status->setWord(bench ? tr("Bench mode. F11 brings the whole window back.") : QString());
}

QImage Window::picture(Page which, const QSize& size, qreal pixelRatio) {
    showPage(which);
    resize(size);
    show();
    if (which == Page::hone) static_cast<HonePage*>(page(which))->settle();
    QImage image(size * pixelRatio, QImage::Format_RGB32);
    image.setDevicePixelRatio(pixelRatio);
    render(&image);
    return image;
}

QString Window::notice() const {
    return m_banner->sentence();
}

void Window::say(const QString& sentence) {
    if (sentence.isEmpty())
        m_banner->clear();
    else
        m_banner->say(sentence);
}

// A failure is said once, not at every attempt; when the file is safe the sentence goes.
void Window::followSaving() {
    Autosaver& autosaver = m_workshop.autosaver();
    followTitle();
    if (autosaver.state() != Autosaver::State::failed) {
        if (autosaver.state() != Autosaver::State::saved) return;
        m_warnedOnClose = false;
        if (!m_failureSaid.isEmpty() && notice() == m_failureSaid) m_banner->clear();
        m_failureSaid.clear();
        return;
    }
    const QString sentence = autosaver.sentence();
    if (sentence == m_failureSaid) return;
    m_failureSaid = sentence;
    std::vector<BannerAction> remedies{{tr("Save as …"), [this] { m_verbs->saveAs(); }}};
    if (autosaver.changedUnderneath())
        remedies.insert(remedies.begin(),
                        {tr("Show what differs"), [this] { m_verbs->showUnderneath(); }});
    m_banner->say(sentence, remedies);
}

// "Saltmarsh V6 — A. Example · saved".
void Window::followTitle() {
    if (!m_workshop.isOpen()) return setWindowTitle(tr("Borewright"));
    const Job& job = m_workshop.document().workbook().job;
    QStringList names;
    for (const std::string& name : {job.engine, job.customer})
        if (!name.empty()) names += QString::fromStdString(name);
    if (names.isEmpty())
        names += tr("Block of %1").arg(m_workshop.document().workbook().block.bores.size());
    QString state;
    switch (m_workshop.autosaver().state()) {
    case Autosaver::State::saved:
        state = tr("saved");
        break;
    case Autosaver::State::nothingToSave:
        state = tr("nothing to save yet");
        break;
    case Autosaver::State::failed:
        state = tr("not saved");
        break;
    case Autosaver::State::unsaved:
    case Autosaver::State::saving:
        state = tr("saving …");
        break;
    }
    if (!m_workshop.document().lookOnly().isEmpty()) state = tr("to look at");
    setWindowTitle(names.join(QStringLiteral(" — ")) + QStringLiteral(" · ") + state);
}

void Window::closeEvent(QCloseEvent* event) {
    Autosaver& autosaver = m_workshop.autosaver();
    // A field still open commits what was typed into it.
    if (QWidget* focus = focusWidget(); focus != nullptr) focus->clearFocus();
    if (!m_workshop.isOpen() || autosaver.flushAwake(closingPatience) || m_warnedOnClose) {
        m_ledger->close(); // it is nothing without this window
        return event->accept();
    }
    m_warnedOnClose = true;
    m_failureSaid = autosaver.sentence();
    const QString what = autosaver.state() == Autosaver::State::failed
                             ? autosaver.sentence()
                             : tr("The disk has not taken the last change yet.");
    m_banner->say(tr("%1 Close the window once more to leave all the same.").arg(what),
                  {{tr("Save as …"), [this] { m_verbs->saveAs(); }}});
    event->ignore();
}

bool Window::event(QEvent* event) {
    if (event->type() == QEvent::ThemeChange) emit deskThemeChanged();
    return QMainWindow::event(event);
}

void Window::paintEvent(QPaintEvent* event) {
    QMainWindow::paintEvent(event);
    if (std::exchange(m_painted, true)) return;
    // After the children have painted too.
    QTimer::singleShot(0, this, &Window::firstPainted);
}

} // namespace borewright
