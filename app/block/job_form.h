// SPDX-License-Identifier: GPL-3.0-or-later
// Whose block it is and why it came. Everything is optional.
#pragma once

#include "app/fields/committed_field.h"
#include "app/document/document.h"

#include <QPlainTextEdit>
#include <QWidget>

#include <vector>

namespace borewright {

class FormGrid;

class JobForm : public QWidget {
    Q_OBJECT
public:
    explicit JobForm(Document& document, QWidget* parent = nullptr);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    using Member = std::string Job::*;
    void addField(FormGrid& grid, const QString& label, Member member);
    void addNotes(FormGrid& grid);
    void refresh();

    Document& m_document;
    std::vector<std::pair<CommittedField*, Member>> m_fields;
    QPlainTextEdit* m_notes = nullptr;
};

} // namespace borewright
