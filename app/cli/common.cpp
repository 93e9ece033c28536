// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/common.h"

#include "core/storage/workbook_file.h"

#include <algorithm>
#include <cctype>

namespace borewright {
namespace {

std::size_t widthOf(std::string_view text) {
    return static_cast<std::size_t>(std::ranges::count_if(
        text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

// A letter before any digit.
bool isWords(std::string_view cell) {
    constexpr auto isDigit = [](char c) { return c >= '0' && c <= '9'; };
    constexpr auto isLetter = [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    };
    for (const char c : cell)
        if (isDigit(c) || isLetter(c)) return isLetter(c);
    return false;
}

std::string surveyNames(const Workbook& workbook) {
    std::string names;
    for (const Survey& survey : workbook.surveys) {
        if (!names.empty()) names += ", ";
        names += "'" + survey.header.name + "' (" + survey.header.id + ")";
    }
    return names;
}

} // namespace

Result<Workbook> loadNamed(FileSystem& files, const std::string& path) {
    return loadWorkbook(files, path).map_error([&](const Error& e) { return e.within(path); });
}

Result<const Survey*> chooseSurvey(const Workbook& workbook, const std::string& wanted) {
    if (workbook.surveys.empty()) return refuse("nothing has been measured yet");
    if (wanted.empty()) return &workbook.surveys.back();
    if (const Survey* byId = findSurvey(workbook, wanted)) return byId;
    const Survey* found = nullptr;
    for (const Survey& survey : workbook.surveys) {
        if (survey.header.name != wanted) continue;
        if (found != nullptr)
            return refuse("several surveys are called '" + wanted +
                          "'; name one by its id: " + surveyNames(workbook));
        found = &survey;
    }
    if (found == nullptr)
        return refuse("there is no survey '" + wanted + "'; there is " + surveyNames(workbook));
    return found;
}

Result<DisplayUnits> chooseUnits(const Workbook& workbook, const std::string& wanted) {
    if (wanted.empty()) return naturalUnits(workbook);
    if (wanted == "inch") return DisplayUnits::inch();
    if (wanted == "metric") return DisplayUnits::metric();
    return refuse("--units", "'" + wanted + "' is neither inch nor metric");
}

bool hasExtension(std::string_view path, std::string_view extension) {
    if (path.size() < extension.size()) return false;
    const std::string_view end = path.substr(path.size() - extension.size());
    return std::ranges::equal(end, extension, [](unsigned char a, unsigned char b) {
        return std::tolower(a) == std::tolower(b);
    });
}

std::string alignedTable(const std::vector<std::vector<std::string>>& rows) {
    std::vector<std::size_t> widths;
    std::vector<bool> words; // by column
    for (const auto& row : rows) {
        widths.resize(std::max(widths.size(), row.size()));
        words.resize(widths.size());
        for (std::size_t i = 0; i < row.size(); ++i) {
            widths[i] = std::max(widths[i], widthOf(row[i]));
            words[i] = words[i] || (&row != &rows.front() && isWords(row[i]));
        }
    }
    std::string text;
    for (const auto& row : rows) {
        for (std::size_t i = 0; i < row.size(); ++i) {
            const bool first = i == 0;
            const bool last = i + 1 == widths.size();
            const std::string padding(widths[i] - widthOf(row[i]), ' ');
            if (!first) text += "  ";
            if (last)
                text += row[i];
            else if (first || words[i])
                text += row[i] + padding;
            else
                text += padding + row[i];
        }
        while (!text.empty() && text.back() == ' ')
            text.pop_back();
        text += '\n';
    }
    return text;
}

} // namespace borewright
