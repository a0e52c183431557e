#include "tests/model/store/child.h"

#include <cstdio>
#include <exception>
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

namespace lowledger::store {

void die() {
    ::raise(SIGKILL);
    ::_exit(99);
}

Ended in_a_child(const std::function<void()>& work) {
    std::fflush(nullptr);
    const pid_t child = ::fork();
    if (child == 0) {
        int code = 98;
        try {
            work();
            code = testing::Test::HasFailure() ? 97 : 0;
        } catch (const std::exception& failure) {
            std::fprintf(stderr, "in the child: %s\n", failure.what());
        }
        std::fflush(nullptr);
        ::_exit(code);
    }
    int status = 0;
    if (::waitpid(child, &status, 0) != child) return Ended::otherwise;
    if (WIFSIGNALED(status) && WTERMSIG(status) == SIGKILL) return Ended::killed;
    return WIFEXITED(status) && WEXITSTATUS(status) == 0 ? Ended::well : Ended::otherwise;
}

Ended as_a_plain_user(const std::function<void()>& work) {
    constexpr uid_t nobody = 65534;
    return in_a_child([&] {
        if (::geteuid() == 0 && (::setgid(nobody) != 0 || ::setuid(nobody) != 0))
            throw std::runtime_error("root's rights could not be given up");
        work();
    });
}

}  // namespace lowledger::store
