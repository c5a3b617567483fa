#include "rillwatt/plan/lamp_rows.hpp"

#include "rillwatt/limits/standing.hpp"

namespace rillwatt {

namespace {

void place_results(std::vector<LampRow>& rows, const CaseResult& result, const LampResult* LampRow::*which) {
    for (const LampResult& lamp : result.lamps)
        if (lamp.fixture < rows.size()) rows[lamp.fixture].*which = &lamp;
}

LampState state_of(const LampRow& row) {
    if (row.type == nullptr || row.nominal == nullptr) return LampState::unknown;
    const auto place = [&](const LampResult* lamp) {
        return lamp == nullptr ? WindowPlace::inside : place_in_window(*row.type, lamp->volts);
    };
    if (place(row.nominal) == WindowPlace::below) return LampState::low;
    if (place(row.nominal) == WindowPlace::above) return LampState::high;
    if (place(row.weak) == WindowPlace::below) return LampState::low_when_weak;
    if (place(row.strong) == WindowPlace::above) return LampState::high_when_strong;
    return LampState::good;
}

void judge(LampRow& row) {
    row.state = state_of(row);
    if (row.nominal == nullptr) return;
    row.run = row.nominal->run;
    if (row.type != nullptr) row.margin = room_in_window(*row.type, row.nominal->volts);
}

} // namespace

std::string lamp_state_text(LampState state) {
    switch (state) {
    case LampState::low:
        return "too low";
    case LampState::high:
        return "too high";
    case LampState::low_when_weak:
        return "low if weak";
    case LampState::high_when_strong:
        return "high if strong";
    case LampState::unknown:
        return "no figure";
    case LampState::good:
        break;
    }
    return "";
}

std::vector<LampRow> lamp_rows(const Assessment& assessment) {
    const Site& site = *assessment.site;
    std::vector<LampRow> rows(site.fixtures.size());
    for (std::size_t i = 0; i < rows.size(); ++i) {
        rows[i].fixture = &site.fixtures[i];
        rows[i].type = assessment.circuits.fixture_types[i];
    }
    place_results(rows, assessment.solution.nominal(), &LampRow::nominal);
    place_results(rows, assessment.solution.weak(), &LampRow::weak);
    place_results(rows, assessment.solution.strong(), &LampRow::strong);
    for (LampRow& row : rows)
        judge(row);
    return rows;
}

} // namespace rillwatt
