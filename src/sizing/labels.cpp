#include "labels.hpp"

#include <algorithm>
#include <cmath>

namespace rillwatt::sizing {

namespace {

constexpr double rounding = 1e-12;
constexpr double volts_rounding = 1e-10;
constexpr double least_span = 0.05;  ///< volts between the first and the last sample
constexpr double widest_drift = 0.3; ///< how far samples may drift beyond the top, as a share of the span

/// Where samples lie between the two ends (Chebyshev-Lobatto points).
constexpr std::array<double, curve_samples> sample_places = {0, 0.14644660940672624, 0.5, 0.85355339059327376,
                                                             1};

std::array<double, curve_samples> sample_volts(double low, double top) {
    const double span = std::max(top - low, least_span);
    std::array<double, curve_samples> volts{};
    for (std::size_t j = 0; j < curve_samples; ++j)
        volts[j] = low + span * sample_places[j];
    return volts;
}

using Weights = std::array<double, curve_samples>;

Weights barycentric_weights(const Curve& curve) {
    Weights weights;
    for (std::size_t j = 0; j < curve_samples; ++j) {
        double product = 1;
        for (std::size_t k = 0; k < curve_samples; ++k)
            if (k != j) product *= curve.volts[j] - curve.volts[k];
        weights[j] = 1 / product;
    }
    return weights;
}

double sample(const Curve& curve, const Weights& weights, double volts) {
    double above = 0;
    double below = 0;
    for (std::size_t j = 0; j < curve_samples; ++j) {
        const double gap = volts - curve.volts[j];
        if (std::abs(gap) < rounding) return curve.amps[j];
        const double share = weights[j] / gap;
        above += share * curve.volts[j] * curve.amps[j];
        below += share;
    }
    return above / below / volts;
}

void respread(Curve& curve, double low, double top) {
    Curve spread;
    spread.volts = sample_volts(low, top);
    sample(curve, spread.volts, spread.amps);
    curve = spread;
}

/// Lowest or highest voltage between `inside` (amps allowed) and `outside` (too many) that is still allowed.
double ampacity_crossing(const Curve& curve, double inside, double outside, double ampacity) {
    const Weights weights = barycentric_weights(curve);
    for (int step = 0; step < 60; ++step) {
        const double middle = (inside + outside) / 2;
        (sample(curve, weights, middle) <= ampacity ? inside : outside) = middle;
    }
    return outside; // a hair too wide: never excludes what is allowed
}

bool some_sample_within(const Curve& curve, double top, double ampacity) {
    for (std::size_t j = 0; j < curve_samples; ++j)
        if (curve.volts[j] <= top + volts_rounding && curve.amps[j] <= ampacity) return true;
    return false;
}

/// Narrows the label's volts to where the current is within the ampacity. False when it nowhere is.
bool keep_ampacity(Label& label, double ampacity, const LabelFrame& frame) {
    const double end = std::min(label.high, frame.top);
    const double at_low = label.curve.amps[0];
    const double at_end = sample(label.curve, end);
    if (at_low <= ampacity && at_end <= ampacity) return true;
    if (at_low > ampacity && at_end > ampacity) return some_sample_within(label.curve, end, ampacity);
    if (at_low > ampacity) {
        label.low = ampacity_crossing(label.curve, end, label.low, ampacity);
        respread(label.curve, label.low, frame.top);
        if (frame.two_sided) respread(label.most, label.low, frame.top);
    } else if (frame.two_sided) {
        label.high = ampacity_crossing(label.curve, label.low, end, ampacity);
    }
    return true;
}

void raise_by_drop(Curve& curve, double ohms) {
    for (std::size_t j = 0; j < curve_samples; ++j)
        curve.volts[j] += ohms * curve.amps[j];
}

void hold_near_top(Curve& curve, double low, const LabelFrame& frame) {
    const double span = std::max(frame.top - low, least_span);
    if (curve.volts[curve_samples - 1] > low + (1 + widest_drift) * span) respread(curve, low, frame.top);
}

void add(Curve& curve, const Curve& other) {
    std::array<double, curve_samples> amps{};
    sample(other, curve.volts, amps);
    for (std::size_t j = 0; j < curve_samples; ++j)
        curve.amps[j] += amps[j];
}

bool add_lamp_amps(Curve& curve, const LampLoad& lamp) {
    for (std::size_t j = 0; j < curve_samples; ++j) {
        const auto amps = amps_at_splice(lamp, curve.volts[j]);
        if (!amps) return false;
        curve.amps[j] += *amps;
    }
    return true;
}

} // namespace

void sample(const Curve& curve, const std::array<double, curve_samples>& at,
            std::array<double, curve_samples>& amps) {
    const Weights weights = barycentric_weights(curve);
    for (std::size_t j = 0; j < curve_samples; ++j)
        amps[j] = sample(curve, weights, at[j]);
}

double sample(const Curve& curve, double volts) { return sample(curve, barycentric_weights(curve), volts); }

Label idle_label(const LabelFrame& frame) {
    Label label;
    label.low = frame.floor;
    label.curve.volts = sample_volts(frame.floor, frame.top);
    label.most = label.curve;
    return label;
}

Label lamp_label(const LampLoad& lamp, const LabelFrame& frame) {
    Label label = idle_label(frame);
    label.high = 0; // says: cannot work
    Label trial = idle_label(frame);
    if (add_lamp(trial, lamp, frame)) label = trial;
    return label;
}

bool add_lamp(Label& label, const LampLoad& lamp, const LabelFrame& frame) {
    const double low = splice_volts(lamp, lamp.low);
    const double high = splice_volts(lamp, lamp.high);
    if (high < frame.top) label.high = std::min(label.high, high);
    if (low > label.low) {
        label.low = low;
        respread(label.curve, low, frame.top);
        if (frame.two_sided) respread(label.most, low, frame.top);
    }
    if (label.low > std::min(label.high, frame.top) + volts_rounding) return false;
    if (!add_lamp_amps(label.curve, lamp)) return false;
    return !frame.two_sided || add_lamp_amps(label.most, lamp);
}

bool join(const Label& a, const Label& b, const LabelFrame& frame, Label& out) {
    const double low = std::max(a.low, b.low);
    const double high = std::min(a.high, b.high);
    if (low > std::min(high, frame.top) + volts_rounding) return false;
    const Label& upper = a.low >= b.low ? a : b; // its samples start where the joined ones do
    const Label& other = a.low >= b.low ? b : a;
    out = upper;
    add(out.curve, other.curve);
    if (frame.two_sided) add(out.most, other.most);
    out.low = low;
    out.high = high;
    out.cost = a.cost + b.cost;
    out.plain = a.plain + b.plain;
    for (std::size_t slot = 0; slot < spool_slots; ++slot)
        out.spooled[slot] = a.spooled[slot] + b.spooled[slot];
    out.thickness = std::max(a.thickness, b.thickness);
    out.exact = a.exact && b.exact;
    return true;
}

bool put_cable_in_front(Label& label, double ohms, double ampacity, const LabelFrame& frame) {
    if (!keep_ampacity(label, ampacity, frame)) return false;
    if (label.high < frame.top)
        label.high += ohms * sample(frame.two_sided ? label.most : label.curve, label.high);
    if (label.high >= frame.top) label.high = std::numeric_limits<double>::infinity();
    raise_by_drop(label.curve, ohms);
    label.low = label.curve.volts[0];
    if (label.low > std::min(label.high, frame.top) + volts_rounding) return false;
    hold_near_top(label.curve, label.low, frame);
    if (!frame.two_sided) return true;
    raise_by_drop(label.most, ohms);
    hold_near_top(label.most, label.low, frame);
    return true;
}

} // namespace rillwatt::sizing
