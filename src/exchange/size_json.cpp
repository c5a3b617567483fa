#include "rillwatt/exchange/size_json.hpp"

#include "rillwatt/exchange/check_json.hpp"

#include <algorithm>

namespace rillwatt {

namespace {

using Set = JsonWriter::Set;

void member_money(JsonWriter& json, std::string_view name, const std::optional<Money>& money) {
    json.key(name);
    if (money)
        json.value(money->value());
    else
        json.null();
}

void begin_result(JsonWriter& json, const char* command, const Site& site) {
    json.begin_object();
    json.member("schema", "rillwatt/1");
    json.member("command", command);
    json.member("site", site.settings.name);
    json.member("file", site.file);
}

void write_choices(JsonWriter& json, const std::vector<SizeChoice>& choices) {
    json.key("choices");
    json.begin_array();
    for (const SizeChoice& choice : choices) {
        json.begin_object(Set::line);
        json.member("part", choice.part);
        json.member("what", choice.what);
        json.key("value");
        if (choice.volts)
            json.value(choice.volts->value());
        else
            json.value(choice.value);
        json.key("was");
        if (choice.was_volts)
            json.value(choice.was_volts->value());
        else
            json.value(choice.was);
        json.end();
    }
    json.end();
}

void write_texts(JsonWriter& json, std::string_view name, const std::vector<std::string>& texts) {
    json.key(name);
    json.begin_array(Set::line);
    for (const std::string& text : texts)
        json.value(text);
    json.end();
}

void write_bill(JsonWriter& json, const Bill& bill) {
    json.key("bill");
    json.begin_array();
    for (const BillLine& line : bill.lines) {
        json.begin_object(Set::line);
        json.member("item", line.item);
        json.member("what", bill_kind_name(line.kind));
        json.member("description", line.description);
        json.member("quantity", line.quantity);
        json.member("unit", line.unit);
        member_money(json, "price", line.price);
        member_money(json, "cost", line.cost);
        json.end();
    }
    json.end();
    json.member("bill_total", bill.total.value());
    write_texts(json, "bill_remarks", bill.remarks);
}

void write_reasons(JsonWriter& json, const std::vector<SizeReason>& reasons) {
    json.key("reasons");
    json.begin_array();
    for (const SizeReason& reason : reasons) {
        json.begin_object(Set::line);
        json.member("part", reason.part);
        json.member("binds", reason.binds);
        json.member_or_null("cheaper", reason.cheaper);
        json.end();
    }
    json.end();
}

void member_volts(JsonWriter& json, std::string_view name, const std::optional<Volts>& volts) {
    json.key(name);
    if (volts)
        json.value(volts->value());
    else
        json.null();
}

void write_infeasible(JsonWriter& json, const Infeasibility& infeasible) {
    json.key("infeasible");
    json.begin_object();
    json.member("part", infeasible.part);
    json.member("transformer", infeasible.transformer);
    member_volts(json, "best_volts", infeasible.best);
    member_volts(json, "needed_volts", infeasible.needed);
    json.member("reason", infeasible.reason);
    json.member("suggestion", infeasible.suggestion);
    write_texts(json, "other_ways", infeasible.other_ways);
    json.member("proven", infeasible.proven);
    json.end();
}

/// What the text says in its first lines: the errors and warnings of the site with the choices in place.
void write_warned(JsonWriter& json, const SizeReport& report) {
    json.key("warned");
    json.begin_array();
    for (const Finding& finding : warned_of(report)) {
        json.begin_object(Set::line);
        json.member("rule", finding.rule);
        json.member_or_null("part", finding.part);
        json.member("message", finding.message);
        json.end();
    }
    json.end();
}

/// Everything that cost or bill count as nothing because it has no price.
std::vector<std::string> unpriced_items(const SizeReport& report) {
    std::vector<std::string> items;
    for (const auto* list : {&report.result.unpriced, &report.bill.unpriced})
        for (const std::string& item : *list)
            if (std::find(items.begin(), items.end(), item) == items.end()) items.push_back(item);
    return items;
}

} // namespace

std::string size_json(const SizeReport& report) {
    const SizeResult& result = report.result;
    JsonWriter json;
    begin_result(json, "size", *report.after.site);
    json.member("status", size_status_name(result.status));
    member_money(json, "cost", result.cost);
    member_money(json, "lower_bound", result.lower_bound);
    json.member("margin_volts", report.options.margin.value());
    json.member("low_margin_volts", report.options.above_low_end().value());
    json.key("gap_percent");
    if (result.cost)
        json.value(result.gap() * 100);
    else
        json.null();
    json.member("currency", report.after.site->settings.currency);
    write_warned(json, report);
    write_choices(json, result.choices);
    write_reasons(json, result.reasons);
    write_bill(json, report.bill);
    write_texts(json, "unpriced", unpriced_items(report));
    write_texts(json, "left_out", result.left_out);
    json.key("check");
    write_check(json, report.after);
    if (result.infeasible) write_infeasible(json, *result.infeasible);
    json.end();
    return json.take();
}

std::string headroom_json(const std::vector<Headroom>& rooms, const Assessment& assessment) {
    JsonWriter json;
    begin_result(json, "headroom", *assessment.site);
    json.key("headroom");
    json.begin_array();
    for (const Headroom& room : rooms) {
        json.begin_object(Set::line);
        json.member("part", room.part);
        json.member("transformer", room.transformer);
        json.member("broken", room.broken);
        json.key("more_va");
        if (room.limited)
            json.value(room.more.value());
        else
            json.null();
        json.member_or_null("breaks", room.breaks);
        json.member_or_null("what", room.what);
        json.member_or_null("rule", room.rule);
        json.end();
    }
    json.end();
    json.end();
    return json.take();
}

} // namespace rillwatt
