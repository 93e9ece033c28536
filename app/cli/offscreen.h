// SPDX-License-Identifier: GPL-3.0-or-later
// Qt without a display, for commands that paint. Does no harm where an application runs already,
// as in the tests.
#pragma once

#include <QApplication>

#include <memory>

namespace borewright {

class Offscreen {
public:
    Offscreen();
    ~Offscreen();
    Offscreen(const Offscreen&) = delete;
    Offscreen& operator=(const Offscreen&) = delete;

    void useTheme(bool dark) const;

private:
    std::unique_ptr<QApplication> m_own;
};

} // namespace borewright
