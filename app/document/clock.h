// SPDX-License-Identifier: GPL-3.0-or-later
// Where the time comes from: passed in, so that tests have their own.
#pragma once

#include "core/workbook/timestamp.h"

namespace borewright {

class Clock {
public:
    virtual ~Clock() = default;
    [[nodiscard]] virtual Timestamp now() const = 0;
};

// The computer's clock with its local offset.
class SystemClock final : public Clock {
public:
    [[nodiscard]] Timestamp now() const override;
};

} // namespace borewright
