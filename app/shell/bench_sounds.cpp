// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/bench_sounds.h"

#include <QDir>
#include <QFile>

#ifdef BOREWRIGHT_SOUND
#include <canberra.h>
#endif

namespace borewright {

#ifdef BOREWRIGHT_SOUND

struct BenchSounds::Player {
    Player() { ca_context_create(&context); }
    ~Player() {
        if (context != nullptr) ca_context_destroy(context);
    }
    Player(const Player&) = delete;
    Player& operator=(const Player&) = delete;

    void play(const QString& file) {
        if (context == nullptr) return;
        // Plays in the service's own thread; where there is none it fails quietly.
        ca_context_play(context, 0, CA_PROP_MEDIA_FILENAME, QFile::encodeName(file).constData(),
                        CA_PROP_EVENT_DESCRIPTION, "reading", nullptr);
    }

    ca_context* context = nullptr;
};

void BenchSounds::play(const QString& name) {
    const QString file = m_folder + '/' + name + QStringLiteral(".wav");
    const QString source = QStringLiteral(":/sounds/") + name + QStringLiteral(".wav");
    if (!QFile::exists(file)) {
        QDir().mkpath(m_folder);
        QFile::copy(source, file);
    }
    if (!m_player) m_player = std::make_unique<Player>();
    m_player->play(file);
}

#else

struct BenchSounds::Player {};

void BenchSounds::play(const QString&) {}

#endif

BenchSounds::BenchSounds(const PreferencesStore& preferences, QString folder)
    : m_preferences(preferences)
    , m_folder(std::move(folder)) {}

BenchSounds::~BenchSounds() = default;

void BenchSounds::kept() {
    if (m_preferences.value().soundKept) play(QStringLiteral("kept"));
}

void BenchSounds::odd() {
    if (m_preferences.value().soundOdd) play(QStringLiteral("odd"));
}

void BenchSounds::refused() {
    odd();
}

// Who starts the stop-watch asked for them, whatever readings may sound like.
void BenchSounds::beat() {
    play(QStringLiteral("beat"));
}

void BenchSounds::enough() {
    play(QStringLiteral("enough"));
}

} // namespace borewright
