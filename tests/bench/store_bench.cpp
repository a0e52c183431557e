// A studio of forty years: how long it is to open, find and read. It is made once, in the temporary folder.
#include <benchmark/benchmark.h>

#include "tests/bench/forty_years.h"

namespace lowledger::store {
namespace {

const std::filesystem::path& studio_path() {
    static const std::filesystem::path path = [] {
        auto made = std::filesystem::temp_directory_path() / "forty years.lowledger";
        if (!std::filesystem::exists(made)) {
            // One that broke off is not taken for the whole.
            const auto part = std::filesystem::temp_directory_path() / "forty years in the making.lowledger";
            std::filesystem::remove(part);
            make_forty_years(part, {});
            std::filesystem::rename(part, made);
        }
        return made;
    }();
    return path;
}

const studio::Date today = StudioSize().last_day;

void open_to_today(benchmark::State& state) {
    studio_path();
    for (auto _ : state) {
        const StudioFile file = StudioFile::open(studio_path());
        benchmark::DoNotOptimize(file.day(today));
        benchmark::DoNotOptimize(file.overdue(today));
    }
}
BENCHMARK(open_to_today)->Unit(benchmark::kMillisecond);

void student_list(benchmark::State& state) {
    const StudioFile file = StudioFile::open(studio_path());
    for (auto _ : state) {
        benchmark::DoNotOptimize(file.students());
        benchmark::DoNotOptimize(file.last_sheets());
    }
}
BENCHMARK(student_list)->Unit(benchmark::kMillisecond);

void students_page(benchmark::State& state) {
    const StudioFile file = StudioFile::open(studio_path());
    const studio::StudentId student{2390};
    for (auto _ : state) {
        benchmark::DoNotOptimize(file.sheets(student));
        benchmark::DoNotOptimize(file.lessons(student, today - 400, today));
        benchmark::DoNotOptimize(file.assignments(student));
        benchmark::DoNotOptimize(file.practice(student, today - 400, today));
        benchmark::DoNotOptimize(file.loans(student));
    }
}
BENCHMARK(students_page)->Unit(benchmark::kMillisecond);

/// From a rare word to one letter, which begins a word of nearly everything.
void find(benchmark::State& state) {
    const StudioFile file = StudioFile::open(studio_path());
    constexpr auto typed = std::to_array<const char*>({"kovac 1011", "sight page 17", "br", "a"});
    for (auto _ : state)
        benchmark::DoNotOptimize(file.search(typed.at(static_cast<std::size_t>(state.range(0)))));
}
BENCHMARK(find)->DenseRange(0, 3)->Unit(benchmark::kMillisecond);

void delete_a_student(benchmark::State& state) {
    StudioFile file = StudioFile::open(studio_path());
    for (auto _ : state) {
        file.edit("Delete", [](Edit& edit) { edit.remove(studio::StudentId{2390}); });
        state.PauseTiming();
        file.undo();
        state.ResumeTiming();
    }
}
BENCHMARK(delete_a_student)->Unit(benchmark::kMillisecond)->Iterations(3);

}  // namespace
}  // namespace lowledger::store
