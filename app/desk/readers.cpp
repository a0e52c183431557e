#include "app/desk/readers.h"

#include <algorithm>

#include "app/desk/desk.h"
#include "model/studio/kind_of.h"
#include "model/studio/questions.h"

namespace lowledger::desk {
namespace {

void offer(std::vector<ReaderOffer>& offers, const std::string& id, std::string text) {
    if (std::ranges::find(offers, id, &ReaderOffer::id) == offers.end())
        offers.push_back({id, std::move(text)});
}

std::string without_interval(const std::string& name) {
    return name.substr(0, name.find(','));
}

}  // namespace

std::vector<ReaderOffer> readers_offered(const Desk& desk, const studio::Student& student) {
    std::vector<ReaderOffer> offers{{{}, desk.words().say(words::Sentence::reader_usual)}};
    const auto& file = desk.file();
    if (student.id.filed()) {
        for (const auto id : studio::horns_on(file.horn_uses(student.id), student.id, desk.today()))
            if (const auto horn = file.horn(id))
                for (const auto& reader : studio::kind_of(*horn).readers)
                    offer(offers, reader.id, reader.name);
    }
    const bool plays_none = offers.size() == 1;
    for (const auto& kind : horns::built_in_kinds())
        for (const auto& reader : kind.readers)
            if (plays_none || reader.id == student.reader)
                offer(offers, reader.id, without_interval(reader.name));
    return offers;
}

}  // namespace lowledger::desk
