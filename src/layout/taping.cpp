#include "rillwatt/layout/taping.hpp"

#include "rillwatt/quantity/plan_geometry.hpp"

namespace rillwatt {
namespace {

class Taping {
  public:
    Taping(PlanPoint first, PlanPoint second) : first_(first), second_(second) {}

    void add(const std::string& id, PlanPoint at) {
        const bool left = cross(second_ - first_, at - first_) >= 0;
        parts_.push_back({id, distance(first_, at), distance(second_, at), left});
    }

    template<class PartList>
    void add_all(const PartList& parts) {
        for (const auto& part : parts)
            if (part.at) add(part.id, *part.at);
    }

    std::vector<TapedPart> parts() && { return std::move(parts_); }

  private:
    PlanPoint first_;
    PlanPoint second_;
    std::vector<TapedPart> parts_;
};

} // namespace

std::vector<TapedPart> taped_distances(const Site& site, const Mark& first, const Mark& second) {
    Taping taping(first.at, second.at);
    taping.add_all(site.circuits);
    taping.add_all(site.pumps);
    taping.add_all(site.transformers);
    taping.add_all(site.splices);
    taping.add_all(site.fixtures);
    for (const Sleeve& sleeve : site.sleeves) {
        taping.add(sleeve.id + " (one end)", sleeve.a);
        taping.add(sleeve.id + " (other end)", sleeve.b);
    }
    return std::move(taping).parts();
}

} // namespace rillwatt
