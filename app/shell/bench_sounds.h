// SPDX-License-Identifier: GPL-3.0-or-later
// The sounds of the bench through the desk's sound service, where the program was built with it;
// else silence. A refusal sounds like an odd reading: both ask to look at the screen.
#pragma once

#include "app/context/preferences.h"
#include "app/context/sounds.h"

#include <memory>

namespace borewright {

class BenchSounds final : public Sounds {
public:
    // Writes the sounds out into `folder`, since the service plays files, when the first is heard.
    BenchSounds(const PreferencesStore& preferences, QString folder);
    ~BenchSounds() override;
    BenchSounds(const BenchSounds&) = delete;
    BenchSounds& operator=(const BenchSounds&) = delete;

    void kept() override;
    void odd() override;
    void refused() override;
    void beat() override;
    void enough() override;

private:
    void play(const QString& name);

    struct Player;
    const PreferencesStore& m_preferences;
    QString m_folder;
    std::unique_ptr<Player> m_player;
};

} // namespace borewright
