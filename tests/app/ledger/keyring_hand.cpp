// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/ledger/keyring_hand.h"

#include "app/shell/desk_keyring.h"

#include <QCoreApplication>
#include <QTimer>

#include <cstdio>
#include <string_view>

namespace borewright::test {

int useKeyring(int argc, char** argv) {
    QCoreApplication application(argc, argv);
    DeskKeyring keyring;
    const auto say = [](const std::string& words) {
        std::puts(words.c_str());
        QCoreApplication::quit();
    };
    const auto done = [&](const Result<void>& answer) {
        say(answer ? "done" : "refused: " + answer.error().message());
    };
    const std::string_view verb = argv[2];
    const QString name = QString::fromUtf8(argv[3]);
    QTimer::singleShot(0, &application, [&] {
        if (verb == "write" && argc > 4)
            keyring.write(name, argv[4], done);
        else if (verb == "forget")
            keyring.forget(name, done);
        else
            keyring.read(name, [&](const Result<std::string>& found) {
                say(found ? *found : "refused: " + found.error().message());
            });
    });
    return QCoreApplication::exec();
}

} // namespace borewright::test
