#pragma once

#include <condition_variable>
#include <cstdint>
#include <functional>
#include <mutex>
#include <stop_token>
#include <thread>

namespace lowledger::desk {

/// One thread that works out the newest question put to it. A newer question replaces one that waits, asks
/// one that runs to stop, and drops its result. Results are delivered on the thread that calls `deliver`.
class Worker {
  public:
    /// What to do with a result, back on the asking thread.
    using Delivery = std::function<void()>;
    /// Works on values it holds; an exception is for the job to catch and to deliver.
    using Job = std::function<Delivery(const std::stop_token&)>;

    /// `wake` is called on the worker's thread when a result waits; it must only post a notice.
    explicit Worker(std::function<void()> wake);
    ~Worker();
    Worker(const Worker&) = delete;
    Worker& operator=(const Worker&) = delete;

    void ask(Job job);
    /// Drops whatever waits, runs or is not delivered yet.
    void drop();
    /// Delivers the result that waits, if there is one.
    void deliver();
    /// True when nothing waits, runs or is undelivered.
    [[nodiscard]] bool idle() const;
    /// Waits until nothing runs any more, and delivers.
    void settle();

  private:
    void work(const std::stop_token& closing);

    std::function<void()> wake_;
    mutable std::mutex mutex_;
    std::condition_variable_any changed_;
    Job waiting_;
    Delivery result_;
    bool running_ = false;
    std::uint64_t newest_ = 0;
    std::stop_source running_stop_;
    std::jthread thread_;
};

}  // namespace lowledger::desk
