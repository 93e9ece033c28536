// SPDX-License-Identifier: GPL-3.0-or-later
// The few questions that need a dialog, as an interface, so that tests answer them.
#pragma once

#include <QString>

class QPrinter;
class QWidget;

namespace borewright {

class Dialogs {
public:
    virtual ~Dialogs() = default;
    // A file to read or to write; empty where the user thinks better of it. `filter` as Qt's file
    // dialog takes it ("Workbooks (*.borebook)").
    virtual QString fileToOpen(QWidget* parent, const QString& title, const QString& filter) = 0;
    virtual QString fileToSave(QWidget* parent, const QString& title, const QString& proposal,
                               const QString& filter) = 0;
    // Lets the user set up the printer; false where he thinks better of it.
    virtual bool setUpPrinter(QWidget* parent, QPrinter& printer) = 0;
};

} // namespace borewright
