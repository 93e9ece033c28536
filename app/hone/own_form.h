// SPDX-License-Identifier: GPL-3.0-or-later
// A set-up of his own in the chosen bore: predicted while it is typed or dragged, logged when it
// was done. One that has more chance of going over than is ever proposed is marked as such before
// he does it; done is done, so it may be logged all the same.
#pragma once

#include "app/context/page_context.h"
#include "app/hone/own_forecast.h"
#include "app/hone/own_windows.h"

#include <QComboBox>
#include <QLabel>
#include <QPushButton>

namespace borewright {

class OwnForm : public QWidget {
    Q_OBJECT
public:
    explicit OwnForm(const PageContext& context, QWidget* parent = nullptr);
    void refresh();
    void forget();
    // Begins with what is planned, where anything is.
    void begin(const std::optional<PlannedSetUp>& planned);
    [[nodiscard]] bool isEmpty() const;
    void move(std::size_t window, Length from, Length to) { m_windows->move(window, from, to); }
    // What the drawing shows.
    [[nodiscard]] const std::optional<HoneOwnDraft>& draft() const { return m_draft; }
    void focusFirst();
    void logIt();
    void finish() { m_forecast.finish(); }

signals:
    void draftChanged();
    void logged(const QString& words);

private:
    void build();
    void follow();
    void showExpected(const OwnSetUp& expected);
    void sayRefusal(const QString& why);
    [[nodiscard]] std::string stone() const;

    PageContext m_context;
    OwnForecast m_forecast;
    QComboBox* m_stone;
    OwnWindows* m_windows;
    QLabel* m_expected;
    QLabel* m_refusal;
    QPushButton* m_log;
    std::optional<HoneOwnDraft> m_draft;
};

} // namespace borewright
