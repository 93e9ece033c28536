// SPDX-License-Identifier: GPL-3.0-or-later
// A labelled field that tells what was typed once, when the user leaves it or presses Enter.
// Opening and leaving it changes nothing; what is refused stays to be mended, with the reason
// beneath it, whatever else changes meanwhile; Escape brings back what was there. Enter goes on to
// the next such field, unless it refuses.
#pragma once

#include "core/result.h"

#include <QLabel>
#include <QLineEdit>
#include <QWidget>

#include <functional>

namespace borewright {

class CommittedField : public QWidget {
    Q_OBJECT
public:
    using Commit = std::function<Result<void>(const QString&)>;
    CommittedField(const QString& label, Commit commit, QWidget* parent = nullptr);

    // Shows what the data hold; leaves alone what the user is typing at this moment, and what was
    // refused while the data stay as they were.
    void showData(const QString& text);
    // Gives up what is being typed or was refused: it was meant for another bore, set or workbook.
    void drop();
    void setHint(const QString& hint); // greyed, where the field is empty
    void setLabel(const QString& label);
    void setSpokenName(const QString& name); // for a screen reader, where the label is not enough
    void refuse(const QString& sentence);    // empty takes the refusal away
    // Where the field is too narrow for sentences: `say` is called when its refusal has changed,
    // and shows it; the field does no more.
    void sayElsewhere(std::function<void()> say) { m_say = std::move(say); }
    [[nodiscard]] QString refusal() const { return m_refusal->text(); }
    [[nodiscard]] QLineEdit* lineEdit() const { return m_edit; }
    // Commits what stands in the field now, if it was changed; false where it was refused.
    bool commitNow();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void goOn();

    Commit m_commit;
    QLabel* m_label;
    QLineEdit* m_edit;
    QLabel* m_refusal;
    QString m_shown;
    std::function<void()> m_say;
};

} // namespace borewright
