// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/jobs/ledger_window.h"

#include "app/fields/refusal_label.h"
#include "core/storage/saver.h"

#include <QDir>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTabBar>
#include <QTabWidget>
#include <QVBoxLayout>

namespace borewright {
namespace {

const QString exportKind = QStringLiteral("export");
const QString takeOutKind = QStringLiteral("take out");

} // namespace

LedgerWindow::LedgerWindow(LedgerOutside outside)
    : m_outside(std::move(outside))
    , m_tabs(new QTabWidget(this))
    , m_list(new JobsList(m_clerk, m_outside.settings, this))
    , m_foot(new TakeInBar(m_outside.desk, m_outside.chooseFolder, m_outside.files,
                           m_outside.workbookFolder, this)) {
    setWindowTitle(tr("Ledger of jobs"));
    addPages();
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(20, 16, 20, 16);
    column->addWidget(makePasswordRow());
    column->addWidget(makeNoticeRow());
    column->addWidget(m_tabs, 1);
    column->addWidget(m_foot);
    for (auto* button : findChildren<QPushButton*>()) {
        button->setAutoDefault(true); // Enter presses it
        button->setAccessibleName(button->text().remove(u'&'));
    }
    connectParts();
    followUnits();
    followAccess();
    resize(1270, 740);
}

LedgerWindow::~LedgerWindow() = default;

void LedgerWindow::addPages() {
    m_tabs->setDocumentMode(true);
    m_tabs->addTab(m_list, tr("&All jobs"));
    const QStringList names{tr("What an engine &needed"), tr("How fast s&tones cut"),
                            tr("What a &gauge touched")};
    for (const TotalsQuestion& question : totalsQuestions()) {
        auto* page = new TotalsPage(question, m_clerk, this);
        m_tabs->addTab(page, names.value(static_cast<qsizetype>(m_totals.size())));
        m_totals.push_back(page);
        connect(page, &TotalsPage::openAsked, this, &LedgerWindow::openJob);
        connect(page, &TotalsPage::exportAsked, this, [this, page] {
            exportSheet(page->question().kind, page->question().list, page->wholeSheet());
        });
    }
}

QWidget* LedgerWindow::makePasswordRow() {
    m_passwordRow = new QWidget(this);
    m_passwordWhy = new QLabel(m_passwordRow);
    m_passwordWhy->setWordWrap(true);
    m_password = new QLineEdit(m_passwordRow);
    m_password->setEchoMode(QLineEdit::Password);
    m_password->setAccessibleName(tr("Password of the ledger's server"));
    auto* label = new QLabel(tr("&Password"), m_passwordRow);
    label->setBuddy(m_password);
    auto* use = new QPushButton(tr("Open the ledger"), m_passwordRow);
    const auto give = [this] {
        m_outside.desk.givePassword(m_password->text());
        m_password->clear();
    };
    connect(use, &QPushButton::clicked, this, give);
    connect(m_password, &QLineEdit::returnPressed, this, give);
    auto* row = new QHBoxLayout(m_passwordRow);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_passwordWhy, 1);
    row->addWidget(label);
    row->addWidget(m_password);
    row->addWidget(use);
    return m_passwordRow;
}

QWidget* LedgerWindow::makeNoticeRow() {
    m_noticeRow = new QWidget(this);
    m_notice = makeRefusalLabel(m_noticeRow);
    m_notice->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_notice->show();
    m_remedy = new QPushButton(m_noticeRow);
    auto* close = new QPushButton(tr("Understood"), m_noticeRow);
    connect(close, &QPushButton::clicked, this, [this] { say({}); });
    connect(m_remedy, &QPushButton::clicked, this, [this] {
        const auto todo = m_action;
        say({});
        if (todo) todo();
    });
    auto* row = new QHBoxLayout(m_noticeRow);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_notice, 1);
    row->addWidget(m_remedy);
    row->addWidget(close);
    m_noticeRow->hide();
    return m_noticeRow;
}

void LedgerWindow::connectParts() {
    // Whoever goes along the tabs by arrow keys goes on along them.
    connect(m_tabs, &QTabWidget::currentChanged, this, [this] {
        if (!m_tabs->tabBar()->hasFocus()) focusPage();
    });
    connect(m_list, &JobsList::openAsked, this, &LedgerWindow::openJob);
    connect(m_list, &JobsList::exportAsked, this, &LedgerWindow::exportJobs);
    connect(&m_clerk, &LedgerClerk::opened, this, &LedgerWindow::ledgerOpened);
    connect(&m_clerk, &LedgerClerk::refused, this, &LedgerWindow::refused);
    connect(m_foot, &TakeInBar::placeAsked, this, &LedgerWindow::placeAsked);
    connect(m_foot, &TakeInBar::began, this, [this] { say({}); });
    connect(m_foot, &TakeInBar::ended, this, [this](const QString& unread, bool changed) {
        if (!unread.isEmpty()) say(unread);
        m_clerk.reopen(); // what was damaged has been put aside
        if (changed) refresh();
    });
    connect(&m_outside.desk, &LedgerDesk::accessChanged, this, &LedgerWindow::followAccess);
    connect(&m_outside.desk, &LedgerDesk::entered, this, [this] {
        if (isVisible() && m_list->isNearTop()) refresh();
    });
    connect(&m_outside.settings, &LedgerSettingsStore::changed, this, &LedgerWindow::followUnits);
}

