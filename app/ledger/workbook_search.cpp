// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/ledger/workbook_search.h"

#include "core/storage/workbook_file.h"

#include <algorithm>
#include <set>

namespace borewright {
namespace {

constexpr int deepest = 64; // folders within folders

class Search {
public:
    Search(FileSystem& files, const std::function<bool()>& goesOn)
        : m_files(files)
        , m_goesOn(goesOn) {}

    void look(const std::string& path, int depth, bool named) {
        const auto facts = m_files.facts(path);
        if (!facts) {
            // A link to nowhere inside a folder is nobody's loss.
            if (named || facts.error() != FileFault::notFound)
                found.unread.emplace_back(path, std::string(inWords(facts.error())));
            return;
        }
        if (facts->kind == FileFacts::Kind::file && (named || path.ends_with(workbookExtension)))
            found.files.push_back(path);
        if (facts->kind == FileFacts::Kind::folder && isNew(*facts)) lookInto(path, depth);
    }

    FoundWorkbooks found;

private:
    void lookInto(const std::string& folder, int depth) {
        if (m_goesOn && !m_goesOn()) return;
        if (depth == deepest) {
            found.unread.emplace_back(folder, "it lies too deep in folders");
            return;
        }
        auto names = m_files.list(folder);
        if (!names) {
            found.unread.emplace_back(folder, std::string(inWords(names.error())));
            return;
        }
        std::ranges::sort(*names);
        const std::string before = folder.ends_with('/') ? folder : folder + '/';
        for (const std::string& name : *names)
            if (!name.starts_with('.')) look(before + name, depth + 1, false);
    }

    bool isNew(const FileFacts& folder) {
        return folder.id == 0 || m_seen.emplace(folder.id, folder.modified).second;
    }

    FileSystem& m_files;
    const std::function<bool()>& m_goesOn;
    std::set<std::pair<std::uint64_t, std::int64_t>> m_seen;
};

} // namespace

FoundWorkbooks findWorkbooks(FileSystem& files, const std::vector<std::string>& places,
                             const std::function<bool()>& goesOn) {
    Search search(files, goesOn);
    for (const std::string& place : places)
        search.look(place, 0, true);
    auto& found = search.found.files;
    std::ranges::sort(found);
    found.erase(std::unique(found.begin(), found.end()), found.end());
    return std::move(search.found);
}

} // namespace borewright
