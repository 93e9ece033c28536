// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/document/clock.h"

#include <QDateTime>

namespace borewright {

Timestamp SystemClock::now() const {
    const QDateTime now = QDateTime::currentDateTime();
    return {now.toSecsSinceEpoch(), now.offsetFromUtc() / 60};
}

} // namespace borewright