void LedgerWindow::followAccess() {
    LedgerDesk& desk = m_outside.desk;
    m_clerk.setAccess(desk.access());
    m_passwordRow->setVisible(desk.wantsPassword());
    m_passwordWhy->setText(desk.whyNot());
    if (desk.access()) {
        if (isVisible()) refresh();
        return;
    }
    const QString why =
        desk.whyNot().isEmpty()
            ? tr("No ledger is kept. \"Where it lies …\" below says whether jobs are entered.")
            : desk.whyNot();
    m_list->setObstacle(why);
    for (TotalsPage* page : m_totals)
        page->setObstacle(why);
}

void LedgerWindow::followUnits() {
    for (TotalsPage* page : m_totals) {
        page->setUnits(chosenUnits(m_outside.settings.value().units));
        if (isVisible() && m_outside.desk.access()) page->refresh();
    }
}

void LedgerWindow::refresh() {
    if (!m_outside.desk.access()) return;
    m_list->refresh();
    for (TotalsPage* page : m_totals)
        page->refresh();
}

void LedgerWindow::ledgerOpened(const QString& notice, bool isNew) {
    // Once: whoever gave it up is not begun with again.
    const auto& access = m_outside.desk.access();
    if (isNew && std::exchange(m_filling, access) != access) m_foot->fill(!notice.isEmpty());
    if (!notice.isEmpty()) say(notice);
}

void LedgerWindow::refused(const QString& kind, const QString& problem) {
    const QString sentence = tr("The ledger cannot be asked: %1.").arg(problem);
    if (kind == exportKind) return say(tr("Nothing was written: %1.").arg(problem));
    if (kind == takeOutKind) return say(tr("It stays in the list: %1.").arg(problem));
    m_list->setObstacle(sentence);
    say(sentence, tr("Try again"), [this] { refresh(); });
}

void LedgerWindow::say(const QString& sentence, const QString& remedy,
                       std::function<void()> action) {
    m_notice->setText(sentence);
    m_notice->setAccessibleName(sentence);
    m_remedy->setText(remedy);
    m_remedy->setAccessibleName(remedy);
    m_remedy->setHidden(remedy.isEmpty());
    m_action = std::move(action);
    m_noticeRow->setHidden(sentence.isEmpty());
}

QString LedgerWindow::notice() const {
    return m_notice->text();
}

void LedgerWindow::openJob(const QString& file) {
    const auto facts = m_outside.files.facts(file.toStdString());
    if (!facts && facts.error() == FileFault::notFound)
        return say(tr("%1 is not there any more: it was moved, given another name or deleted since "
                      "it was entered. Take in the folder that it lies in now, and it is found "
                      "again.")
                       .arg(QDir::toNativeSeparators(file)),
                   tr("Take it out of the list"), [this, file] { takeOut(file); });
    say(m_outside.open(file));
}

void LedgerWindow::takeOut(const QString& file) {
    m_clerk.ask<bool>(
        takeOutKind,
        [file = file.toStdString()](LedgerStore& store) -> Result<bool> {
            if (const auto gone = store.forget(file); !gone) return tl::unexpected(gone.error());
            return true;
        },
        [this](bool) { refresh(); });
}

void LedgerWindow::exportJobs() {
    exportSheet(QStringLiteral("jobs"), QStringLiteral("jobs"),
                [question = m_list->question(),
                 units = chosenUnits(m_outside.settings.value().units)](LedgerStore& store) {
                    return jobsSheet(store, question, units);
                });
}

// Asked and written on the clerk's thread: neither a long list nor a slow disk holds the window.
void LedgerWindow::exportSheet(const QString& proposal, const QString& list,
                               const std::function<Result<LedgerSheet>(LedgerStore&)>& sheet) {
    if (!m_outside.desk.access()) return;
    QString path = m_outside.dialogs.fileToSave(this, tr("Export what the ledger answers"),
                                                m_outside.workbookFolder + u'/' + proposal +
                                                    QStringLiteral(".csv"),
                                                tr("Table (*.csv);;JSON (*.json)"));
    if (path.isEmpty()) return;
    if (QFileInfo(path).suffix().isEmpty()) path += QStringLiteral(".csv");
    const bool json = path.endsWith(QStringLiteral(".json"), Qt::CaseInsensitive);
    m_clerk.ask<QString>(
        exportKind,
        [sheet, json, path, list, &files = m_outside.files](LedgerStore& store) -> Result<QString> {
            const auto answered = sheet(store);
            if (!answered) return tl::unexpected(answered.error());
            const auto saved = save(files, path.toStdString(),
                                    json ? answered->json(list.toStdString()) : answered->csv());
            if (!saved) return tl::unexpected(saved.error());
            return path;
        },
        [this](const QString& written) {
            m_foot->say(tr("Written: %1").arg(QDir::toNativeSeparators(written)));
        });
}

void LedgerWindow::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (event->spontaneous()) return;
    refresh();
    if (m_passwordRow->isVisible())
        m_password->setFocus();
    else
        focusPage();
}

// What is typed next belongs to the question in sight.
void LedgerWindow::focusPage() {
    if (m_tabs->currentWidget() == m_list) return m_list->focusFilter();
    for (TotalsPage* page : m_totals)
        if (m_tabs->currentWidget() == page) page->focusField();
}

void LedgerWindow::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        close();
    else if (event->key() == Qt::Key_F5)
        refresh();
    else
        QWidget::keyPressEvent(event);
}

// Another bench may have entered jobs while nobody looked here.
void LedgerWindow::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::ActivationChange && isActiveWindow() && m_list->isNearTop())
        refresh();
}

} // namespace borewright
