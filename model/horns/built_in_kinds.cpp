#include "model/horns/kind.h"

#include "horn_kind_files.h"

namespace lowledger::horns {

const std::vector<HornKind>& built_in_kinds() {
    static const std::vector<HornKind> kinds = [] {
        std::vector<HornKind> read;
        for (const EmbeddedFile& file : horn_kind_files())
            read.push_back(read_kind(file.text, file.name));
        return read;
    }();
    return kinds;
}

}  // namespace lowledger::horns
