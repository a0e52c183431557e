#include <filesystem>
#include <gmock/gmock.h>

#include "reports/canvas/pdf.h"
#include "tests/reports/pages/sample_book_pages.h"
#include "tests/reports/recorded.h"

namespace lowledger::pages {
namespace {

using testing::HasSubstr;
using testing::Not;

template <typename Check>
void for_each_page(Check check) {
    const canvas::Faces faces;
    for (const auto paper : {canvas::Paper::a4, canvas::Paper::letter}) {
        for (const bool large : {false, true}) {
            for (const auto& page : book_pages({paper, large}, faces)) {
                SCOPED_TRACE(page.name + (large ? ", large" : ""));
                check(page, paper);
            }
        }
    }
}

std::string texts_of(const canvas::Page& page) {
    std::string all;
    for (const auto& text : canvas::texts(page))
        all += text.text + "\n";
    return all;
}

TEST(BookPages, NothingPassesTheMarginsAndNoTextLiesOverAnother) {
    for_each_page([](const NamedDocument& named, canvas::Paper paper) {
        const canvas::Size size = canvas::size_of(paper);
        for (const canvas::Page& page : named.document.pages) {
            EXPECT_NEAR((page.size.width + page.size.height).value(), (size.width + size.height).value(),
                        1e-9);
            const canvas::Box live = canvas::live_area(page.size);
            const units::Millimetres stroke(0.4);
            const canvas::Box allowed{live.left - stroke, live.top - stroke, live.width + 2.0 * stroke,
                                      live.height + 2.0 * stroke};
            for (const auto& item : page.items)
                EXPECT_TRUE(canvas::within(canvas::ink_box(item), allowed));
            const auto texts = canvas::texts(page);
            for (std::size_t i = 0; i < texts.size(); ++i)
                for (std::size_t j = i + 1; j < texts.size(); ++j)
                    EXPECT_FALSE(canvas::overlap(canvas::ink_box(texts[i]), canvas::ink_box(texts[j])))
                        << texts[i].text << "  over  " << texts[j].text;
        }
    });
}

TEST(BookPages, NeverHoldWhatIsPrivate) {
    for_each_page([](const NamedDocument& named, canvas::Paper /*paper*/) {
        for (const canvas::Page& page : named.document.pages)
            EXPECT_THAT(texts_of(page), Not(HasSubstr(private_text)));
    });
}

TEST(BookPages, HaveATitleAndABookmarkAndNumbersWhereThereAreSeveral) {
    for_each_page([](const NamedDocument& named, canvas::Paper /*paper*/) {
        const auto& document = named.document;
        EXPECT_FALSE(document.title.empty());
        ASSERT_FALSE(document.bookmarks.empty());
        EXPECT_EQ(document.bookmarks.front().title, document.title);
        const std::size_t count = document.pages.size();
        for (std::size_t i = 0; count > 1 && i < count; ++i)
            EXPECT_THAT(texts_of(document.pages[i]),
                        HasSubstr(std::to_string(i + 1) + " of " + std::to_string(count)));
    });
}

TEST(BookPages, AreTheSameBytesForTheSameRecords) {
    const canvas::Faces faces;
    const auto once = book_pages({}, faces);
    const auto again = book_pages({}, faces);
    ASSERT_EQ(once.size(), again.size());
    for (std::size_t i = 0; i < once.size(); ++i) {
        if (once[i].document.pages.size() > 6) continue;
        EXPECT_EQ(canvas::pdf_bytes(once[i].document, faces), canvas::pdf_bytes(again[i].document, faces))
            << once[i].name;
    }
}

TEST(BookPages, TablesRepeatTheirHeadOnEveryPage) {
    const canvas::Faces faces;
    const std::map<std::string, std::string> heads{{"class-list-many", "Call at home"},
                                                   {"day-list-many", "For today"},
                                                   {"repair-list-many", "Done, cost, day"},
                                                   {"horn-card-many", "Due again"},
                                                   {"term-summary-many", "Days ticked"}};
    for (const auto& named : book_pages({}, faces)) {
        const auto head = heads.find(named.name);
        if (head == heads.end()) continue;
        ASSERT_GT(named.document.pages.size(), 1U) << named.name;
        // Where rows go on, their head stands over them.
        std::size_t heads_seen = 0;
        for (const auto& page : named.document.pages)
            heads_seen += texts_of(page).find(head->second) != std::string::npos ? 1 : 0;
        EXPECT_GT(heads_seen, 1U) << named.name;
        EXPECT_THAT(texts_of(named.document.pages[1]), HasSubstr(head->second)) << named.name;
    }
}

TEST(BookPages, SayNothingThatBlames) {
    const canvas::Faces faces;
    for (const auto& named : book_pages({}, faces)) {
        if (!named.name.starts_with("term-summary")) continue;
        for (const auto& page : named.document.pages)
            for (const char* word : {"only", "wrong", "bad", "lazy", "failed", "unexcused", "without notice",
                                     "not enough", "poor", "should have"})
                EXPECT_THAT(texts_of(page), Not(HasSubstr(word))) << named.name;
    }
}

TEST(BookPages, ALoanFormCautionsAndHasRoomForTheSchoolAndThreeToSign) {
    const canvas::Faces faces;
    for (const auto& named : book_pages({}, faces)) {
        if (named.name != "loan-form") continue;
        std::string text;
        for (const auto& page : named.document.pages)
            text += texts_of(page);
        for (const char* said : {"Two people lift a sousaphone", "Never pull a slide by force", "disinfected",
                                 "The school's own terms", "Date, student", "Date, parent or guardian",
                                 "Date, for the school", "Small dent in the bell."})
            EXPECT_THAT(text, HasSubstr(said));
    }
}

TEST(BookPages, ArePdfsToLookAt) {
    const canvas::Faces faces;
    const std::filesystem::path folder = LOWLEDGER_PAGES_TO_LOOK_AT;
    std::filesystem::create_directories(folder);
    for (const auto& named : book_pages({}, faces))
        canvas::save_pdf(named.document, faces, folder / ("book-" + named.name + ".pdf"));
}

}  // namespace
}  // namespace lowledger::pages
