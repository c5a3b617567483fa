#pragma once

#include "rillwatt/finding/finding.hpp"
#include "rillwatt/quantity/point.hpp"
#include "rillwatt/quantity/quantity.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <optional>
#include <string>
#include <vector>

namespace rillwatt {

/// What every part of the site file carries: its id and where it is written.
struct Part {
    std::string id;
    SourceLocation location;
};

enum class CodeFamily { nec, iec };

/// `[site]`. Defaults are those of the site-file contract.
struct SiteSettings {
    std::string name;
    LengthUnit units = LengthUnit::feet;
    std::vector<std::string> catalogs;
    std::string currency = "USD";
    Celsius conductor_temperature{75};
    Volts supply_voltage{120};
    double supply_band = 0.05;
    double cable_allowance = 0.10;
    Hours hours_per_night{5};
    CodeFamily code = CodeFamily::nec;
    int code_edition = 2020;
    bool dwelling = true;
    double energy_price = 0; ///< money per kWh
    double nights_per_year = 365;
    Metres cable_cover = inches(6);
    PerMetre water_attenuation;
    double light_loss_factor = 0.8;
    double light_loss_factor_water = 0.65;
    std::optional<Degrees> north; ///< bearing on the plan of north, 90 = +y
};

/// `[stock]`: what sizing and placing may choose from. Empty optional: every priced entry of the catalogs.
struct Stock {
    std::optional<std::vector<std::string>> cables;
    std::optional<std::vector<std::string>> transformers;
    std::optional<std::vector<std::string>> fixtures;
};

enum class Wiring { direct_burial, rigid_metal, pvc, indoor };
enum class Crossing { lawn, slab, driveway };
enum class Outlet { receptacle, hardwired };

const char* wiring_name(Wiring wiring);
const char* crossing_name(Crossing crossing);

/// `[[circuit]]`: a line-voltage branch circuit.
struct BranchCircuit : Part {
    std::optional<Volts> volts; ///< none: site.supply_voltage
    std::optional<Amperes> breaker;
    bool gfci = false;
    std::optional<std::string> conductor;
    std::optional<Metres> length; ///< panel to outlet, one way
    std::optional<Wiring> wiring;
    std::optional<Metres> cover;
    Crossing crosses = Crossing::lawn;
    std::optional<PlanPoint> at;
    Outlet outlet = Outlet::receptacle;
    bool outdoors = true;
    bool wet_cover = false;
};

struct Pump : Part {
    std::string model;
    std::optional<std::string> circuit;
    std::optional<PlanPoint> at;
    Hours hours_per_day{24};
};

struct Transformer : Part {
    std::optional<std::string> model; ///< none: open
    std::optional<std::string> circuit;
    std::optional<PlanPoint> at;
    std::string control;
};

/// A cable leaving a transformer.
struct Run : Part {
    std::string from; ///< transformer id
    std::optional<Volts> tap;
    std::optional<std::string> cable;
};

struct Splice : Part {
    std::string from;
    std::optional<Metres> length;
    std::optional<std::string> cable;
    std::optional<PlanPoint> at;
};

/// Which way a light points. A point wins over bearing and tilt.
struct Aim {
    std::optional<SpacePoint> at;
    std::optional<Degrees> bearing;
    std::optional<Degrees> tilt;
};

struct Fixture : Part {
    std::string model;
    std::optional<std::string> from; ///< none: not wired yet
    std::optional<Metres> length;
    std::optional<std::string> cable;
    std::optional<PlanPoint> at;
    std::optional<bool> in_water; ///< none: whether `at` lies in a water area
    Aim aim;
    std::optional<Metres> mounting;    ///< light centre above grade; none: by kind
    std::optional<Metres> elevation;   ///< of the ground there, default 0
    std::optional<std::string> lights; ///< falls or walk it is there for
};

/// `[[link]]`: a cable that closes a ring between two splices, fixtures or run starts.
struct Link : Part {
    std::string a;
    std::string b;
    std::optional<Metres> length;
    std::optional<std::string> cable;
};

enum class AreaKind { water, building, paving, bed, lawn };
const char* area_kind_name(AreaKind kind);

struct Area : Part {
    AreaKind kind = AreaKind::lawn;
    std::vector<PlanPoint> outline;
    Metres height; ///< blocks light and view; 10 ft for a building unless given, 0 for the rest
    Metres level;  ///< water only: height of the surface
};

struct Sleeve : Part {
    PlanPoint a;
    PlanPoint b;
};

/// A named point to tape from.
struct Mark : Part {
    PlanPoint at;
};

struct Walk : Part {
    std::vector<PlanPoint> line;
    Metres width;
    Metres elevation;
    std::optional<std::string> target; ///< EN 13201-2 class "P1".."P7"
    std::optional<Lux> mean_lux;
    std::optional<Lux> min_lux;
};

struct Falls : Part {
    PlanPoint lip_left;
    PlanPoint lip_right;
    Metres drop;
    Metres pool_depth;
    Metres base;
    Degrees faces; ///< bearing on the plan, 0 = +x; from the lip unless given
};

struct Viewpoint : Part {
    PlanPoint at;
    Metres eye;
    std::vector<std::string> looks_at;
};

/// One garden as its user wrote it, every part in file order and with its line. What is left out is empty.
struct Site {
    std::string file;
    SiteSettings settings;
    Stock stock;
    std::vector<BranchCircuit> circuits;
    std::vector<Pump> pumps;
    std::vector<Transformer> transformers;
    std::vector<Run> runs;
    std::vector<Splice> splices;
    std::vector<Fixture> fixtures;
    std::vector<Link> links;
    std::vector<Area> areas;
    std::vector<Sleeve> sleeves;
    std::vector<Mark> marks;
    std::vector<Walk> walks;
    std::vector<Falls> falls;
    std::vector<Viewpoint> viewpoints;
};

} // namespace rillwatt
