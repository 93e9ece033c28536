// SPDX-License-Identifier: GPL-3.0-or-later
// What the block is judged by: sets of limits from the engine maker's manual, and the aim. One set
// is shown at a time, for all bores or for one.
#pragma once

#include "app/document/document.h"
#include "app/fields/committed_field.h"
#include "app/fields/labelled_choice.h"

#include <QPushButton>
#include <QWidget>

#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace borewright {

class DecisionForm;
class FormGrid;

class LimitsEditor : public QWidget {
    Q_OBJECT
public:
    explicit LimitsEditor(Document& document, QWidget* parent = nullptr);

private:
    using Given = std::optional<TypedLength>;
    // Where a length lives: in the set, or in the limits of all or one bore.
    using Slot = std::function<Given&(LimitSet&)>;
    using Check = std::function<Result<void>(const Given&)>;

    QWidget* makeHead();
    QWidget* makeFields();
    QWidget* makeAim();
    void addLength(FormGrid& grid, const QString& label, const QString& hint, Slot slot,
                   Check check);
    Result<void> commitLength(const QString& label, const QString& text, const Slot& slot,
                              const Check& check);
    Result<void> commitAim(const QString& text);
    // Changes the shown set as one step called "`what`, worn limits".
    Result<void> change(const QString& what, const std::function<void(LimitSet&)>& make);
    void add(LimitPurpose purpose);
    void removeShown();
    void sameAsAll();
    void refresh();
    void refreshChoices();
    void sayContradiction(const LimitSet& set);
    void say(const QString& sentence);
    [[nodiscard]] Limits& limitsShown(LimitSet& set) const;
    [[nodiscard]] const LimitSet* shown() const;

    struct Field {
        CommittedField* field;
        Slot slot;
    };
    Document& m_document;
    std::string m_set;                      // id of the set shown
    int m_bore = 0;                         // 0 = all bores
    std::pair<std::string, int> m_shownFor; // set and bore that the fields show
    std::vector<int> m_bores;
    LabelledChoice* m_which = nullptr;
    LabelledChoice* m_for = nullptr;
    CommittedField* m_name = nullptr;
    LabelledChoice* m_rule = nullptr;
    DecisionForm* m_decision = nullptr;
    CommittedField* m_aim = nullptr;
    QPushButton* m_remove = nullptr;
    QPushButton* m_same = nullptr;
    QLabel* m_said = nullptr;
    QWidget* m_fields = nullptr;
    QWidget* m_finishOnly = nullptr;
    QLabel* m_contradiction = nullptr; // between sizes that were each taken
    std::vector<Field> m_lengths;
};

} // namespace borewright
