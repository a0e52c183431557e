#include "app/desk/listing.h"

#include <gtest/gtest.h>

namespace lowledger::desk {
namespace {

TEST(Listing, CellsAreSortedByDayNumberOrText) {
    const ListingCell early("3 December 2026", studio::Date(2026, 12, 3));
    const ListingCell late("1 January 2027", studio::Date(2027, 1, 1));
    EXPECT_TRUE(stands_before(early, late));
    EXPECT_FALSE(stands_before(late, early));
    EXPECT_TRUE(stands_before({"9 mm", 9.0}, {"10 mm", 10.0}));
    EXPECT_TRUE(stands_before("ärger", "Österreich"));
    EXPECT_TRUE(stands_before("T-2", "T-11"));
    EXPECT_FALSE(stands_before("T-11", "T-2"));
    EXPECT_TRUE(stands_before("T-2", "T-02a"));
    EXPECT_TRUE(stands_before("T", "T-1"));
    EXPECT_FALSE(stands_before("Bea", "bea"));
    EXPECT_FALSE(stands_before("bea", "Bea"));
}

TEST(Listing, ASpreadsheetGetsTabsAndOneLineARow) {
    Listing listing;
    listing.columns = {{"Horn"}, {"Condition"}};
    listing.rows = {{.id = 1, .cells = {"T-1", "a dent\nin the bell\tbow"}}, {.id = 2, .cells = {"T-2", ""}}};
    EXPECT_EQ(as_spreadsheet(listing, listing.rows), "Horn\tCondition\nT-1\ta dent in the bell bow\nT-2\t\n");
}

}  // namespace
}  // namespace lowledger::desk
