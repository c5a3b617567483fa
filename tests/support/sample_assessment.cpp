#include "support/sample_assessment.hpp"

namespace rillwatt::samples {

namespace {

SourceLocation at_line(int line) { return {"site.toml", line}; }

template<class T>
T part(const std::string& id, int line) {
    T made;
    made.id = id;
    made.location = at_line(line);
    return made;
}

Catalog small_catalog() {
    Catalog catalog;
    ConductorTable table;
    table.id = "nec-8-stranded";
    table.source = "NFPA 70 (2017) chapter 9 Table 8, uncoated copper, stranded";
    table.reference_temperature = Celsius(75);
    table.temperature_coefficient = 0.00323;
    table.rows = {{"12 AWG", OhmsPerMetre(1.98 / 304.8)}, {"18 AWG", OhmsPerMetre(7.95 / 304.8)}};
    catalog.tables[table.id] = table;
    for (const char* name : {"12/2", "18/2"}) {
        CableType cable;
        cable.id = name;
        cable.source = "generic stock";
        cable.table = table.id;
        cable.size = std::string(name).substr(0, 2) + " AWG";
        cable.ampacity = Amperes(cable.id == "12/2" ? 20 : 7);
        cable.direct_burial = true;
        cable.price = MoneyPerMetre(0.62 / metres_per_foot);
        cable.resistance = table.rows[cable.id == "12/2" ? 0 : 1].resistance;
        cable.reference_temperature = table.reference_temperature;
        cable.temperature_coefficient = table.temperature_coefficient;
        catalog.cables[cable.id] = cable;
    }
    FixtureType lamp;
    lamp.id = "sub-3w";
    lamp.source = "generic stock";
    lamp.kind = FixtureKind::submersible;
    lamp.window_low = Volts(9);
    lamp.window_high = Volts(15);
    lamp.watts = Watts(3);
    lamp.va = VoltAmperes(4.2);
    lamp.lead = feet(20);
    lamp.lead_cable = "18/2";
    lamp.price = Money(48);
    catalog.fixtures[lamp.id] = lamp;
    lamp.id = "path-2w";
    lamp.kind = FixtureKind::path;
    lamp.lead = Metres(0);
    lamp.lead_cable.clear();
    lamp.va = VoltAmperes(2.5);
    lamp.watts = Watts(2);
    lamp.price = Money(39.5);
    catalog.fixtures[lamp.id] = lamp;
    TransformerType transformer;
    transformer.id = "mag-150";
    transformer.source = "generic stock";
    transformer.va = VoltAmperes(150);
    transformer.taps = {Volts(12), Volts(13), Volts(14)};
    transformer.regulation = 0.04;
    transformer.no_load = Watts(4);
    transformer.water_listed = true;
    transformer.price = Money(180);
    catalog.transformers[transformer.id] = transformer;
    PumpType pump;
    pump.id = "pump-180w";
    pump.source = "generic stock";
    pump.volts = Volts(120);
    pump.amps = Amperes(2.1);
    pump.watts = Watts(180);
    pump.submersible = true;
    pump.cord = feet(20);
    pump.leakage_ma = 0.3;
    pump.price = Money(310);
    catalog.pumps[pump.id] = pump;
    return catalog;
}

struct Names {
    std::string site = "Fernhollow terrace";
    std::string first_lamp = "falls-1";
    std::string control = "photocell on, timer off";
};

Site small_site(const Names& names) {
    Site site;
    site.file = "site.toml";
    site.settings.name = names.site;
    site.settings.energy_price = 0.17;
    auto pumps = part<BranchCircuit>("C1", 10);
    pumps.breaker = Amperes(20);
    pumps.gfci = true;
    pumps.conductor = "12 AWG";
    pumps.length = feet(60);
    site.circuits.push_back(pumps);
    auto lights = part<BranchCircuit>("C2", 20);
    lights.gfci = true;
    site.circuits.push_back(lights);
    auto pump = part<Pump>("P1", 30);
    pump.model = "pump-180w";
    pump.circuit = "C1";
    site.pumps.push_back(pump);
    auto transformer = part<Transformer>("T1", 40);
    transformer.model = "mag-150";
    transformer.circuit = "C2";
    transformer.control = names.control;
    site.transformers.push_back(transformer);
    for (const auto& [id, tap] : {std::pair{"A", 13.0}, std::pair{"B", 12.0}}) {
        auto run = part<Run>(id, 50);
        run.from = "T1";
        run.tap = Volts(tap);
        run.cable = "12/2";
        site.runs.push_back(run);
    }
    auto splice = part<Splice>("H1", 60);
    splice.from = "A";
    splice.length = feet(40);
    site.splices.push_back(splice);
    const std::vector<std::array<std::string, 3>> lamps = {{names.first_lamp, "sub-3w", "H1"},
                                                           {"falls-2", "sub-3w", "H1"},
                                                           {"path-1", "path-2w", "B"},
                                                           {"path-2", "path-2w", "path-1"}};
    for (std::size_t i = 0; i < lamps.size(); ++i) {
        auto fixture = part<Fixture>(lamps[i][0], 70 + 5 * static_cast<int>(i));
        fixture.model = lamps[i][1];
        fixture.from = lamps[i][2];
        if (i != 1) fixture.length = feet(15);
        fixture.in_water = i < 2;
        site.fixtures.push_back(fixture);
    }
    return site;
}

SiteLengths small_lengths() {
    SiteLengths lengths;
    PartLength typed;
    typed.origin = LengthOrigin::typed;
    typed.length = feet(15);
    PartLength hub = typed;
    hub.length = feet(40);
    lengths.splices = {hub};
    PartLength routed;
    routed.origin = LengthOrigin::plan;
    routed.length = Metres(5.5);
    routed.route = {{1, 2}, {3.5, 2}, {4, 4.25}};
    routed.straight = Metres(3.75);
    lengths.fixtures = {typed, routed, typed, typed};
    return lengths;
}

TransformerCircuit small_circuit(const Catalog& catalog, const SiteLengths& lengths) {
    const CableType* cable = find_entry(catalog.cables, "12/2");
    const FixtureType* sub = find_entry(catalog.fixtures, "sub-3w");
    const FixtureType* path = find_entry(catalog.fixtures, "path-2w");
    TransformerCircuit circuit;
    circuit.type = find_entry(catalog.transformers, "mag-150");
    circuit.supply = Volts(120);
    circuit.runs = {{0, 0, Volts(13)}, {1, 4, Volts(12)}};
    const auto node = [&](NodeKind kind, std::size_t of, int parent, int run, std::optional<Metres> length,
                          const FixtureType* fixture) {
        CircuitNode made;
        made.kind = kind;
        made.part = of;
        made.parent = parent;
        made.run = run;
        made.cable = cable;
        made.length = length;
        made.fixture = fixture;
        if (fixture != nullptr) made.lead_cable = find_entry(catalog.cables, fixture->lead_cable);
        circuit.nodes.push_back(made);
    };
    node(NodeKind::run, 0, -1, 0, {}, nullptr);
    node(NodeKind::splice, 0, 0, 0, lengths.splices[0].length, nullptr);
    node(NodeKind::fixture, 0, 1, 0, lengths.fixtures[0].length, sub);
    node(NodeKind::fixture, 1, 1, 0, lengths.fixtures[1].length, sub);
    node(NodeKind::run, 1, -1, 1, {}, nullptr);
    node(NodeKind::fixture, 2, 4, 1, lengths.fixtures[2].length, path);
    node(NodeKind::fixture, 3, 5, 1, lengths.fixtures[3].length, path);
    return circuit;
}

LampResult lamp(std::size_t fixture, double volts, double splice, double amps, double tap) {
    LampResult made;
    made.fixture = fixture;
    made.run = fixture < 2 ? 0 : 1;
    made.volts = Volts(volts);
    made.splice_volts = Volts(splice);
    made.amps = Amperes(amps);
    made.va = VoltAmperes(volts * amps);
    made.watts = Watts(fixture < 2 ? 3 : 2);
    made.drop = Volts(tap - volts);
    made.drop_ratio = (tap - volts) / tap;
    return made;
}

SegmentResult segment(const CircuitNode& node, int number, std::string_view from, std::string_view to,
                      double amps) {
    SegmentResult made;
    made.node = number;
    made.type = node.cable;
    made.from = from;
    made.to = to;
    made.cable = "12/2";
    made.run = static_cast<std::size_t>(node.run);
    made.length = *node.length;
    made.ohms = Ohms(2 * made.length.value() * 1.98 / 304.8);
    made.amps = Amperes(amps);
    made.drop = made.amps * made.ohms;
    made.loss = dissipated(made.amps, made.ohms);
    return made;
}

CaseResult loaded_case(const Site& site, const TransformerCircuit& circuit, const std::string& name,
                       double factor, double down) {
    CaseResult result;
    result.conditions = {name, factor, Celsius(75), true};
    result.transformers = {{0, VoltAmperes(13.46), 13.46 / 150, Amperes(0.1495), Watts(0.05), Watts(4)}};
    result.runs = {{0, 0, Volts(13), Volts(12.9 - down), Amperes(0.66), 1, Volts(12.75 - down)},
                   {1, 0, Volts(12), Volts(11.95 - down), Amperes(0.42), 3, Volts(11.9 - down)}};
    result.lamps = {
        lamp(0, 12.75 - down, 12.85 - down, 0.33, 13), lamp(1, 12.75 - down, 12.84 - down, 0.33, 13),
        lamp(2, 11.92 - down, 11.92 - down, 0.21, 12), lamp(3, 11.9 - down, 11.9 - down, 0.21, 12)};
    result.segments = {segment(circuit.nodes[1], 1, "A", "H1", 0.66),
                       segment(circuit.nodes[2], 2, "H1", site.fixtures[0].id, 0.33),
                       segment(circuit.nodes[3], 3, "H1", "falls-2", 0.33),
                       segment(circuit.nodes[5], 5, "B", "path-1", 0.42),
                       segment(circuit.nodes[6], 6, "path-1", "path-2", 0.21)};
    CircuitResult beside;
    beside.transformer = 0;
    beside.nodes = {{result.runs[0].volts, -1, -1, 0},    {result.runs[0].volts - result.segments[0].drop, 0},
                    {result.lamps[0].splice_volts, 1, 0}, {result.lamps[1].splice_volts, 2, 1},
                    {result.runs[1].volts, -1, -1, 1},    {result.lamps[2].splice_volts, 3, 2},
                    {result.lamps[3].splice_volts, 4, 3}};
    result.circuits = {beside};
    result.cable_loss = Watts(0.11);
    return result;
}

CaseResult strong_case() {
    CaseResult result;
    result.conditions = {"strong", 1.05, Celsius(75), false};
    result.lamps = {lamp(0, 13.65, 13.65, 0, 13), lamp(1, 13.65, 13.65, 0, 13), lamp(2, 12.6, 12.6, 0, 12),
                    lamp(3, 12.6, 12.6, 0, 12)};
    CircuitResult beside;
    beside.nodes = {{Volts(13.65)}, {Volts(13.65)},       {Volts(13.65), -1, 0}, {Volts(13.65), -1, 1},
                    {Volts(12.6)},  {Volts(12.6), -1, 2}, {Volts(12.6), -1, 3}};
    result.circuits = {beside};
    return result;
}

MainsLoad load(MainsLoadKind kind, const std::string& id, Amperes amps, AmpsOrigin origin, double hours) {
    MainsLoad made;
    made.kind = kind;
    made.id = id;
    made.amps = amps;
    made.origin = origin;
    made.hours_per_day = Hours(hours);
    made.continuous = true;
    return made;
}

MainsCircuit branch(std::size_t circuit, const MainsLoad& part) {
    MainsCircuit made;
    made.circuit = circuit;
    made.amps = *part.amps;
    made.continuous_amps = *part.amps;
    made.design_amps = 1.25 * *part.amps;
    made.volts = Volts(120);
    made.loads = {part.id};
    made.parts = {part};
    return made;
}

MainsSummary small_mains(const Catalog& catalog) {
    MainsSummary mains;
    MainsLoad pump = load(MainsLoadKind::pump, "P1", Amperes(2.1), AmpsOrigin::nameplate, 24);
    pump.pump = find_entry(catalog.pumps, "pump-180w");
    mains.circuits = {branch(0, pump), branch(1, load(MainsLoadKind::transformer, "T1", Amperes(0.1495),
                                                      AmpsOrigin::solved, 5))};
    mains.circuits[0].drop_ratio = 0.0035;
    mains.circuits[0].drop_known = true;
    mains.cost.lamps = Watts(10);
    mains.cost.no_load = Watts(4);
    mains.cost.lights = WattHours(25915);
    mains.cost.pumps = WattHours(1576800);
    mains.cost.lights_cost = Money(4.41);
    mains.cost.pumps_cost = Money(268.06);
    mains.cost.each_pump = {{0, WattHours(1576800)}};
    return mains;
}

std::vector<Finding> small_findings(const Site& site) {
    return {
        {"lamp-undervoltage", Severity::error, site.fixtures[0].id, at_line(70),
         site.fixtures[0].id + " gets 8.72 V, below its window of 9 to 15 V.",
         "Use a thicker cable than 12/2 for A, or tap 14 V.", "catalog entry sub-3w"},
        {"transformer-margin", Severity::warning, "T1", at_line(40),
         "T1 carries 130 VA of its 150 VA (87 %).", "", "common practice, no source"},
        {"shared-gfci", Severity::note, "", {}, "Nothing else hangs on the pump's GFCI.", "", "from memory"}};
}

Assessment garden(const Names& names) {
    Assessment made;
    const auto catalog = std::make_shared<const Catalog>(small_catalog());
    const auto site = std::make_shared<const Site>(small_site(names));
    made.site = site;
    made.catalog = catalog;
    made.lengths = small_lengths();
    made.circuits.transformers = {small_circuit(*catalog, made.lengths)};
    const TransformerCircuit& circuit = made.circuits.transformers.front();
    for (const Fixture& fixture : site->fixtures)
        made.circuits.fixture_types.push_back(find_entry(catalog->fixtures, fixture.model));
    made.solution.cases = {loaded_case(*site, circuit, "nominal", 1, 0),
                           loaded_case(*site, circuit, "weak", 0.95, 0.65), strong_case()};
    made.mains = small_mains(*catalog);
    made.findings = small_findings(*site);
    return made;
}

} // namespace

Assessment small_garden() { return garden({}); }

Assessment hostile_garden() {
    Names names;
    names.site = "</title><script>alert(1)</script> & \"Fern\" 'hollow'";
    names.first_lamp = "=1+1\x1b[31m<b>\xff\xe2\x80\xae\n\"'&\x7f";
    names.control = "--><img src=x onerror=alert(2)>";
    return garden(names);
}

Assessment unsolved_garden() {
    Assessment made = small_garden();
    for (CaseResult& result : made.solution.cases) {
        if (!result.conditions.loaded) continue;
        CaseResult stuck;
        stuck.conditions = result.conditions;
        stuck.solved = false;
        stuck.unsolved = {{0, 0, 1, 0.734}};
        stuck.circuits = {{std::vector<NodeResult>(result.circuits[0].nodes.size()), -1, 0}};
        result = stuck;
    }
    return made;
}

} // namespace rillwatt::samples
