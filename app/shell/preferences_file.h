// SPDX-License-Identifier: GPL-3.0-or-later
// The preferences as a file (JSON). Read strictly: a damaged file is put aside and the defaults
// are used, with a sentence about it.
#pragma once

#include "app/context/preferences.h"
#include "core/storage/file_system.h"

#include <string>
#include <string_view>

namespace borewright {

std::string writePreferences(const Preferences& preferences);
// Refuses what is not such a file, naming the field; a field that is missing has its default.
Result<Preferences> readPreferences(std::string_view bytes);

// Whether a folder of dated copies may be kept in the preferences: none, or a path from the top.
bool isWholePath(const QString& folder);

// Keeps a store's value in the file at `path`.
class PreferencesFile : public QObject {
    Q_OBJECT
public:
    // Loads into `store`, then saves each change.
    PreferencesFile(PreferencesStore& store, FileSystem& files, QString path,
                    QObject* parent = nullptr);
    // What has to be said about loading or the last save; empty where all is well.
    [[nodiscard]] const QString& notice() const { return m_notice; }

signals:
    void failed(const QString& sentence);

private:
    void load();
    void take(Preferences preferences);
    void save();

    PreferencesStore& m_store;
    FileSystem& m_files;
    QString m_path;
    QString m_notice;
};

} // namespace borewright
