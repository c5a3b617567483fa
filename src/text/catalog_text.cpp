#include "rillwatt/text/catalog_text.hpp"

#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/text/catalog_match.hpp"
#include "rillwatt/text/utf8.hpp"

#include <fmt/format.h>

namespace rillwatt {

namespace {

/// Writes the entries of a catalog, kind after kind; the source is named when it changes.
class CatalogList {
  public:
    CatalogList(LengthUnit unit, const TextStyle& style) : unit_(unit), style_(style) {}

    template<class Entries>
    void add(const std::string& heading, const Entries& entries) {
        if (entries.empty()) return;
        if (!out_.empty()) out_ += '\n';
        out_ += inked(style_, Ink::heading, heading) + '\n';
        std::string source;
        for (const auto* entry : entries) {
            if (entry->source != source)
                out_ += wrapped("from " + printable(entry->source), style_.width, "  ", "       ");
            source = entry->source;
            add_entry(entry->id, facts(*entry));
            add_note(*entry);
        }
    }

    std::string take() { return out_.empty() ? "nothing in the catalogs matches\n" : std::move(out_); }

  private:
    void add_entry(const std::string& id, const std::string& facts) {
        const std::string name = printable(id);
        const std::string indent(24, ' ');
        if (display_width(name) <= 20) {
            out_ += wrapped(facts, style_.width, "  " + padded_right(name, 22), indent);
            return;
        }
        out_ += "  " + clipped(name, style_.width - 2) + '\n' + wrapped(facts, style_.width, indent, indent);
    }

    void add_note(const CatalogEntry& entry) {
        const std::string indent(24, ' ');
        if (!entry.note.empty()) out_ += wrapped(printable(entry.note), style_.width, indent, indent);
    }
    void add_note(const ConductorTable&) {}

    std::string length(Metres value) const {
        return trimmed_text(unit_ == LengthUnit::feet ? value.value() / metres_per_foot : value.value(), 1) +
               (unit_ == LengthUnit::feet ? " ft" : " m");
    }

    std::string facts(const CableType& cable) const;
    std::string facts(const FixtureType& fixture) const;
    std::string facts(const TransformerType& transformer) const;
    std::string facts(const PumpType& pump) const;
    std::string facts(const AccessoryType& accessory) const;
    std::string facts(const ConductorTable& table) const;

    LengthUnit unit_;
    const TextStyle& style_;
    std::string out_;
};

std::string price_text(const std::optional<Money>& price) {
    return price ? ", price " + fixed_text(price->value(), 2) : ", no price";
}

std::string CatalogList::facts(const CableType& cable) const {
    const double per_length = unit_ == LengthUnit::feet ? metres_per_foot : 1;
    std::string text = fmt::format("{}, table {}, {}{}", printable(cable.size), printable(cable.table),
                                   nominal_amps_text(cable.ampacity),
                                   cable.direct_burial ? ", direct burial" : ", not for burial");
    text += cable.price ? fmt::format(", {} per {}", fixed_text(cable.price->value() * per_length, 2),
                                      unit_ == LengthUnit::feet ? "ft" : "m")
                        : ", no price";
    for (std::size_t i = 0; i < cable.spools.size(); ++i)
        text += (i == 0 ? ", spools of " : ", ") + length(cable.spools[i]);
    return text;
}

std::string CatalogList::facts(const FixtureType& fixture) const {
    std::string text = fmt::format("{}, {}", fixture_kind_name(fixture.kind), watts_text(fixture.watts));
    if (fixture.va.value() != fixture.watts.value()) text += " (" + va_text(fixture.va) + ")";
    text += fmt::format(", {} ({} to {} V), {}", nominal_volts_text(fixture.rated_volts),
                        trimmed_text(fixture.window_low.value(), 2),
                        trimmed_text(fixture.window_high.value(), 2), load_model_name(fixture.load));
    if (fixture.lead.value() > 0)
        text += fmt::format(", lead {} of {}", length(fixture.lead), printable(fixture.lead_cable));
    if (fixture.lumens.value() > 0) text += fmt::format(", {} lm", trimmed_text(fixture.lumens.value(), 0));
    return text + fmt::format(", {}", water_rating_name(fixture.rating)) + price_text(fixture.price);
}

std::string CatalogList::facts(const TransformerType& transformer) const {
    std::string taps;
    for (Volts tap : transformer.taps)
        taps += (taps.empty() ? "" : ", ") + trimmed_text(tap.value(), 2);
    return fmt::format("{}, {} in, taps {} V, regulation {}, {} a run{}", va_text(transformer.va),
                       nominal_volts_text(transformer.primary_volts), taps,
                       trimmed_text(100 * transformer.regulation, 1) + " %",
                       nominal_amps_text(transformer.secondary_limit),
                       transformer.water_listed ? ", listed for lights in water" : "") +
           price_text(transformer.price);
}

std::string CatalogList::facts(const PumpType& pump) const {
    std::string text =
        fmt::format("{}, {}, {}{}", nominal_volts_text(pump.volts), nominal_amps_text(pump.amps),
                    watts_text(pump.watts), pump.submersible ? ", submersible" : "");
    if (pump.horsepower) text += fmt::format(", {} hp", trimmed_text(*pump.horsepower, 3));
    text += pump.cord_and_plug ? ", cord " + length(pump.cord) : std::string(", hardwired");
    return text + price_text(pump.price);
}

std::string CatalogList::facts(const AccessoryType& accessory) const {
    const std::string text = "counted by " + printable(accessory.use);
    if (!accessory.price || !accessory.use.ends_with("-metre")) return text + price_text(accessory.price);
    const bool by_foot = unit_ == LengthUnit::feet;
    const double price = accessory.price->value() * (by_foot ? metres_per_foot : 1);
    return fmt::format("{}, price {} a {}", text, fixed_text(price, price < 1 ? 3 : 2),
                       by_foot ? "foot" : "metre");
}

std::string CatalogList::facts(const ConductorTable& table) const {
    std::string text = fmt::format("at {}, {} per C:", celsius_text(table.reference_temperature),
                                   trimmed_text(table.temperature_coefficient, 6));
    const bool feet_unit = unit_ == LengthUnit::feet;
    for (const ConductorRow& row : table.rows)
        text +=
            fmt::format(" {} {},", printable(row.size),
                        trimmed_text(row.resistance.value() * 1000 * (feet_unit ? metres_per_foot : 1), 4));
    text.back() = ' ';
    return text + (feet_unit ? "ohm/kft" : "ohm/km");
}

} // namespace

std::string catalog_text(const Catalog& catalog, const CatalogQuery& query, LengthUnit unit,
                         const TextStyle& style) {
    CatalogList list(unit, style);
    list.add("CABLES", matching(catalog.cables, query, "cable"));
    list.add("FIXTURES", matching(catalog.fixtures, query, "fixture"));
    list.add("TRANSFORMERS", matching(catalog.transformers, query, "transformer"));
    list.add("PUMPS", matching(catalog.pumps, query, "pump"));
    list.add("ACCESSORIES", matching(catalog.accessories, query, "accessory"));
    list.add("CONDUCTOR TABLES", matching(catalog.tables, query, "conductor-table"));
    return list.take();
}

} // namespace rillwatt
