// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/jobs/take_in_bar.h"

#include "app/fields/elided_label.h"

#include <QDir>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QProgressBar>
#include <QPushButton>

namespace borewright {

TakeInBar::TakeInBar(LedgerDesk& desk, ChooseFolder chooseFolder, FileSystem& files,
                     QString usualFolder, QWidget* parent)
    : QWidget(parent)
    , m_desk(desk)
    , m_chooseFolder(std::move(chooseFolder))
    , m_files(files)
    , m_usualFolder(std::move(usualFolder))
    , m_rebuilding(files)
    , m_words(new ElidedLabel(this))
    , m_progress(new QProgressBar(this))
    , m_folder(new QPushButton(tr("Take in a &folder …"), this))
    , m_again(new QPushButton(tr("Take in &once more"), this))
    , m_giveUp(new QPushButton(tr("Give &up"), this)) {
    build();
    connect(&m_rebuilding, &LedgerRebuilding::progressed, this, &TakeInBar::showProgress);
    connect(&m_rebuilding, &LedgerRebuilding::finished, this, &TakeInBar::finished);
    connect(&desk, &LedgerDesk::accessChanged, this, &TakeInBar::followAccess);
    followAccess();
}

void TakeInBar::build() {
    m_progress->setAccessibleName(tr("Workbooks taken in"));
    m_again->setToolTip(tr("Makes the ledger anew from the folders that it was made from before"));
    auto* place = new QPushButton(tr("&Where it lies …"), this);
    connect(m_folder, &QPushButton::clicked, this, &TakeInBar::chooseFolder);
    connect(m_again, &QPushButton::clicked, this, [this] { start({}); });
    connect(m_giveUp, &QPushButton::clicked, &m_rebuilding, &LedgerRebuilding::cancel);
    connect(place, &QPushButton::clicked, this, &TakeInBar::placeAsked);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_words, 1);
    row->addWidget(m_progress);
    for (QPushButton* button : {m_giveUp, m_folder, m_again, place})
        row->addWidget(button);
    m_progress->hide();
    m_giveUp->hide();
}

void TakeInBar::say(const QString& sentence) {
    m_words->setText(sentence, sentence);
}

void TakeInBar::followAccess() {
    const auto& access = m_desk.access();
    m_folder->setEnabled(access.has_value());
    m_again->setEnabled(access.has_value());
    if (!access) return say({});
    const QString where = QDir::toNativeSeparators(QString::fromStdString(inWords(access->place)));
    say(where.left(1).toUpper() + where.mid(1));
}

void TakeInBar::chooseFolder() {
    if (!m_chooseFolder) return;
    const QString folder =
        m_chooseFolder(this, tr("Choose the folder that your workbooks lie in"), m_usualFolder);
    if (!folder.isEmpty()) takeIn(folder);
}

void TakeInBar::takeIn(const QString& folder) {
    start({QDir::cleanPath(QFileInfo(folder).absoluteFilePath()).toStdString()});
}

void TakeInBar::fill(bool knowsFolders) {
    const std::string usual = m_usualFolder.toStdString();
    const auto facts = m_files.facts(usual);
    if (facts && facts->kind == FileFacts::Kind::folder)
        start({usual});
    else if (knowsFolders)
        start({});
}

void TakeInBar::start(const std::vector<std::string>& folders) {
    const auto& access = m_desk.access();
    if (!access || isUnderWay()) return;
    m_rebuilding.start(*access, folders);
    showProgress(0, 0);
    emit began();
}

void TakeInBar::showProgress(qint64 done, qint64 all) {
    if (!isUnderWay()) return;
    m_progress->show();
    m_giveUp->show();
    m_folder->hide();
    m_again->hide();
    m_progress->setRange(0, static_cast<int>(all)); // 0 to 0: how many there are is not known yet
    m_progress->setValue(static_cast<int>(done));
    say(all == 0 ? tr("Looking for workbooks …")
                 : tr("Taking in workbook %L1 of %L2 …").arg(done).arg(all));
}

void TakeInBar::finished(const QString& sentence, const QStringList& unread, bool changed) {
    const bool hadFocus = m_giveUp->hasFocus();
    m_progress->hide();
    m_giveUp->hide();
    m_folder->show();
    m_again->show();
    if (hadFocus) m_again->setFocus();
    say(sentence);
    constexpr qsizetype mostNamed = 5;
    QString list = unread.mid(0, mostNamed).join(u'\n');
    if (unread.size() > mostNamed)
        list += u'\n' + tr("and %L1 more").arg(unread.size() - mostNamed);
    emit ended(unread.isEmpty()
                   ? QString()
                   : tr("These were not read; the rest is in the ledger.") + u'\n' + list,
               changed);
}

} // namespace borewright
