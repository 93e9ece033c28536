// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/workshop.h"

#include "app/shell/workbook_name.h"
#include "core/storage/workbook_file.h"

#include <QDir>
#include <QFileInfo>

namespace borewright {
namespace {

constexpr int mostRecent = 8;

} // namespace

Workshop::Workshop(const Outside& outside, QObject* parent)
    : QObject(parent)
    , m_outside(outside)
    , m_document(outside.clock)
    , m_selection(m_document)
    , m_autosaver(m_document, outside.files, outside.rescueFolder) {}

Workshop::~Workshop() = default;

PageContext Workshop::context() {
    return {m_document,        m_selection,      m_outside.preferences,
            m_outside.dialogs, m_outside.sounds, m_outside.files};
}

Result<void> Workshop::open(const QString& path) {
    const QString whole = QFileInfo(path).absoluteFilePath();
    auto workbook = loadWorkbook(m_outside.files, whole.toStdString());
    if (!workbook) return tl::unexpected(workbook.error());
    m_document.open(std::move(*workbook));
    m_autosaver.setPath(whole);
    becameOpen(whole);
    return {};
}

void Workshop::begin(Workbook workbook) {
    // Where the folder cannot be made the first save fails and says so.
    (void)m_outside.files.makeFolders(m_outside.workbookFolder.toStdString());
    const QString path = freshPath(m_outside.files, m_outside.workbookFolder,
                                   proposedName(workbook, m_document.now()));
    m_document.open(std::move(workbook));
    m_autosaver.saveAs(path);
    becameOpen(path);
}

void Workshop::saveAs(const QString& path) {
    m_autosaver.saveAs(path);
    remember(path);
}

void Workshop::becameOpen(const QString& path) {
    m_open = true;
    remember(path);
    emit opened();
}

void Workshop::remember(const QString& path) {
    Preferences preferences = m_outside.preferences.value();
    preferences.lastFile = path;
    preferences.recentFiles.removeAll(path);
    preferences.recentFiles.prepend(path);
    while (preferences.recentFiles.size() > mostRecent)
        preferences.recentFiles.removeLast();
    m_outside.preferences.set(preferences);
}

} // namespace borewright
