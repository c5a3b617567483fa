#include "rillwatt/exchange/check_json.hpp"

#include <string_view>
#include <unordered_map>

namespace rillwatt {

namespace {

using Set = JsonWriter::Set;

/// Where the routes of cable lengths are found, by the id of the part (or link) the length leads to.
using Routes = std::unordered_map<std::string_view, const std::vector<PlanPoint>*>;

template<class Parts>
void collect_routes(Routes& routes, const Parts& parts, const std::vector<PartLength>& lengths) {
    for (std::size_t i = 0; i < parts.size() && i < lengths.size(); ++i)
        if (!lengths[i].route.empty()) routes.emplace(parts[i].id, &lengths[i].route);
}

Routes all_routes(const Assessment& assessment) {
    Routes routes;
    collect_routes(routes, assessment.site->splices, assessment.lengths.splices);
    collect_routes(routes, assessment.site->fixtures, assessment.lengths.fixtures);
    collect_routes(routes, assessment.site->links, assessment.lengths.links);
    return routes;
}

void write_transformers(JsonWriter& json, const Assessment& assessment, const CaseResult& result) {
    json.key("transformers");
    json.begin_array();
    for (const TransformerResult& transformer : result.transformers) {
        const TransformerCircuit& circuit = assessment.circuits.transformers[transformer.transformer];
        json.begin_object(Set::line);
        json.member("id", assessment.site->transformers[transformer.transformer].id);
        json.member("model", circuit.type->id);
        json.member("rating_va", circuit.type->va.value());
        json.member("load_va", transformer.load.value());
        json.member("loading_percent", 100 * transformer.loading);
        json.member("primary_amps", transformer.primary_amps.value());
        json.member("supply_volts", circuit.supply.value() * result.conditions.supply_factor);
        json.member("winding_loss_watts", transformer.winding_loss.value());
        json.member("no_load_watts", transformer.no_load.value());
        json.end();
    }
    json.end();
}

void write_runs(JsonWriter& json, const Site& site, const CaseResult& result) {
    json.key("runs");
    json.begin_array();
    for (const RunResult& run : result.runs) {
        json.begin_object(Set::line);
        json.member("id", site.runs[run.run].id);
        json.member("transformer", site.transformers[run.transformer].id);
        json.member("tap", run.tap.value());
        json.member("volts", run.volts.value());
        json.member("amps", run.amps.value());
        if (run.worst_fixture) {
            json.member("worst_fixture", site.fixtures[*run.worst_fixture].id);
            json.member("worst_volts", run.worst_volts.value());
        }
        json.end();
    }
    json.end();
}

void write_loaded_lamp(JsonWriter& json, const LampResult& lamp) {
    json.member("splice_volts", lamp.splice_volts.value());
    json.member("amps", lamp.amps.value());
    json.member("va", lamp.va.value());
    json.member("watts", lamp.watts.value());
    json.member("drop_volts", lamp.drop.value());
    json.member("drop_percent", 100 * lamp.drop_ratio);
}

void write_lamps(JsonWriter& json, const Site& site, const CaseResult& result) {
    json.key("fixtures");
    json.begin_array();
    for (const LampResult& lamp : result.lamps) {
        json.begin_object(Set::line);
        json.member("id", site.fixtures[lamp.fixture].id);
        json.member("run", site.runs[lamp.run].id);
        json.member("volts", lamp.volts.value());
        if (result.conditions.loaded) write_loaded_lamp(json, lamp);
        json.end();
    }
    json.end();
}

void write_route(JsonWriter& json, const std::vector<PlanPoint>& route) {
    json.key("route_m");
    json.begin_array(Set::line);
    for (const PlanPoint& point : route) {
        json.begin_array(Set::line);
        json.value(point.x);
        json.value(point.y);
        json.end();
    }
    json.end();
}

void write_segments(JsonWriter& json, const CaseResult& result, const Routes& routes) {
    json.key("segments");
    json.begin_array();
    for (const SegmentResult& segment : result.segments) {
        json.begin_object(Set::line);
        json.member("from", segment.from);
        json.member("to", segment.to);
        if (!segment.link.empty()) json.member("link", segment.link);
        json.member("cable", segment.cable);
        json.member("length_m", segment.length.value());
        json.member("ohms", segment.ohms.value());
        json.member("amps", segment.amps.value());
        json.member("drop_volts", segment.drop.value());
        json.member("loss_watts", segment.loss.value());
        const auto route = routes.find(segment.link.empty() ? segment.to : segment.link);
        if (route != routes.end()) write_route(json, *route->second);
        json.end();
    }
    json.end();
}

void write_unsolved(JsonWriter& json, const Site& site, const CaseResult& result) {
    json.key("unsolved");
    json.begin_array();
    for (const NoOperatingPoint& point : result.unsolved) {
        json.begin_object(Set::line);
        json.member("transformer", site.transformers[point.transformer].id);
        json.member("run", site.runs[point.run].id);
        json.member("fixture", site.fixtures[point.fixture].id);
        json.member("carried_share", point.carried_share);
        json.end();
    }
    json.end();
}

void write_case(JsonWriter& json, const Assessment& assessment, const CaseResult& result,
                const Routes& routes) {
    const OperatingCase& conditions = result.conditions;
    const CaseResult no_load; // without load current there is nothing to tell but the lamps' volts
    const CaseResult& load = conditions.loaded ? result : no_load;
    json.begin_object();
    json.member("name", conditions.name);
    json.member("solved", result.solved);
    json.member("supply_volts", assessment.site->settings.supply_voltage.value() * conditions.supply_factor);
    json.member("conductor_celsius", conditions.conductor.value());
    write_transformers(json, assessment, load);
    write_runs(json, *assessment.site, load);
    write_lamps(json, *assessment.site, result);
    write_segments(json, load, routes);
    write_unsolved(json, *assessment.site, result);
    json.member("loss_watts", load.cable_loss.value());
    json.end();
}

void write_cases(JsonWriter& json, const Assessment& assessment) {
    const Routes routes = all_routes(assessment);
    json.key("cases");
    json.begin_array();
    for (const CaseResult& result : assessment.solution.cases)
        write_case(json, assessment, result, routes);
    json.end();
}

template<class Q>
std::optional<double> number(const std::optional<Q>& quantity) {
    return quantity ? std::optional<double>(quantity->value()) : std::nullopt;
}

void write_circuits(JsonWriter& json, const Assessment& assessment) {
    json.key("circuits");
    json.begin_array();
    for (const MainsCircuit& circuit : assessment.mains.circuits) {
        const BranchCircuit& written = assessment.site->circuits[circuit.circuit];
        json.begin_object(Set::line);
        json.member("id", written.id);
        json.member("amps", circuit.amps.value());
        json.member("continuous_amps", circuit.continuous_amps.value());
        json.member("design_amps", circuit.design_amps.value());
        json.member("breaker", number(written.breaker));
        json.member("drop_percent",
                    circuit.drop_known ? std::optional<double>(100 * circuit.drop_ratio) : std::nullopt);
        json.key("loads");
        json.begin_array(Set::line);
        for (const std::string& load : circuit.loads)
            json.value(load);
        json.end();
        json.end();
    }
    json.end();
}

void write_energy(JsonWriter& json, const Assessment& assessment) {
    const RunningCost& cost = assessment.mains.cost;
    json.key("energy");
    json.begin_object(Set::line);
    json.member("lights_kwh_per_year", kilowatt_hours(cost.lights));
    json.member("pumps_kwh_per_year", kilowatt_hours(cost.pumps));
    if (assessment.site->settings.energy_price > 0) {
        json.member("lights_cost_per_year", cost.lights_cost.value());
        json.member("pumps_cost_per_year", cost.pumps_cost.value());
        json.member("currency", assessment.site->settings.currency);
    }
    json.end();
}

} // namespace

void write_findings(JsonWriter& json, const std::vector<Finding>& findings) {
    json.begin_array();
    for (const Finding& finding : findings) {
        json.begin_object(Set::line);
        json.member("rule", finding.rule);
        json.member("severity", severity_name(finding.severity));
        json.member_or_null("part", finding.part);
        json.member_or_null("file", finding.location.file);
        json.member("line",
                    finding.location.line > 0 ? std::optional<int>(finding.location.line) : std::nullopt);
        json.member("message", finding.message);
        json.member_or_null("hint", finding.hint);
        json.member("source", finding.source);
        json.end();
    }
    json.end();
}

void write_check(JsonWriter& json, const Assessment& assessment) {
    const Site& site = *assessment.site;
    json.begin_object();
    json.member("schema", "rillwatt/1");
    json.member("command", "check");
    json.member("site", site.settings.name);
    json.member("file", site.file);
    json.member("solved", assessment.solution.nominal().solved);
    write_cases(json, assessment);
    write_circuits(json, assessment);
    write_energy(json, assessment);
    json.key("findings");
    write_findings(json, assessment.findings);
    json.end();
}

std::string check_json(const Assessment& assessment) {
    JsonWriter json;
    write_check(json, assessment);
    return json.take();
}

} // namespace rillwatt
