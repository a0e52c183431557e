#pragma once

#include <functional>
#include <string>

/// Work that must not touch this process: it ends, is killed, or gives up rights. No connection to a studio
/// may be open in this process meanwhile.
namespace lowledger::store {

/// Ends this process at once, as a power cut would.
[[noreturn]] void die();

enum class Ended { well, killed, otherwise };

/// Runs `work` in a child process. An exception, and a gtest failure in it, end it otherwise.
Ended in_a_child(const std::function<void()>& work);

/// The same as a user without any special right (the own one, or when that is root: nobody).
Ended as_a_plain_user(const std::function<void()>& work);

}  // namespace lowledger::store
