// SPDX-License-Identifier: GPL-3.0-or-later
// The sounds of the bench, as an interface, so that tests hear them.
#pragma once

namespace borewright {

class Sounds {
public:
    virtual ~Sounds() = default;
    virtual void kept() = 0;    // a reading was kept
    virtual void odd() = 0;     // a reading was kept but looks odd
    virtual void refused() = 0; // an entry was refused
    virtual void beat() {}      // a stroke of the hone begins
    virtual void enough() {}    // the last stroke of a window is done
};

} // namespace borewright
