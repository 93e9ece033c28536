// SPDX-License-Identifier: GPL-3.0-or-later
// Along the foot of the ledger's window: where the ledger lies, and the taking in of workbooks,
// with how far it is and the way to give it up.
#pragma once

#include "app/jobs/ledger_desk.h"
#include "app/jobs/ledger_rebuilding.h"

#include <QWidget>

class QProgressBar;
class QPushButton;

namespace borewright {

class ElidedLabel;

class TakeInBar : public QWidget {
    Q_OBJECT
public:
    using ChooseFolder = std::function<QString(QWidget*, const QString&, const QString&)>;

    // `usualFolder` is where workbooks usually lie.
    TakeInBar(LedgerDesk& desk, ChooseFolder chooseFolder, FileSystem& files, QString usualFolder,
              QWidget* parent = nullptr);

    // Takes in what lies below this folder, and below those of before.
    void takeIn(const QString& folder);
    // A ledger that was begun just now is filled from where workbooks usually lie, and from the
    // folders that it is known to have been made from.
    void fill(bool knowsFolders);
    // A word in passing, in place of where the ledger lies.
    void say(const QString& sentence);
    [[nodiscard]] bool isUnderWay() const { return m_rebuilding.isUnderWay(); }

signals:
    // It has begun; it has ended: what could not be read, in a sentence or empty, and whether the
    // ledger holds something else now.
    void began();
    void ended(const QString& unread, bool changed);
    // The user wants to say where the ledger lies.
    void placeAsked();

private:
    void build();
    void followAccess();
    void chooseFolder();
    void start(const std::vector<std::string>& folders);
    void showProgress(qint64 done, qint64 all);
    void finished(const QString& sentence, const QStringList& unread, bool changed);

    LedgerDesk& m_desk;
    ChooseFolder m_chooseFolder;
    FileSystem& m_files;
    QString m_usualFolder;
    LedgerRebuilding m_rebuilding;
    ElidedLabel* m_words;
    QProgressBar* m_progress;
    QPushButton* m_folder;
    QPushButton* m_again;
    QPushButton* m_giveUp;
};

} // namespace borewright
