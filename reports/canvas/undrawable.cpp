#include "reports/canvas/undrawable.h"

#include <set>
#include <utility>

namespace lowledger::canvas {

std::vector<UndrawableText> undrawable(const Document& document, const Faces& faces) {
    std::vector<UndrawableText> found;
    std::set<std::string> seen;
    for (const Page& page : document.pages) {
        for (const Item& item : page.items) {
            const auto* const text = std::get_if<Text>(&item);
            if (text == nullptr || !seen.insert(text->text).second) continue;
            auto characters = faces.undrawable(text->text);
            if (!characters.empty()) found.push_back({text->text, std::move(characters)});
        }
    }
    return found;
}

}  // namespace lowledger::canvas
