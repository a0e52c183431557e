#include "reports/canvas/table.h"

#include <gmock/gmock.h>
#include <random>

#include "reports/canvas/paper.h"

namespace lowledger::canvas {
namespace {

using testing::Contains;
using units::Millimetres;

constexpr Millimetres rounding{1e-6};

Page blank() {
    return {size_of(Paper::a4), {}};
}

std::vector<std::string> texts(const Page& page) {
    std::vector<std::string> all;
    for (const Item& item : page.items)
        if (const auto* text = std::get_if<Text>(&item)) all.push_back(text->text);
    return all;
}

/// The table on as many pages as it takes, between two heights.
std::vector<Page> pages_of(const Faces& faces, const MeasuredTable& table, Millimetres top,
                           Millimetres bottom) {
    std::vector<Page> pages;
    std::optional<TablePlace> place = TablePlace{};
    while (place) {
        pages.push_back(blank());
        place = draw_table(pages.back(), faces, table, {Millimetres(15), top}, bottom, *place).rest;
    }
    return pages;
}

TEST(Table, GivesEveryColumnItsWidestCellWhereThatFits) {
    const Faces faces;
    Table table{{{"Note"}, {"Lean", Align::right}}, {{"B\u266D2", "+4"}, {"F2", "\u221212"}}};
    const auto laid = measured(faces, table, Millimetres(100));
    EXPECT_EQ(laid.columns[0].width, faces.width("Note", table.head));
    EXPECT_EQ(laid.columns[1].left, laid.columns[0].width + table.gap);
    EXPECT_LT(laid.width, Millimetres(100));

    table.columns[1].share = 1.0;
    EXPECT_NEAR(measured(faces, table, Millimetres(100)).width.value(), 100.0, 1e-9);
}

TEST(Table, WrapsTheWidestColumnAndLeavesTheNarrow) {
    const Faces faces;
    const std::string note(200, 'n');
    const Table table{{{"A"}, {"Remark"}}, {{"12", note}}};
    const auto laid = measured(faces, table, Millimetres(60));
    EXPECT_EQ(laid.columns[0].width, faces.width("12", table.body));
    EXPECT_NEAR(laid.width.value(), 60.0, 1e-9);
    EXPECT_GT(laid.rows[0][1].size(), 3U);
}

TEST(Table, RefusesMoreCellsThanColumns) {
    const Faces faces;
    EXPECT_THROW(measured(faces, {{{"A"}}, {{"1", "2"}}}, Millimetres(60)), std::invalid_argument);
}

TEST(Table, RepeatsItsHeadOnEveryPage) {
    const Faces faces;
    Table table{{{"Student"}, {"Horn"}}, {}};
    for (int i = 0; i < 120; ++i)
        table.rows.push_back({"Student " + std::to_string(i), "T" + std::to_string(i)});
    const auto pages =
        pages_of(faces, measured(faces, table, Millimetres(180)), Millimetres(15), Millimetres(282));
    ASSERT_GT(pages.size(), 2U);
    std::size_t cells = 0;
    for (const Page& page : pages) {
        EXPECT_EQ(texts(page).front(), "Student");
        cells += texts(page).size() - 2;
    }
    EXPECT_EQ(cells, 240U);
    EXPECT_THAT(texts(pages.back()), Contains("T119"));
}

TEST(Table, OfNoRowsIsItsHead) {
    const Faces faces;
    const auto pages = pages_of(faces, measured(faces, {{{"Student"}}, {}}, Millimetres(180)),
                                Millimetres(15), Millimetres(282));
    ASSERT_EQ(pages.size(), 1U);
    EXPECT_EQ(texts(pages[0]).size(), 1U);
}

TEST(Table, KeepsARowWholeOrCutsOneThatIsHigherThanAPage) {
    const Faces faces;
    std::string words;
    for (int i = 0; i < 2000; ++i)
        words += "word" + std::to_string(i) + " ";
    const Table table{{{"Date"}, {"Note"}}, {{"1 May", "short"}, {"2 May", words}, {"3 May", "last"}}};
    const auto pages =
        pages_of(faces, measured(faces, table, Millimetres(120)), Millimetres(15), Millimetres(282));
    EXPECT_GT(pages.size(), 2U);
    EXPECT_EQ(texts(pages[0]).size(), 4U);
    EXPECT_THAT(texts(pages[1]), Contains("2 May"));
    std::string joined;
    for (const Page& page : pages)
        for (const std::string& text : texts(page))
            if (text.starts_with("word")) joined += text + " ";
    EXPECT_EQ(joined, words);
}

TEST(Table, TooLowAPlaceStillGoesOn) {
    const Faces faces;
    const Table table{{{"A"}}, {{"one two three four five six"}, {"b"}}};
    const auto laid = measured(faces, table, Millimetres(8));
    EXPECT_GT(least_height(laid), Millimetres(10));
    EXPECT_EQ(pages_of(faces, laid, Millimetres(15), Millimetres(16)).size(), laid.rows[0][0].size() + 1);
}

TEST(Table, NothingRandomLeavesItsColumnOrThePage) {
    const Faces faces;
    std::mt19937 random(7);
    const auto number = [&random](int least, int most) {
        return std::uniform_int_distribution<int>(least, most)(random);
    };
    const std::vector<std::string> bits{"a", "W", " ", "long ", "\u017B", "-", "B\u266D ", "\n", "12"};
    for (int trial = 0; trial < 60; ++trial) {
        Table table;
        for (int c = number(1, 8); c > 0; --c)
            table.columns.push_back({std::string(static_cast<std::size_t>(number(0, 12)), 'H'),
                                     static_cast<Align>(number(0, 2)), 0.5 * number(0, 2)});
        for (int r = number(0, 30); r > 0; --r) {
            auto& row = table.rows.emplace_back();
            for (int c = number(0, static_cast<int>(table.columns.size())); c > 0; --c) {
                row.emplace_back();
                for (int n = number(0, 60); n > 0; --n)
                    row.back() +=
                        bits[static_cast<std::size_t>(number(0, static_cast<int>(bits.size()) - 1))];
            }
        }
        const auto laid = measured(faces, table, Millimetres(180));
        EXPECT_LE(laid.width, Millimetres(180) + rounding);
        for (const Page& page : pages_of(faces, laid, Millimetres(15), Millimetres(120)))
            for (const Item& item : page.items) {
                const auto* text = std::get_if<Text>(&item);
                if (text == nullptr) continue;
                EXPECT_LT(text->baseline.y, Millimetres(120));
                const auto inside = [text](const MeasuredTable::Span& column) {
                    return text->baseline.x >= Millimetres(15) + column.left - rounding &&
                           text->baseline.x + text->width <=
                               Millimetres(15) + column.left + column.width + rounding;
                };
                EXPECT_TRUE(std::any_of(laid.columns.begin(), laid.columns.end(), inside)) << text->text;
            }
    }
}

}  // namespace
}  // namespace lowledger::canvas
