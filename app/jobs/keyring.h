// SPDX-License-Identifier: GPL-3.0-or-later
// The desk's keyring, where a password is safe, as an interface, so that tests have their own.
#pragma once

#include "core/result.h"

#include <QString>

#include <functional>
#include <string>

namespace borewright {

class Keyring {
public:
    using Found = std::function<void(const Result<std::string>&)>;
    using Done = std::function<void(const Result<void>&)>;

    virtual ~Keyring() = default;
    // The secret of this name, later, in the window's thread. Refuses in a sentence part where no
    // keyring runs, it stays locked, or holds none of that name.
    virtual void read(const QString& name, const Found& then) = 0;
    // Keeps it under this name, in place of what was there.
    virtual void write(const QString& name, const std::string& secret, const Done& then) = 0;
    // It holds nothing of this name any more; so it is where it never did.
    virtual void forget(const QString& name, const Done& then) = 0;
};

} // namespace borewright
