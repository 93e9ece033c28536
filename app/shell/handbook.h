// SPDX-License-Identifier: GPL-3.0-or-later
// The handbook and the word about the program, in windows of their own that stop nothing.
#pragma once

class QWidget;

namespace borewright {

void showHandbook(QWidget* parent);
void showAbout(QWidget* parent);

} // namespace borewright
