#include "rillwatt/exchange/tables_csv.hpp"

#include "rillwatt/plan/lamp_rows.hpp"
#include "rillwatt/text/escape.hpp"

#include <fmt/format.h>

#include <array>

namespace rillwatt {

namespace {

template<std::size_t N>
std::string heads(const std::array<const char*, N>& names) {
    return csv_record(names);
}

std::string volts(const LampResult* lamp) {
    return lamp == nullptr ? "" : csv_number(lamp->volts.value(), 4);
}

std::vector<std::string> lamp_cells(const Site& site, const LampRow& row) {
    std::vector<std::string> cells = {csv_text(row.fixture->id), csv_text(row.fixture->model)};
    const LampResult* lamp = row.nominal;
    cells.push_back(row.run ? csv_text(site.runs[*row.run].id) : "");
    cells.push_back(lamp != nullptr ? csv_text(site.transformers[lamp->transformer].id) : "");
    cells.push_back(lamp != nullptr ? csv_number((lamp->volts + lamp->drop).value(), 2) : "");
    for (const LampResult* result : {row.nominal, row.weak, row.strong})
        cells.push_back(volts(result));
    cells.push_back(row.type != nullptr ? csv_number(row.type->window_low.value(), 2) : "");
    cells.push_back(row.type != nullptr ? csv_number(row.type->window_high.value(), 2) : "");
    cells.push_back(row.margin ? csv_number(row.margin->value(), 4) : "");
    cells.push_back(lamp != nullptr ? csv_number(lamp->amps.value(), 4) : "");
    cells.push_back(lamp != nullptr ? csv_number(100 * lamp->drop_ratio, 3) : "");
    cells.push_back(csv_text(row.state == LampState::good ? "good" : lamp_state_text(row.state)));
    return cells;
}

/// The number of the spool each piece is cut from, counted from 1; 0: none.
std::vector<std::size_t> spool_of_pieces(const CutPlan& cuts) {
    std::vector<std::size_t> spools(cuts.pieces.size(), 0);
    for (std::size_t i = 0; i < cuts.stock.size(); ++i)
        for (std::size_t piece : cuts.stock[i].pieces)
            spools[piece] = i + 1;
    return spools;
}

} // namespace

std::string lamps_csv(const Site& site, const std::vector<LampRow>& lamps) {
    std::string out = heads(std::array{"lamp", "model", "run", "transformer", "tap_volts", "nominal_volts",
                                       "weak_volts", "strong_volts", "window_low", "window_high",
                                       "margin_volts", "amps", "drop_percent", "state"});
    for (const LampRow& row : lamps)
        out += csv_record(lamp_cells(site, row));
    return out;
}

std::string cut_list_csv(const Site& site, const CutPlan& cuts) {
    const bool feet_unit = site.settings.units == LengthUnit::feet;
    std::string out =
        heads(std::array{"tag", "run", "cable", "from", "to", "length_m", feet_unit ? "length_ft" : "length",
                         "measured", "cut_from", "cut_from_length_m"});
    const std::vector<std::size_t> spools = spool_of_pieces(cuts);
    for (std::size_t i = 0; i < cuts.pieces.size(); ++i) {
        const CablePiece& piece = cuts.pieces[i];
        const double length = piece.length.value() / (feet_unit ? metres_per_foot : 1);
        const std::size_t spool = spools[i];
        out += csv_record(std::array<std::string, 10>{
            csv_text(piece.tag), csv_text(piece.run), csv_text(piece.cable), csv_text(piece.from),
            csv_text(piece.to), csv_number(piece.length.value(), 3), csv_number(length, 2),
            piece.from_plan ? "plan" : "typed", spool > 0 ? fmt::format("{}", spool) : "",
            spool > 0 ? csv_number(cuts.stock[spool - 1].length.value(), 3) : ""});
    }
    return out;
}

} // namespace rillwatt
