// SPDX-License-Identifier: GPL-3.0-or-later
// Readings that look like slips, with their likely stories: one line that says there are some, and,
// opened (F9, or by going to such a reading), what each story would make of it. A key accepts; the
// program changes nothing by itself.
#pragma once

#include "app/context/page_context.h"

#include <QLabel>
#include <QPushButton>
#include <QWidget>

#include <vector>

namespace borewright {

class StoryBar : public QWidget {
    Q_OBJECT
public:
    explicit StoryBar(const PageContext& context, QWidget* parent = nullptr);

    // Opens the next suspicion (after the one that is open) and takes the keys.
    void next();
    [[nodiscard]] bool isOpen() const { return m_open.has_value(); }

signals:
    void done(const QString& what);
    void refused(const QString& why);
    void measureAgain(const borewright::Station& station);
    void left();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void build();
    void follow();
    void showLine();
    void showOpen();
    void accept(std::size_t story);
    void keepAsRead();
    void readAgain();
    void close();
    [[nodiscard]] const SurveyResult* result() const;
    [[nodiscard]] const Suspicion* suspicion() const;
    [[nodiscard]] QString title(const Suspicion& suspicion) const;
    [[nodiscard]] std::optional<Station> stationOf(const Suspicion& suspicion) const;
    // The place of the suspicion that accuses a station of the survey; nothing where none does.
    [[nodiscard]] std::optional<std::size_t> accusing(const Station& station) const;

    static constexpr std::size_t mostStories = 4;

    PageContext m_context;
    std::optional<std::size_t> m_open; // place in the survey's suspicions
    QLabel* m_line;
    QPushButton* m_look;
    QWidget* m_choices;
    std::vector<QPushButton*> m_stories;
    QPushButton* m_again;
    QPushButton* m_keep;
};

} // namespace borewright
