// print_pull LENGTH_MM PULL_MM: the cents that a two-legged slide's pull moves a note of that length in use,
// by the model.
#include <iostream>

#include "model/acoustics/tube.h"
#include "model/units/number_text.h"

int main(int count, char** words) {
    using namespace lowledger;
    const auto length = count == 3 ? units::parse_decimal(words[1]) : std::nullopt;
    const auto pull = count == 3 ? units::parse_decimal(words[2]) : std::nullopt;
    if (!length || !pull) {
        std::cerr << "usage: print_pull LENGTH_MM PULL_MM\n";
        return 2;
    }
    const acoustics::SlideTube main_slide;
    const acoustics::Tube tube{
        .open = units::Millimetres(*length), .valves = {}, .slides = {main_slide}, .loops = {}};
    const std::vector<units::Millimetres> pulled{main_slide.designed + units::Millimetres(*pull)};
    const units::Millimetres longer = acoustics::sounding_length(tube, {}, pulled);
    std::cout << units::decimal_text(acoustics::change_by_tube(tube.open, longer - tube.open).value(), 9)
              << '\n';
    return 0;
}
