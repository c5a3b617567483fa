#include "support/garden.hpp"

#include <stdexcept>

namespace rillwatt::test {

namespace {

template<class T>
T part(const std::string& id, SourceLocation location) {
    T added;
    added.id = id;
    added.location = std::move(location);
    return added;
}

std::optional<std::string> given(const std::string& text) {
    return text.empty() ? std::nullopt : std::optional<std::string>(text);
}

PartLength typed(std::optional<Metres> length) {
    PartLength result;
    result.length = length;
    result.origin = length ? LengthOrigin::typed : LengthOrigin::open;
    return result;
}

} // namespace

Garden::Garden() {
    site.file = "garden.toml";
    site.settings.name = "test garden";
    site.settings.units = LengthUnit::metres;
}

SourceLocation Garden::next_line() { return {site.file, ++line_}; }

Garden& Garden::cable(const std::string& id, double ohms_per_metre) {
    return cable(id, ohms_per_metre, Celsius(20), 0);
}

Garden& Garden::cable(const std::string& id, double ohms_per_metre, Celsius reference, double coefficient) {
    CableType type;
    type.id = id;
    type.resistance = OhmsPerMetre(ohms_per_metre);
    type.reference_temperature = reference;
    type.temperature_coefficient = coefficient;
    type.ampacity = Amperes(1000);
    catalog.cables[id] = type;
    return *this;
}

Garden& Garden::lamp_type(const std::string& id, const LampSpec& spec) {
    FixtureType type;
    type.id = id;
    type.load = spec.load;
    type.va = VoltAmperes(spec.va);
    type.watts = Watts(spec.watts < 0 ? spec.va : spec.watts);
    type.rated_volts = Volts(spec.rated_volts);
    type.lead = Metres(spec.lead_metres);
    type.lead_cable = spec.lead_cable;
    catalog.fixtures[id] = type;
    return *this;
}

Garden& Garden::ideal_transformer(const std::string& id) { return transformer(id, 1e6, 0, {}); }

Garden& Garden::transformer(const std::string& id, double va, double regulation,
                            const std::vector<double>& taps) {
    TransformerType type;
    type.id = "type of " + id;
    type.va = VoltAmperes(va);
    type.regulation = regulation;
    for (const double tap : taps)
        type.taps.push_back(Volts(tap));
    catalog.transformers[type.id] = type;
    auto added = part<Transformer>(id, next_line());
    added.model = type.id;
    site.transformers.push_back(added);
    return *this;
}

Garden& Garden::run(const std::string& id, const std::string& from, double tap, const std::string& cable) {
    auto& type = catalog.transformers["type of " + from];
    if (type.va.value() == 1e6) type.taps.push_back(Volts(tap));
    auto added = part<Run>(id, next_line());
    added.from = from;
    added.tap = Volts(tap);
    added.cable = given(cable);
    site.runs.push_back(added);
    return *this;
}

Garden& Garden::splice(const std::string& id, const std::string& from, double metres,
                       const std::string& cable) {
    auto added = part<Splice>(id, next_line());
    added.from = from;
    added.length = Metres(metres);
    added.cable = given(cable);
    site.splices.push_back(added);
    return *this;
}

Garden& Garden::fixture(const std::string& id, const std::string& from, double metres,
                        const std::string& model, const std::string& cable) {
    auto added = part<Fixture>(id, next_line());
    added.model = model;
    added.from = from;
    added.length = Metres(metres);
    added.cable = given(cable);
    site.fixtures.push_back(added);
    return *this;
}

Garden& Garden::link(const std::string& id, const std::string& a, const std::string& b, double metres,
                     const std::string& cable) {
    auto added = part<Link>(id, next_line());
    added.a = a;
    added.b = b;
    added.length = Metres(metres);
    added.cable = given(cable);
    site.links.push_back(added);
    return *this;
}

SiteLengths Garden::lengths() const {
    SiteLengths lengths;
    for (const Splice& splice : site.splices)
        lengths.splices.push_back(typed(splice.length));
    for (const Fixture& fixture : site.fixtures)
        lengths.fixtures.push_back(typed(fixture.length));
    for (const Link& link : site.links)
        lengths.links.push_back(typed(link.length));
    return lengths;
}

LoadResult<SiteCircuits> Garden::build() const { return build_circuits(site, catalog, lengths()); }

TransformerCircuit Garden::circuit() const {
    auto built = build();
    if (!built) throw std::runtime_error(built.errors.front().found);
    return built.value->transformers.at(0);
}

SiteSolution Garden::solve() const {
    const auto built = build();
    if (!built) throw std::runtime_error(built.errors.front().found);
    return solve_site(site, *built.value);
}

const LampResult& lamp(const Garden& garden, const CaseResult& result, const std::string& fixture) {
    for (const LampResult& lamp : result.lamps)
        if (garden.site.fixtures.at(lamp.fixture).id == fixture) return lamp;
    throw std::runtime_error("no lamp " + fixture);
}

const SegmentResult& segment_to(const CaseResult& result, const std::string& id) {
    for (const SegmentResult& segment : result.segments)
        if (segment.link.empty() ? segment.to == id : segment.link == id) return segment;
    throw std::runtime_error("no segment to " + id);
}

} // namespace rillwatt::test
