// SPDX-License-Identifier: GPL-3.0-or-later
// A monkey at the bench: random keys, clicks, pastes, undos and sizes over the real window, the
// same from the same seed.
#pragma once

#include "tests/support/shop.h"

#include <QTimer>

#include <deque>
#include <random>

namespace borewright::test {

class Monkey {
public:
    Monkey(Shop& shop, unsigned seed);

    // One thing done to the window.
    void step();
    // The last things done, for a failure.
    [[nodiscard]] std::string lastSteps() const;

private:
    int upTo(int most); // 0 … most
    template<class List>
    const auto& oneOf(const List& list) {
        return list[static_cast<std::size_t>(upTo(static_cast<int>(std::size(list)) - 1))];
    }
    void tell(const std::string& what);
    void key();
    void number();
    void shortcut();
    void click();
    void paste();
    void resize();
    void unwind();
    void open();
    void tameDialogs();

    Shop& m_shop;
    std::mt19937 m_random;
    QTimer m_tamer; // lists, menus and dialogs that wait for an answer get one
    std::deque<std::string> m_told;
};

} // namespace borewright::test
