#include "app/desk/worker.h"

#include <atomic>
#include <gtest/gtest.h>
#include <latch>

namespace lowledger::desk {
namespace {

TEST(Worker, DeliversOnlyTheNewest) {
    Worker worker([] {});
    std::latch started(1);
    std::latch go_on(1);
    int delivered = 0;
    worker.ask([&](const std::stop_token& stop) -> Worker::Delivery {
        started.count_down();
        go_on.wait();
        EXPECT_TRUE(stop.stop_requested());
        return [&] { delivered = 1; };
    });
    started.wait();
    worker.ask([&](const std::stop_token&) -> Worker::Delivery { return [&] { delivered = 2; }; });
    go_on.count_down();
    worker.settle();
    EXPECT_EQ(delivered, 2);
    EXPECT_TRUE(worker.idle());
}

TEST(Worker, DropDeliversNothing) {
    Worker worker([] {});
    bool delivered = false;
    worker.ask([&](const std::stop_token&) -> Worker::Delivery { return [&] { delivered = true; }; });
    worker.drop();
    worker.settle();
    EXPECT_FALSE(delivered);
}

TEST(Worker, WakesWhoeverWaits) {
    std::latch woken(1);
    Worker worker([&] { woken.count_down(); });
    bool delivered = false;
    worker.ask([&](const std::stop_token&) -> Worker::Delivery { return [&] { delivered = true; }; });
    woken.wait();
    worker.deliver();
    EXPECT_TRUE(delivered);
}

TEST(Worker, EndsWhileAJobWaits) {
    Worker worker([] {});
    worker.ask([](const std::stop_token&) -> Worker::Delivery { return nullptr; });
}

}  // namespace
}  // namespace lowledger::desk
