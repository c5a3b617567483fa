#include "rillwatt/search/labels.hpp"

#include <algorithm>
#include <cmath>

namespace rillwatt::search {

namespace {

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

void respread(Curve& curve, double low, double top) {
    const CurvePower power(curve);
    curve.volts = sample_volts(low, top);
    for (std::size_t j = 0; j < curve_samples; ++j)
        curve.amps[j] = power.at(curve.volts[j]) / curve.volts[j];
}

/// Lowest or highest voltage between `inside` (amps allowed) and `outside` (too many) that is still allowed.
double ampacity_crossing(const Curve& curve, double inside, double outside, double ampacity) {
    const CurvePower power(curve);
    for (int step = 0; step < 60; ++step) {
        const double middle = (inside + outside) / 2;
        (power.at(middle) <= ampacity * middle ? inside : outside) = middle;
    }
    return outside; // a hair too wide: never excludes what is allowed
}

bool some_sample_within(const Curve& curve, double top, double ampacity) {
    for (std::size_t j = 0; j < curve_samples; ++j)
        if (curve.volts[j] <= top + volts_rounding && curve.amps[j] <= ampacity) return true;
    return false;
}

/// Whether a look at the samples is enough to see that the current stays within the ampacity everywhere.
bool clear_of(const Curve& curve, double ampacity) {
    constexpr double well_within = 0.95;
    return std::all_of(curve.amps.begin(), curve.amps.end(),
                       [&](double amps) { return amps <= well_within * ampacity; });
}

/// Narrows the label's volts to where the current is within the ampacity. False when it nowhere is.
bool keep_ampacity(Label& label, double ampacity, const LabelFrame& frame) {
    if (clear_of(label.curve, ampacity)) return true;
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

/// Change of the volts in front of a cable per volt behind it.
double slope_in_front(const CurvePower& power, double volts, double ohms) {
    const double step = 1e-4 * volts;
    const double above = power.at(volts + step) / (volts + step);
    const double below = power.at(volts - step) / (volts - step);
    return 1 + ohms * (above - below) / (2 * step);
}

/// Constant-power lamps draw more the fewer volts they get: below the volts at which those in front of the
/// cable are least, the same volts in front belong to a higher root too, and that is the one a circuit takes.
/// False when the label's lowest volts are on it already.
bool keep_upper_root(Curve& curve, double& low, double ohms, double top) {
    if (rises_in_front(curve, ohms)) return false;
    const CurvePower power(curve);
    if (slope_in_front(power, low, ohms) >= 0) return false;
    double falling = low;
    double rising = top;
    for (int step = 0; step < 50; ++step) {
        const double middle = (falling + rising) / 2;
        (slope_in_front(power, middle, ohms) < 0 ? falling : rising) = middle;
    }
    low = falling; // a hair too wide: never excludes what works
    respread(curve, low, top);
    return true;
}

void raise_by_drop(Curve& curve, double ohms) {
    for (std::size_t j = 0; j < curve_samples; ++j)
        curve.volts[j] += ohms * curve.amps[j];
}

void hold_near_top(Curve& curve, double low, double top) {
    const double span = std::max(top - low, least_span);
    if (curve.volts[curve_samples - 1] > low + (1 + widest_drift) * span) respread(curve, low, top);
}

void add(Curve& curve, const CurvePower& power) {
    for (std::size_t j = 0; j < curve_samples; ++j)
        curve.amps[j] += power.at(curve.volts[j]) / curve.volts[j];
}

bool add_lamp_amps(Curve& curve, const WindowedLamp& lamp) {
    for (std::size_t j = 0; j < curve_samples; ++j) {
        const auto amps = amps_at_splice(lamp, curve.volts[j]);
        if (!amps) return false;
        curve.amps[j] += *amps;
    }
    return true;
}

/// A number that stands for a piece of one length (the finaliser of Steele, Lea, Flood, OOPSLA 2014,
/// 453-472).
std::uint64_t mark_of(Length length) {
    std::uint64_t mark = static_cast<std::uint64_t>(length) + 0x9e3779b97f4a7c15ULL;
    mark = (mark ^ (mark >> 30)) * 0xbf58476d1ce4e5b9ULL;
    mark = (mark ^ (mark >> 27)) * 0x94d049bb133111ebULL;
    return mark ^ (mark >> 31);
}

/// Puts the weak sides of two labels together. False when no voltage suits both.
bool join_weak(const Branch& first, const Branch& second, const LabelFrame& frame, WeakSide& out) {
    const bool swapped = first.label->weak.low < second.label->weak.low;
    const Branch& upper = swapped ? second : first; // its samples start where the joined ones do
    const Branch& other = swapped ? first : second;
    out = upper.label->weak;
    add(out.curve, *other.weak);
    return out.low <= frame.weak_top + volts_rounding;
}

bool put_in_front_of_weak(WeakSide& weak, double ohms, const LabelFrame& frame) {
    keep_upper_root(weak.curve, weak.low, ohms, frame.weak_top);
    raise_by_drop(weak.curve, ohms);
    weak.low = weak.curve.volts[0];
    if (weak.low > frame.weak_top + volts_rounding) return false;
    hold_near_top(weak.curve, weak.low, frame.weak_top);
    return true;
}

} // namespace

CurvePower::CurvePower(const Curve& curve) : volts(curve.volts), differences() {
    for (std::size_t j = 0; j < curve_samples; ++j)
        differences[j] = curve.volts[j] * curve.amps[j];
    for (std::size_t order = 1; order < curve_samples; ++order)
        for (std::size_t j = curve_samples - 1; j >= order; --j)
            differences[j] = (differences[j] - differences[j - 1]) / (volts[j] - volts[j - order]);
}

double sample(const Curve& curve, double volts) { return CurvePower(curve).at(volts) / volts; }

void spread(Curve& curve, double low, double top) { curve.volts = sample_volts(low, top); }

Label idle_label(const LabelFrame& frame) {
    Label label;
    label.low = frame.floor;
    label.curve.volts = sample_volts(frame.floor, frame.top);
    label.most = label.curve;
    if (frame.weak()) {
        label.weak.low = frame.weak_floor;
        label.weak.curve.volts = sample_volts(frame.weak_floor, frame.weak_top);
    }
    return label;
}

Label lamp_label(const WindowedLamp& lamp, const LabelFrame& frame) {
    Label label = idle_label(frame);
    label.high = 0; // says: cannot work
    Label trial = idle_label(frame);
    if (add_lamp(trial, lamp, frame)) label = trial;
    return label;
}

bool add_lamp(Label& label, const WindowedLamp& lamp, const LabelFrame& frame) {
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

bool add_weak_lamp(Label& label, const WindowedLamp& lamp, const LabelFrame& frame) {
    WeakSide& weak = label.weak;
    const double low = splice_volts(lamp, lamp.low);
    if (low > weak.low) {
        weak.low = low;
        respread(weak.curve, low, frame.weak_top);
    }
    return weak.low <= frame.weak_top + volts_rounding && add_lamp_amps(weak.curve, lamp);
}

std::vector<Branch> branches_of(const std::vector<Label>& labels, const LabelFrame& frame) {
    std::vector<Branch> branches;
    branches.reserve(labels.size());
    for (const Label& label : labels)
        branches.emplace_back(label, frame);
    return branches;
}

bool join(const Branch& first, const Branch& second, const LabelFrame& frame, Label& out) {
    const Label& a = *first.label;
    const Label& b = *second.label;
    const double low = std::max(a.low, b.low);
    const double high = std::min(a.high, b.high);
    if (low > std::min(high, frame.top) + volts_rounding) return false;
    const Branch& upper = a.low >= b.low ? first : second; // its samples start where the joined ones do
    const Branch& other = a.low >= b.low ? second : first;
    out = *upper.label;
    add(out.curve, other.power);
    if (frame.two_sided) add(out.most, other.most);
    if (frame.weak() && !join_weak(first, second, frame, out.weak)) return false;
    out.low = low;
    out.high = high;
    out.cost = a.cost + b.cost;
    out.plain = a.plain + b.plain;
    for (std::size_t slot = 0; slot < spool_slots; ++slot)
        out.pieces[slot] = a.pieces[slot] + b.pieces[slot];
    out.thickness = std::max(a.thickness, b.thickness);
    out.exact = a.exact && b.exact;
    return true;
}

double amps_at_high(const Label& label, double most, const LabelFrame& frame) {
    if (label.high >= frame.top) return 0;
    return std::min(sample(frame.two_sided ? label.most : label.curve, label.high), most);
}

bool rises_in_front(const Curve& curve, double ohms) {
    constexpr double well_rising = 0.6; // such a slope over the first samples leaves none below zero
    const double run = curve.volts[1] - curve.volts[0];
    return run + ohms * (curve.amps[1] - curve.amps[0]) >= well_rising * run;
}

double low_in_front(const Label& label, double ohms) {
    return label.low + (rises_in_front(label.curve, ohms) ? ohms * label.curve.amps[0] : 0);
}

double weak_low_in_front(const Label& label, double ohms) {
    const WeakSide& weak = label.weak;
    return weak.low + (rises_in_front(weak.curve, ohms) ? ohms * weak.curve.amps[0] : 0);
}

bool put_cable_in_front(Label& label, const Front& front, const LabelFrame& frame) {
    const double ohms = front.ohms;
    const double high = label.high;
    if (!keep_ampacity(label, front.ampacity, frame)) return false;
    if (keep_upper_root(label.curve, label.low, ohms, frame.top) && frame.two_sided)
        respread(label.most, label.low, frame.top);
    if (label.high < frame.top)
        label.high += ohms * (label.high == high ? front.amps_at_high : front.ampacity);
    if (label.high >= frame.top) label.high = std::numeric_limits<double>::infinity();
    raise_by_drop(label.curve, ohms);
    label.low = label.curve.volts[0];
    if (label.low > std::min(label.high, frame.top) + volts_rounding) return false;
    hold_near_top(label.curve, label.low, frame.top);
    if (frame.two_sided) {
        raise_by_drop(label.most, ohms);
        hold_near_top(label.most, label.low, frame.top);
    }
    return !frame.weak() || put_in_front_of_weak(label.weak, front.weak_ohms, frame);
}

void count_metres(Label& label, const Cable& cable, double metres) {
    if (cable.spool < 0)
        label.plain += cable.price * metres;
    else if (static_cast<std::size_t>(cable.spool) < spool_slots)
        label.pieces[static_cast<std::size_t>(cable.spool)] += mark_of(whole_length(metres));
}

} // namespace rillwatt::search
