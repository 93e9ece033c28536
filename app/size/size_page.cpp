// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/size/size_page.h"

#include "app/context/when_shown.h"
#include "app/fields/fold.h"
#include "app/fields/refusal_label.h"
#include "app/fields/scaled_font.h"
#include "app/pictures/reading_words.h"
#include "app/pictures/size_bars_view.h"
#include "app/size/cut_form.h"
#include "app/size/hone_order.h"
#include "app/size/sizes_form.h"
#include "app/size/wear_form.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QShortcut>
#include <QVBoxLayout>

namespace borewright {
namespace {

// The forms always keep this much of the page, however many bores there are.
constexpr int leastForms = 170;

QString sentenceHtml(const std::string& sentence) {
    return qs(sentence).toHtmlEscaped();
}

// Sentences as short paragraphs; a heading over those that have one.
QString paragraphs(const QString& heading, const std::vector<std::string>& sentences) {
    if (sentences.empty()) return {};
    QString text;
    if (!heading.isEmpty())
        text += QStringLiteral("<p style='margin-top:10px; margin-bottom:2px'><b>%1</b></p>")
                    .arg(heading.toHtmlEscaped());
    for (const std::string& sentence : sentences)
        text += QStringLiteral("<p style='margin-top:2px; margin-bottom:4px'>%1</p>")
                    .arg(sentenceHtml(sentence));
    return text;
}

} // namespace

SizePage::SizePage(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_context(context)
    , m_headline(new QLabel(this))
    , m_refusal(makeRefusalLabel(this))
    , m_words(new QLabel(this))
    , m_hone(new QPushButton(tr("Hone to this size (F10)"), this))
    , m_bars(new SizeBarsView(context.document, context.selection, this)) {
    m_bars->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(16, 12, 16, 0);
    column->setSpacing(8);
    column->addWidget(buildHead());
    column->addWidget(m_refusal);
    column->addWidget(m_bars);
    column->addWidget(buildForms(), 1);
    auto* key = new QShortcut(Qt::Key_F10, this);
    key->setContext(Qt::WidgetWithChildrenShortcut);
    connect(key, &QShortcut::activated, this, &SizePage::honeToThis);
    connect(m_hone, &QPushButton::clicked, this, &SizePage::honeToThis);
    auto* whenShown = new WhenShown(this, [this](Change) { refresh(); });
    connect(&context.document, &Document::changed, whenShown, &WhenShown::follow);
    refresh();
}

QWidget* SizePage::buildHead() {
    auto* head = new QWidget(this);
    QFont face = scaledFont(m_headline->font(), 1.4);
    face.setWeight(QFont::DemiBold);
    m_headline->setFont(face);
    m_headline->setWordWrap(true);
    m_headline->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_headline->setAccessibleName(tr("Which size cleans up the block"));
    m_hone->setToolTip(tr("Makes this size what the hone aims at in each bore, with its limits"));
    auto* row = new QHBoxLayout(head);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(16);
    row->addWidget(m_headline, 1);
    row->addWidget(m_hone, 0, Qt::AlignTop);
    return head;
}

QWidget* SizePage::buildForms() {
    auto* content = new QWidget;
    auto* row = new QHBoxLayout(content);
    row->setContentsMargins(0, 8, 8, 16);
    row->setSpacing(32);
    auto* sizes = new Part(tr("Sizes on offer"), {});
    sizes->add(new SizesForm(m_context.document));
    auto* wear = new Part(tr("What the gauge cannot see"), {});
    wear->add(new WearForm(m_context));
    auto* cut = new Part(tr("The cut"), {});
    cut->add(new CutForm(m_context.document));
    auto* right = new QVBoxLayout;
    right->setSpacing(18);
    right->addWidget(wear);
    right->addWidget(cut);
    right->addStretch();
    auto* middle = new QVBoxLayout;
    middle->addWidget(sizes);
    middle->addStretch();
    row->addWidget(buildWords(), 10);
    row->addLayout(middle, 9);
    row->addLayout(right, 11);
    auto* scroll = new QScrollArea(this);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setMinimumHeight(leastForms);
    scroll->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Ignored);
    scroll->setWidget(content);
    return scroll;
}

QWidget* SizePage::buildWords() {
    m_words->setAccessibleName(tr("What follows from it, how to cut, and what to beware of"));
    m_words->setWordWrap(true);
    m_words->setTextFormat(Qt::RichText);
    m_words->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_words->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_words->setForegroundRole(QPalette::PlaceholderText);
    return m_words;
}

void SizePage::refresh() {
    const Document& document = m_context.document;
    const SizingResult& sizing = document.results().sizing;
    const auto order = honeOrder(document.workbook(), document.results(), document.units());
    const bool handed = order && sameAim(order->targets, document.workbook().targets);
    QString headline = qs(sizing.headline);
    if (handed) headline += tr(" The hone aims at it now.");
    m_headline->setText(headline);
    m_hone->setText(document.workbook().sizing.ownSizes ? tr("Hone to these sizes (F10)")
                                                        : tr("Hone to this size (F10)"));
    m_hone->setEnabled(order.has_value() && !handed);
    m_words->setText(paragraphs({}, sizing.sentences) + paragraphs(tr("How"), sizing.how) +
                     paragraphs(tr("Beware"), sizing.cautions));
    m_refusal->hide();
}

void SizePage::honeToThis() {
    Document& document = m_context.document;
    const auto order = honeOrder(document.workbook(), document.results(), document.units());
    if (order && sameAim(order->targets, document.workbook().targets)) return;
    const auto done = !order
                          ? refuse("No size is chosen yet: " + document.results().sizing.headline)
                          : document.edit(order->edit, tr("hone to %1").arg(qs(order->what)));
    if (done) return;
    m_refusal->setText(qs(done.error().message()));
    m_refusal->show();
}

} // namespace borewright
