// SPDX-License-Identifier: GPL-3.0-or-later
// The desk's keyring through QtKeychain. Where none runs it says so; it never keeps a secret in a
// file instead.
#pragma once

#include "app/jobs/keyring.h"

namespace borewright {

class DeskKeyring final : public Keyring {
public:
    void read(const QString& name, const Found& then) override;
    void write(const QString& name, const std::string& secret, const Done& then) override;
    void forget(const QString& name, const Done& then) override;
};

} // namespace borewright
