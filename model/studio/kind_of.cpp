#include "model/studio/kind_of.h"

namespace lowledger::studio {

horns::HornKind kind_of(const Horn& horn) {
    return horns::read_kind(horn.kind_text, "the kind kept with horn " + horn.mark);
}

}  // namespace lowledger::studio
