#include "window/new_gutter_form.h"

#include <QFormLayout>

#include "standards/tables.h"

namespace gw::ui {
namespace {

/// Usual stock: 10 x 10 in, 60 in long.
constexpr int kUsualSection = 6;
constexpr int kUsualLength = 7;

QString inches(double length) {
    return toQString(units::formatInches(units::Inches::of(length)));
}

/// "20 % of it, 20 in²", or why there is none.
QString shareText(const standards::Lookup<double>& percent, double area) {
    return percent ? NewGutterForm::tr("%1 % of that, %2 in²")
                         .arg(percent->value)
                         .arg(area * percent->value / 100.0, 0, 'f', 1)
                   : NewGutterForm::tr("a share the code does not state");
}

QString placeText(const std::optional<standards::Location>& location) {
    return location ? NewGutterForm::tr("in a %1 place").arg(toQString(locationText(*location)))
                    : NewGutterForm::tr("its location not stated yet");
}

QString sentenceFor(const layout::Layout& layout) {
    const auto article = layout.gutter.article;
    const Vec3& inside = layout.gutter.inside;
    const double area = inside.y * inside.z;
    return NewGutterForm::tr(
               "%1, %2 long, %3 high and %4 deep inside, %5. Its cross-section is %6 in²: "
               "conductors may take %7, with splices and tap blocks %8.")
        .arg(toQString(articleText(article)),
             inches(inside.x),
             inches(inside.y),
             inches(inside.z),
             placeText(layout.surroundings.location),
             QString::number(area),
             shareText(standards::gutterFillPercent(article, layout.edition), area),
             shareText(standards::gutterSpliceFillPercent(article, layout.edition), area));
}

QString capitalised(QString sentence) {
    sentence[0] = sentence[0].toUpper();
    return sentence;
}

}  // namespace

NewGutterForm::NewGutterForm(QWidget* parent) : QWidget(parent) {
    section_ = new Choice;
    section_->offer(
        standards::stockSections(),
        [](const auto& one) {
            return units::formatInches(one.value.width) + " x " +
                   units::formatInches(one.value.depth);
        },
        false);
    section_->setCurrentIndex(kUsualSection);
    length_ = new Choice;
    length_->offer(
        standards::stockLengths(),
        [](const auto& one) { return units::formatInches(one.value); },
        false);
    length_->setCurrentIndex(kUsualLength);
    article_ = new Choice;
    article_->offer(standards::allArticles(), standards::articleText, false);
    location_ = new Choice;
    location_->offer(standards::allLocations(), standards::locationText, true);
    sentence_ = new QLabel;
    sentence_->setWordWrap(true);
    sentence_->setAccessibleName(tr("What the new gutter is"));
    auto* rows = new QFormLayout(this);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->addRow(tr("&Section"), section_);
    rows->addRow(tr("&Length"), length_);
    rows->addRow(tr("&Kind"), article_);
    rows->addRow(tr("L&ocation"), location_);
    rows->addRow(sentence_);
    for (Choice* choice : {section_, length_, article_, location_}) {
        connect(choice, &QComboBox::currentIndexChanged, this, &NewGutterForm::describe);
    }
    describe();
}

layout::Layout NewGutterForm::chosen() const {
    layout::Layout layout;
    layout.title = tr("New gutter").toStdString();
    layout.gutter.article = *article_->chosen(standards::allArticles());
    const auto stock = section_->chosen(standards::stockSections())->value;
    const auto length = length_->chosen(standards::stockLengths())->value;
    layout.gutter.inside = {length.in(), stock.width.in(), stock.depth.in()};
    layout.surroundings.location = location_->chosen(standards::allLocations());
    return layout;
}

void NewGutterForm::describe() {
    sentence_->setText(capitalised(sentenceFor(chosen())));
}

}  // namespace gw::ui
