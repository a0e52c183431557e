#include "app/desk/worker.h"

#include <utility>

namespace lowledger::desk {

Worker::Worker(std::function<void()> wake)
    : wake_(std::move(wake)), thread_([this](const std::stop_token& closing) { work(closing); }) {}

Worker::~Worker() {
    drop();
}

void Worker::ask(Job job) {
    const std::scoped_lock lock(mutex_);
    ++newest_;
    running_stop_.request_stop();
    result_ = nullptr;
    waiting_ = std::move(job);
    changed_.notify_all();
}

void Worker::drop() {
    const std::scoped_lock lock(mutex_);
    ++newest_;
    running_stop_.request_stop();
    result_ = nullptr;
    waiting_ = nullptr;
    changed_.notify_all();
}

void Worker::deliver() {
    Delivery result;
    {
        const std::scoped_lock lock(mutex_);
        result = std::exchange(result_, nullptr);
    }
    if (result) result();
}

bool Worker::idle() const {
    const std::scoped_lock lock(mutex_);
    return !waiting_ && !running_ && !result_;
}

void Worker::settle() {
    while (!idle()) {
        {
            std::unique_lock lock(mutex_);
            changed_.wait(lock, [this] { return !waiting_ && !running_; });
        }
        deliver();
    }
}

void Worker::work(const std::stop_token& closing) {
    while (!closing.stop_requested()) {
        Job job;
        std::uint64_t number = 0;
        std::stop_token stop;
        {
            std::unique_lock lock(mutex_);
            if (!changed_.wait(lock, closing, [this] { return static_cast<bool>(waiting_); })) return;
            job = std::exchange(waiting_, nullptr);
            number = newest_;
            running_ = true;
            running_stop_ = std::stop_source();
            stop = running_stop_.get_token();
        }
        Delivery result = job(stop);
        bool kept = false;
        {
            const std::scoped_lock lock(mutex_);
            running_ = false;
            if (number == newest_ && result) {
                result_ = std::move(result);
                kept = true;
            }
            changed_.notify_all();
        }
        if (kept && wake_) wake_();
    }
}

}  // namespace lowledger::desk
