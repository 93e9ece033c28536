// SPDX-License-Identifier: GPL-3.0-or-later
// A sentence across the top of the window, for what the user should know but need not answer:
// a file that was refused, a save that failed. Never a box that stops the work.
#pragma once

#include <QFrame>

#include <functional>
#include <vector>

class QHBoxLayout;
class QLabel;

namespace borewright {

// What the user can do about it, as a button in the banner.
struct BannerAction {
    QString name;
    std::function<void()> action;
};

class Banner : public QFrame {
    Q_OBJECT
public:
    explicit Banner(QWidget* parent = nullptr);
    void say(const QString& sentence, const std::vector<BannerAction>& remedies = {});
    void clear();
    [[nodiscard]] QString sentence() const;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void clearRemedies();

    QLabel* m_label;
    QHBoxLayout* m_remedies;
};

} // namespace borewright
