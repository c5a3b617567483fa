#include "rillwatt/text/cautions.hpp"

namespace rillwatt {

const std::vector<std::string_view>& cautions() {
    static const std::vector<std::string_view> sentences = {
        "These figures are planning aids, computed from what the site file and the catalogs say; measure "
        "before you "
        "rely on them.",
        "Line-voltage work, everything up to and including the outlet or the transformer's supply, belongs "
        "to a "
        "licensed electrician under the local code.",
        "The authority having jurisdiction decides. A rule named here is a reminder of where to look, not a "
        "claim "
        "that the work complies.",
        "Have buried services located before anyone digs.",
    };
    return sentences;
}

} // namespace rillwatt
