// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/ledger/postgres_server.h"

#include <QDir>
#include <QElapsedTimer>
#include <QFile>
#include <QThread>

#include <arpa/inet.h>
#include <csignal>
#include <netinet/in.h>
#include <sys/prctl.h>
#include <sys/socket.h>
#include <unistd.h>

namespace borewright::test {
namespace {

constexpr int patience_ms = 60'000;
const QString user = QStringLiteral("bench");
const QString secretWord = QStringLiteral("only for this test");

QString programFolder() {
    const QDir versions(QStringLiteral("/usr/lib/postgresql"));
    const QStringList names = versions.entryList(QDir::Dirs | QDir::NoDotAndDotDot);
    return names.isEmpty() ? QString() : versions.filePath(names.last() + "/bin");
}

// A port that nobody had a moment ago.
int freePort() {
    const int socket = ::socket(AF_INET, SOCK_STREAM, 0);
    sockaddr_in address{};
    address.sin_family = AF_INET;
    address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    socklen_t length = sizeof address;
    ::bind(socket, reinterpret_cast<sockaddr*>(&address), length);
    ::getsockname(socket, reinterpret_cast<sockaddr*>(&address), &length);
    ::close(socket);
    return ntohs(address.sin_port);
}

bool write(const QString& path, const QString& text) {
    QFile file(path);
    return file.open(QIODevice::WriteOnly) && file.write(text.toUtf8()) > 0 &&
           file.setPermissions(QFile::ReadOwner | QFile::WriteOwner);
}

} // namespace

PostgresServer& PostgresServer::theOne() {
    static PostgresServer server;
    return server;
}

PostgresServer::PostgresServer() {
    m_programs = programFolder();
    if (m_programs.isEmpty())
        m_problem = "there is no PostgreSQL below /usr/lib/postgresql; install the package "
                    "postgresql (resources/prepare does)";
    else if (prepare())
        start();
}

PostgresServer::~PostgresServer() {
    m_server.kill();
    m_server.waitForFinished(patience_ms);
}

// The server refuses to run as root; then it runs as the user who owns nothing.
QStringList PostgresServer::command(const QString& program, bool asServer) const {
    const QString path = program.startsWith(u'/') ? program : m_programs + u'/' + program;
    if (!asServer || ::geteuid() != 0) return {path};
    return {"setpriv", "--reuid=nobody", "--regid=nogroup", "--clear-groups", path};
}

bool PostgresServer::run(const QString& program, const QStringList& arguments, bool asServer) {
    QStringList words = command(program, asServer) + arguments;
    QProcess process;
    process.setProcessChannelMode(QProcess::MergedChannels);
    process.setWorkingDirectory(QStringLiteral("/"));
    process.start(words.takeFirst(), words);
    if (process.waitForFinished(patience_ms) && process.exitStatus() == QProcess::NormalExit &&
        process.exitCode() == 0)
        return true;
    m_problem = "'" + program.toStdString() + "' failed: " + process.errorString().toStdString() +
                "; " + process.readAll().toStdString();
    return false;
}

bool PostgresServer::prepare() {
    m_port = freePort();
    const QString secret = m_folder.filePath("secret");
    const QString passwords = m_folder.filePath("pgpass");
    if (!m_folder.isValid() || !write(secret, secretWord) ||
        !write(passwords, QStringLiteral("*:*:*:%1:%2\n").arg(user, secretWord))) {
        m_problem = "no temporary folder for the server can be made";
        return false;
    }
    usePasswordFile();
    if (::geteuid() == 0 && !run("/bin/chown", {"nobody:nogroup", m_folder.path(), secret}, false))
        return false;
    return run("initdb",
               {"--pgdata", m_folder.filePath("data"), "--username", user, "--pwfile", secret,
                "--auth", "scram-sha-256", "--encoding", "UTF8", "--locale", "C.UTF-8",
                "--no-sync"},
               true);
}

std::string PostgresServer::password() const {
    return secretWord.toStdString();
}

void PostgresServer::usePasswordFile() const {
    qputenv("PGPASSFILE", m_folder.filePath("pgpass").toUtf8());
}

// SIGHUP makes it read its settings again; new connections follow them.
bool PostgresServer::setTls(bool offered) {
    const QString key = m_folder.filePath("data/server.key");
    if (offered && !QFile::exists(key) &&
        !run("/usr/bin/openssl",
             {"req", "-x509", "-newkey", "rsa:2048", "-nodes", "-days", "2", "-subj",
              "/CN=bench-server", "-keyout", key, "-out", m_folder.filePath("data/server.crt")},
             true))
        return false;
    QFile settings(m_folder.filePath("data/postgresql.auto.conf"));
    const QByteArray text = offered ? "ssl = on\n" : "ssl = off\n";
    if (!settings.open(QIODevice::WriteOnly) || settings.write(text) != text.size()) return false;
    settings.close();
    ::kill(static_cast<pid_t>(m_server.processId()), SIGHUP);
    QThread::msleep(300); // it says nowhere that it has
    return true;
}

void PostgresServer::start() {
    QStringList words = command("postgres", true);
    words << "-D" << m_folder.filePath("data") << "-k" << m_folder.path() << "-h"
          << "127.0.0.1"
          << "-p" << QString::number(m_port) << "-c"
          << "fsync=off";
    // Its log goes to a file: nobody reads a pipe, and a full one would stop the server.
    const QString log = m_folder.filePath("log");
    m_server.setProcessChannelMode(QProcess::MergedChannels);
    m_server.setStandardOutputFile(log, QIODevice::Append);
    m_server.setWorkingDirectory(QStringLiteral("/"));
    // Ends with this process, however that ends.
    m_server.setChildProcessModifier([] { ::prctl(PR_SET_PDEATHSIG, SIGKILL); });
    const QString program = words.takeFirst();
    m_server.start(program, words);
    QElapsedTimer waited;
    waited.start();
    const QStringList ask{"-h", "127.0.0.1", "-p", QString::number(m_port), "-q"};
    while (m_server.state() != QProcess::NotRunning && waited.elapsed() < patience_ms) {
        m_server.waitForStarted(1000);
        if (QProcess::execute(m_programs + "/pg_isready", ask) == 0) return;
        QThread::msleep(50);
    }
    QFile told(log);
    (void)told.open(QIODevice::ReadOnly);
    m_problem = "the PostgreSQL server does not start: " + m_server.errorString().toStdString() +
                "; " + told.readAll().toStdString();
}

LedgerPlace PostgresServer::freshDatabase() {
    const QString name = QStringLiteral("ledger%1").arg(++m_databases);
    if (m_problem.empty())
        run("createdb", {"-h", "127.0.0.1", "-p", QString::number(m_port), "-U", user, "-w", name},
            false);
    return {{}, LedgerServer{"127.0.0.1", m_port, name.toStdString(), user.toStdString()}};
}

LedgerPlace PostgresServer::at(LedgerPlace place, const std::string& host) const {
    place.server->host = host;
    return place;
}

// SIGQUIT is the server's own "stop at once": its children end with it, nothing is put in order.
void PostgresServer::kill() {
    ::kill(static_cast<pid_t>(m_server.processId()), SIGQUIT);
    m_server.waitForFinished(patience_ms);
}

void PostgresServer::startAgain() {
    start();
}

} // namespace borewright::test
