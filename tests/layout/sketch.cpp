#include "sketch.hpp"

#include <utility>

using rillwatt::Area;
using rillwatt::AreaKind;
using rillwatt::PlanPoint;
using rillwatt::Site;
using rillwatt::Sleeve;

namespace sketch {

Outline rectangle(double left, double bottom, double right, double top) {
    return {{left, bottom}, {right, bottom}, {right, top}, {left, top}};
}

Area area(AreaKind kind, Outline outline, std::string id) {
    Area out;
    out.id = id.empty() ? "area" : std::move(id);
    out.kind = kind;
    out.outline = std::move(outline);
    return out;
}

Sleeve sleeve(std::string id, PlanPoint a, PlanPoint b) {
    Sleeve out;
    out.id = std::move(id);
    out.a = a;
    out.b = b;
    return out;
}

Site site(PlanPoint from, PlanPoint to, std::vector<Area> areas, std::vector<Sleeve> sleeves) {
    Site out;
    out.settings.units = rillwatt::LengthUnit::metres;
    out.settings.cable_allowance = 0;
    rillwatt::Transformer transformer;
    transformer.id = "T1";
    transformer.at = from;
    rillwatt::Run run;
    run.id = "A";
    run.from = "T1";
    rillwatt::Fixture light;
    light.id = "light";
    light.from = "A";
    light.at = to;
    out.transformers = {transformer};
    out.runs = {run};
    out.fixtures = {light};
    out.areas = std::move(areas);
    out.sleeves = std::move(sleeves);
    return out;
}

rillwatt::PartLength measured(const Site& site) { return measure_lengths(site).fixtures.at(0); }

double metres(const Site& site) {
    const rillwatt::PartLength length = measured(site);
    return length.length ? length.length->value() : -1;
}

} // namespace sketch
