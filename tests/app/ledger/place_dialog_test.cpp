// SPDX-License-Identifier: GPL-3.0-or-later
// Where the ledger lies is chosen and tried by keys alone; a password goes to the keyring or
// nowhere, and another machine is never reached in clear.
#include "app/jobs/place_dialog.h"

#include "tests/app/form_hands.h"
#include "tests/app/ledger/ledger_desk_support.h"
#include "tests/app/ledger/postgres_server.h"

#include <QDir>
#include <QElapsedTimer>
#include <QRadioButton>
#include <QSpinBox>

namespace borewright {
namespace {

using namespace test;
using Password = LedgerSettings::Password;

class PlaceDialogTest : public LedgerDeskTest {
protected:
    PlaceDialogTest() {
        start();
        dialog = new PlaceDialog(*desk, *settings);
        dialog->show();
        dialog->activateWindow();
        QTest::qWait(1);
    }
    ~PlaceDialogTest() override {
        delete dialog;
        PostgresServer::theOne().usePasswordFile();
        PostgresServer::theOne().setTls(false);
    }
    PlaceDialogTest(const PlaceDialogTest&) = delete;
    PlaceDialogTest& operator=(const PlaceDialogTest&) = delete;

    // Fills the form in for a server; the password is no business of the server's own file.
    void fillServer(const LedgerPlace& place, Password from, const std::string& password) {
        qputenv("PGPASSFILE", path("no-such-file").toUtf8());
        QTest::keyClick(dialog->findChildren<QRadioButton*>().last(), Qt::Key_Space);
        fillIn(*dialog, "Machine", place.server->host.c_str());
        named<QSpinBox>(*dialog, "Port")->setValue(place.server->port);
        fillIn(*dialog, "Database", place.server->database.c_str());
        fillIn(*dialog, "User", place.server->user.c_str());
        choose(*dialog, "Password comes", static_cast<int>(from));
        if (from != Password::passwordFile) fillIn(*dialog, "Password", password.c_str());
    }
    // Presses the button and waits for what is said.
    std::string press(const QString& name) {
        QElapsedTimer took;
        took.start();
        button(*dialog, name)->click();
        EXPECT_LT(took.elapsed(), 100) << "the window stood still";
        EXPECT_TRUE(QTest::qWaitFor([&] { return !dialog->told().isEmpty(); }, 20'000));
        return dialog->told().toStdString();
    }
    LedgerPlace fresh() {
        const LedgerPlace place = PostgresServer::theOne().freshDatabase();
        EXPECT_EQ(PostgresServer::theOne().problem(), "");
        return place;
    }
    static std::string right() { return PostgresServer::theOne().password(); }

    PlaceDialog* dialog;
};

TEST_F(PlaceDialogTest, SaysWhatIsMissingBeforeAnythingIsTried) {
    QTest::keyClick(dialog->findChildren<QRadioButton*>().last(), Qt::Key_Space);
    EXPECT_EQ(press("Try it"), "Say which machine the server runs on.");
    fillIn(*dialog, "Machine", "bench-server");
    EXPECT_EQ(press("Keep it there"), "Say which database of the server it is.");
    EXPECT_FALSE(settings->value().onServer) << "nothing is kept half";
}

TEST_F(PlaceDialogTest, AFileOfOnesOwnIsTried) {
    const std::string said = press("Try it");
    EXPECT_EQ(said, "The file can be used: " + path("data/ledger.sqlite").toStdString() +
                        ". Its tables were made. It holds no job yet.");
    EXPECT_NE(press("Try it").find("Its tables are there."), std::string::npos);
}

TEST_F(PlaceDialogTest, AServerIsReachedOrSaysWhyNot) {
    const LedgerPlace place = fresh();
    fillServer(place, Password::asked, "wrong");
    EXPECT_NE(press("Try it").find("the server refuses this user or this password"),
              std::string::npos)
        << dialog->told().toStdString();
    fillIn(*dialog, "Password", right().c_str());
    EXPECT_EQ(dialog->told(), "") << "what was said is about another password";
    const std::string said = press("Try it");
    EXPECT_TRUE(said.starts_with("Reached: PostgreSQL 1")) << said;
    EXPECT_NE(said.find("not encrypted, on this machine. Its tables were made. It holds no job"),
              std::string::npos)
        << said;
    fillIn(*dialog, "Database", "nothing");
    EXPECT_NE(press("Try it").find("the server has no database of that name"), std::string::npos)
        << dialog->told().toStdString();
    named<QSpinBox>(*dialog, "Port")->setValue(1);
    EXPECT_NE(press("Try it").find("nothing answers there"), std::string::npos)
        << dialog->told().toStdString();
    fillIn(*dialog, "Machine", "no-such-machine.invalid");
    EXPECT_NE(press("Try it").find("no machine of that name is known"), std::string::npos)
        << dialog->told().toStdString();
}

// 0.0.0.0 reaches this machine by a name that the ledger cannot know to be it.
TEST_F(PlaceDialogTest, AnotherMachineIsReachedEncryptedOrNotAtAll) {
    PostgresServer& server = PostgresServer::theOne();
    const LedgerPlace place = server.at(fresh(), "0.0.0.0");
    fillServer(place, Password::asked, right());
    EXPECT_NE(press("Try it").find("nothing goes to another machine in clear"), std::string::npos)
        << dialog->told().toStdString();
    ASSERT_TRUE(server.setTls(true)) << server.problem();
    const std::string said = press("Try it");
    EXPECT_NE(said.find(", encrypted."), std::string::npos) << said;
    for (const QLabel* label : dialog->findChildren<QLabel*>())
        if (label->text() == "Another machine: encrypted (TLS), always.") return;
    ADD_FAILURE() << "it is not said that TLS is on";
}

TEST_F(PlaceDialogTest, KeptInTheKeyringItIsFoundAtTheNextStartAndInNoFile) {
    const LedgerPlace place = fresh();
    fillServer(place, Password::keyring, right());
    const std::string said = press("Keep it there");
    EXPECT_TRUE(said.starts_with("Kept.")) << said;
    EXPECT_EQ(keyring.secrets.at(LedgerDesk::secretName(*place.server)), right());
    EXPECT_EQ(named<QLineEdit>(*dialog, "Password")->text(), "") << "nothing of it stays on screen";
    QFile file(path("config/ledger.json"));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_FALSE(file.readAll().contains(right().c_str()));
    start();
    ASSERT_TRUE(QTest::qWaitFor([&] { return desk->access().has_value(); }));
    EXPECT_EQ(*desk->access(), (LedgerAccess{place, right()}));
    dialog->close();
    dialog = nullptr; // deletes itself
}

TEST_F(PlaceDialogTest, APasswordThatIsAskedForNoMoreLeavesTheKeyring) {
    const LedgerPlace place = fresh();
    fillServer(place, Password::keyring, right());
    EXPECT_TRUE(press("Keep it there").starts_with("Kept.")) << dialog->told().toStdString();
    ASSERT_EQ(keyring.secrets.size(), 1U);
    EXPECT_TRUE(press("Keep it there").starts_with("Kept.")) << dialog->told().toStdString();
    QTest::qWait(20);
    EXPECT_EQ(keyring.secrets.size(), 1U) << "it is asked for still";
    choose(*dialog, "Password comes", static_cast<int>(Password::asked));
    keyring.problem = "the keyring stays locked";
    EXPECT_TRUE(press("Keep it there").starts_with("Kept.")) << dialog->told().toStdString();
    EXPECT_TRUE(QTest::qWaitFor([&] {
        return dialog->told().endsWith("The earlier password is still in the keyring: the keyring "
                                       "stays locked.");
    })) << dialog->told().toStdString();
    keyring.problem.clear();
    choose(*dialog, "Password comes", static_cast<int>(Password::keyring));
    fillIn(*dialog, "Password", right().c_str());
    EXPECT_TRUE(press("Keep it there").starts_with("Kept.")) << dialog->told().toStdString();
    choose(*dialog, "Password comes", static_cast<int>(Password::passwordFile));
    EXPECT_TRUE(press("Keep it there").starts_with("Kept.")) << dialog->told().toStdString();
    EXPECT_TRUE(QTest::qWaitFor([&] { return keyring.secrets.empty(); }));
}

TEST_F(PlaceDialogTest, WithoutAKeyringItSaysSoOffersTheOthersAndKeepsNothing) {
    keyring.problem = "no keyring runs on this desk";
    fillServer(fresh(), Password::keyring, right());
    EXPECT_EQ(
        press("Keep it there"),
        "The password was not kept: no keyring runs on this desk. Nothing was changed. Choose "
        "the server's password file, or type it in at each start.");
    EXPECT_FALSE(settings->value().onServer);
    choose(*dialog, "Password comes", static_cast<int>(Password::asked));
    EXPECT_TRUE(press("Keep it there").starts_with("Kept.")) << dialog->told().toStdString();
    ASSERT_TRUE(desk->access().has_value()) << "what was typed counts until the program ends";
    EXPECT_EQ(desk->access()->password, right());
}

TEST_F(PlaceDialogTest, APictureOfItLiesInTheBuild) {
    fillServer({{}, LedgerServer{"bench-server", 5432, "jobs", "anna"}}, Password::keyring, "1234");
    const QString pictures = QStringLiteral(BOREWRIGHT_BUILD_DIR "/pictures");
    ASSERT_TRUE(QDir().mkpath(pictures));
    QTest::qWait(20);
    EXPECT_TRUE(dialog->grab().save(pictures + "/ledger-place.png"));
}

} // namespace
} // namespace borewright
