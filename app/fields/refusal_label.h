// SPDX-License-Identifier: GPL-3.0-or-later
// Refusals in words, beneath what they are about.
#pragma once

class QLabel;
class QWidget;

namespace borewright {

// A line beneath a control that says, in the colour of a warning, why something was refused.
QLabel* makeRefusalLabel(QWidget* parent);

} // namespace borewright
