#include <chrono>
#include <ctime>
#include <iostream>

#include "app/batch/program.h"

namespace {

/// Today where this computer is.
lowledger::studio::Date today() {
    const std::time_t now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
    std::tm local{};
    localtime_r(&now, &local);
    return {local.tm_year + 1900, local.tm_mon + 1, local.tm_mday};
}

}  // namespace

int main(int count, char** words) {
    return static_cast<int>(lowledger::batch::run(count, words, std::cout, std::cerr, today()));
}
