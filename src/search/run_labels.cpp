#include "rillwatt/search/run_labels.hpp"

#include "rillwatt/search/steady_labels.hpp"

#include <algorithm>
#include <cmath>

namespace rillwatt::search {

namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

const Cable& cable_at(const SizeProblem& problem, int index) { return problem.cables[at(index)]; }

/// One search over the tree of a run, with labels of either kind.
template<class L>
class Tree {
  public:
    Tree(const SizeProblem& problem, const RunProblem& run, const RunSearch& search, const LabelFrame& frame,
         std::vector<int> candidates, RunLabels& found, Effort& effort)
        : problem_(problem), run_(run), search_(search), frame_(frame),
          supplied_(frame.weak() == search.frame.weak() ? Supplied::nominal : Supplied::weak),
          candidates_(std::move(candidates)), found_(found), effort_(effort), grown_(),
          points_(run.nodes.size() + 1) {}

    void search() {
        bound_rest();
        top_volts_ = bound_volts(supplied_, frame_.floor, frame_.top);
        if (frame_.weak()) weak_top_volts_ = bound_volts(Supplied::weak, frame_.weak_floor, frame_.weak_top);
        for (std::size_t i = run_.nodes.size(); i-- > 0;) {
            if (effort_.spent()) {
                found_.complete = false;
                return;
            }
            if (!finish(i)) return; // no way to serve what lies below
        }
        std::vector<L>& head = points_.back();
        if (!head_used_) start_idle(head.emplace_back(), frame_);
        for (const L& label : head)
            found_.labels.push_back(with_curve(label, search_.frame));
    }

  private:
    void bound_rest();
    std::vector<double> bound_volts(Supplied supplied, double floor, double top) const;
    bool finish(std::size_t i);
    std::vector<L> with_cables(std::size_t i, const std::vector<L>& below);
    bool may_have(const RunNode& node, int cable, int thickest_below) const;
    void put(std::size_t i, int cable, const L& below, double amps_at_high);
    void connect(std::size_t point, std::size_t i, std::vector<L>&& labels);
    void join_all(std::size_t i, const std::vector<L>& here, const std::vector<L>& labels);
    bool hopeless(std::size_t i, double cost, double low, double weak_low, int thickness) const;
    bool may_join(std::size_t i, const L& a, const L& b) const;
    double rest_when_joined(std::size_t i, double low, int thickness) const;
    std::vector<L> sifted(const std::vector<L>& labels);

    const SizeProblem& problem_;
    const RunProblem& run_;
    const RunSearch& search_;
    LabelFrame frame_;
    Supplied supplied_; ///< the case of `frame_`'s floor and top
    std::vector<int> candidates_;
    RunLabels& found_;
    Effort& effort_;
    std::vector<L> grown_;               ///< at one point, before it is sifted
    std::vector<std::vector<L>> points_; ///< labels at each node's point; last: the head
    std::vector<bool> used_ = std::vector<bool>(run_.nodes.size(), false);
    bool head_used_ = false;
    std::vector<double> rest_; ///< least cost of the open lengths outside each node's subtree
    std::vector<double> most_amps_ = most_amps(run_); ///< through each length
    std::vector<double> top_volts_;                   ///< highest volts at each node's feed point
    std::vector<double> weak_top_volts_;              ///< the same on a weak supply
};

template<class L>
void Tree<L>::bound_rest() {
    double cheapest = std::numeric_limits<double>::infinity();
    for (const int c : candidates_)
        cheapest = std::min(cheapest, cable_at(problem_, c).price);
    std::vector<double> below(run_.nodes.size(), 0);
    double total = 0;
    for (std::size_t i = run_.nodes.size(); i-- > 0;) {
        const RunNode& node = run_.nodes[i];
        const double own = node.typed < 0 ? cheapest * node.metres : 0;
        total += own;
        below[i] += own;
        if (node.parent >= 0) below[at(node.parent)] += below[i];
    }
    rest_.resize(run_.nodes.size());
    for (std::size_t i = 0; i < rest_.size(); ++i)
        rest_[i] = total - below[i];
}

/// Sweeps with every open length at its least resistance. The currents start from the highest volts there can
/// be, so that the volts fall onto the solution from above: each sweep is a bound, the last one the tightest.
template<class L>
std::vector<double> Tree<L>::bound_volts(Supplied supplied, double floor, double top) const {
    constexpr int sweeps = 12;
    const std::size_t count = run_.nodes.size();
    std::vector<double> feeds(count, top);
    double least_ohms = std::numeric_limits<double>::infinity();
    for (const int c : candidates_)
        least_ohms = std::min(least_ohms, cable_at(problem_, c).ohms_in(supplied));
    for (const RunNode& node : run_.nodes)
        if (node.lamp && rises(*node.lamp)) return feeds; // less resistance may lower the volts elsewhere
    std::vector<double> volts(count, top);
    std::vector<double> amps(count);
    for (int sweep = 0; sweep < sweeps; ++sweep) {
        std::fill(amps.begin(), amps.end(), 0.0);
        for (std::size_t i = count; i-- > 0;) {
            const RunNode& node = run_.nodes[i];
            if (node.lamp) amps[i] += amps_at_splice(*node.lamp_in(supplied), volts[i]).value_or(0);
            if (node.parent >= 0) amps[at(node.parent)] += amps[i];
        }
        for (std::size_t i = 0; i < count; ++i) {
            const RunNode& node = run_.nodes[i];
            const double per_metre =
                node.typed < 0 ? least_ohms : cable_at(problem_, node.typed).ohms_in(supplied);
            feeds[i] = node.parent < 0 ? top : volts[at(node.parent)];
            volts[i] = std::max(feeds[i] - per_metre * node.metres * amps[i], floor / 2);
        }
    }
    return feeds;
}

template<class L>
bool Tree<L>::hopeless(std::size_t i, double cost, double low, double weak_low, int thickness) const {
    if (low > top_volts_[i] + 1e-8) return true;
    if (frame_.weak() && weak_low > weak_top_volts_[i] + 1e-8) return true;
    if (cost + rest_[i] > frame_.cost_limit) return true;
    if (search_.prices == nullptr) return false;
    const double deciding = frame_.weak() ? weak_low : low;
    return cost + search_.prices->rest(i, deciding, thickness) > frame_.cost_limit;
}

template<class L>
double Tree<L>::rest_when_joined(std::size_t i, double low, int thickness) const {
    return search_.prices == nullptr ? 0 : search_.prices->rest_when_joined(i, low, thickness);
}

template<class L>
bool Tree<L>::may_join(std::size_t i, const L& a, const L& b) const {
    if (asks_no_more(b, a)) return true;
    const int thickness = std::max(a.thickness, b.thickness);
    const double deciding = std::max(deciding_low(a, frame_), deciding_low(b, frame_));
    return a.cost + b.cost + rest_when_joined(i, deciding, thickness) <= frame_.cost_limit;
}

/// Leaves the labels worth keeping and writes down where they came from. A point that took a wider tolerance
/// to stay within the cap warns the next one, which starts near it.
template<class L>
std::vector<L> Tree<L>::sifted(const std::vector<L>& labels) {
    constexpr std::size_t comparisons_per_step = 16;
    std::vector<L> kept;
    const Sifting sifting = keep_undominated(labels, frame_, kept);
    effort_.spend(sifting.comparisons / comparisons_per_step);
    if (sifting.tolerance > frame_.tolerance)
        frame_.tolerance = std::max(frame_.tolerance, sifting.tolerance / 4);
    for (L& label : kept) {
        label.origin = static_cast<int>(found_.origins.size());
        found_.origins.push_back(label.made);
    }
    return kept;
}

/// Joins what has been found at a point with what has been found behind length i, which hangs there too.
template<class L>
void Tree<L>::connect(std::size_t point, std::size_t i, std::vector<L>&& labels) {
    std::vector<L>& here = points_[point];
    const bool fresh = point < used_.size() ? !used_[point] : !head_used_;
    if (point < used_.size())
        used_[point] = true;
    else
        head_used_ = true;
    if (fresh) {
        here = std::move(labels);
        return;
    }
    join_all(i, here, labels);
    here = sifted(grown_);
}

/// Both lists ascend in cost: what is too dear with one label of the longer list is too dear with all that
/// follow. Where one of a pair asks no more than the other, the other's pairs with dearer ones are
/// superfluous.
template<class L>
void Tree<L>::join_all(std::size_t i, const std::vector<L>& here, const std::vector<L>& labels) {
    grown_.clear();
    const bool swapped = here.size() < labels.size();
    const auto few = branches_of(swapped ? here : labels, frame_);
    const auto many = branches_of(swapped ? labels : here, frame_);
    std::vector<char> settled(many.size(), 0);
    L both;
    for (const auto& one : few) {
        if (effort_.spent()) {
            found_.complete = false;
            return;
        }
        std::size_t looked_at = 1;
        const L& a = label_of(one);
        const double alone = a.cost + rest_when_joined(i, deciding_low(a, frame_), a.thickness);
        for (std::size_t k = 0; k < many.size(); ++k) {
            const L& b = label_of(many[k]);
            if (alone + b.cost > frame_.cost_limit) break;
            ++looked_at;
            if (!settled[k] && may_join(i, a, b) && join(one, many[k], frame_, both)) {
                both.made = {a.origin, b.origin, -1, -1};
                grown_.push_back(both);
            }
            if (asks_no_more(b, a)) break;
            if (asks_no_more(a, b)) settled[k] = 1;
        }
        effort_.spend(looked_at);
    }
}

/// Puts cable c in front of a label, unless what comes of it is hopeless; a look at the lowest volts often
/// tells beforehand.
template<class L>
void Tree<L>::put(std::size_t i, int c, const L& below, double amps_at_high) {
    const RunNode& node = run_.nodes[i];
    const Cable& cable = cable_at(problem_, c);
    const double ohms = cable.ohms_in(supplied_) * node.metres;
    const double weak_ohms = frame_.weak() ? cable.weak_ohms_per_metre * node.metres : 0;
    const double cost = node.typed < 0 ? below.cost + cable.price * node.metres : below.cost;
    const double low = low_in_front(below, ohms);
    const double weak_low = frame_.weak() ? weak_low_in_front(below, weak_ohms) : 0;
    const bool ordered = node.typed < 0 && search_.per_length && !search_.any_order;
    const int thickness = ordered ? cable.thickness : 0;
    if (hopeless(i, cost, low, weak_low, thickness)) return;
    L label = below;
    if (!put_cable_in_front(label, {ohms, weak_ohms, cable.ampacity, amps_at_high}, frame_)) return;
    if (label.low > low && hopeless(i, cost, label.low, weak_low, thickness)) return;
    label.cost = cost;
    label.thickness = static_cast<decltype(label.thickness)>(thickness);
    if (node.typed < 0) count_metres(label, cable, node.metres);
    label.made = {below.origin, -1, static_cast<int>(i), c};
    grown_.push_back(label);
}

/// A chosen cable is no thinner than what follows, and the length can be cut from one spool.
template<class L>
bool Tree<L>::may_have(const RunNode& node, int cable, int thickest_below) const {
    const Cable& type = cable_at(problem_, cable);
    return node.typed >= 0 || (type.thickness >= thickest_below && type.holds(node.metres));
}

template<class L>
std::vector<L> Tree<L>::with_cables(std::size_t i, const std::vector<L>& below) {
    const RunNode& node = run_.nodes[i];
    grown_.clear();
    std::vector<double> high;
    for (const L& label : below)
        high.push_back(amps_at_high(label, most_amps_[i], frame_));
    const std::vector<int> typed{node.typed};
    for (const int c : node.typed >= 0 ? typed : candidates_) // one by one: each gives an ascending list
        for (std::size_t k = 0; k < below.size(); ++k)
            if (may_have(node, c, below[k].thickness)) put(i, c, below[k], high[k]);
    effort_.spend(grown_.size() + below.size());
    return sifted(grown_);
}

/// Everything below node i is joined at its point: adds its lamp, puts its cable in front and hands the
/// result to the point that feeds it.
template<class L>
bool Tree<L>::finish(std::size_t i) {
    const RunNode& node = run_.nodes[i];
    std::vector<L> here = std::move(points_[i]);
    points_[i].clear();
    if (!used_[i]) start_idle(here.emplace_back(), frame_);
    if (node.lamp)
        std::erase_if(here, [&](L& label) { return !add_lamp(label, *node.lamp_in(supplied_), frame_); });
    if (node.lamp && frame_.weak())
        std::erase_if(here, [&](L& label) { return !add_weak_lamp(label, *node.weak_lamp, frame_); });
    std::vector<L> above = with_cables(i, here);
    if (above.empty()) return false;
    const std::size_t point = node.parent < 0 ? run_.nodes.size() : at(node.parent);
    connect(point, i, std::move(above));
    return !points_[point].empty();
}

/// Every lamp's amperes at the top, of those whose current rises with the volts.
double rising_amps(const RunProblem& run, double top) {
    double amps = 0;
    for (const RunNode& node : run.nodes)
        if (node.lamp && rises(*node.lamp)) amps += amps_at_lamp(*node.lamp, top);
    return amps;
}

} // namespace

std::vector<int> RunLabels::cables_of(const RunProblem& run, const Label& label) const {
    std::vector<int> cables;
    for (const RunNode& node : run.nodes)
        cables.push_back(node.typed);
    std::vector<int> open{label.origin};
    while (!open.empty()) {
        const int index = open.back();
        open.pop_back();
        if (index < 0) continue;
        const Origin& origin = origins[at(index)];
        if (origin.node >= 0) cables[at(origin.node)] = origin.cable;
        open.push_back(origin.first);
        open.push_back(origin.second);
    }
    return cables;
}

void frame_run(const SizeProblem& problem, const RunProblem& run, RunSearch& search) {
    LabelFrame& frame = search.frame;
    frame.top = 0;
    frame.weak_top = 0;
    for (const Supply& supply : search.supplies) {
        frame.top = std::max(frame.top, supply.volts);
        frame.weak_top = std::max(frame.weak_top, supply.weak_volts);
    }
    frame.weak_floor = frame.weak_top / 2;
    frame.floor = frame.top / 2;
    frame.two_sided = false;
    bool first = true;
    for (const RunNode& node : run.nodes) {
        if (!node.lamp) continue;
        const double low = splice_volts(*node.lamp, node.lamp->low);
        frame.floor = first ? low : std::min(frame.floor, low);
        if (frame.weak()) {
            const double weak_low = splice_volts(*node.weak_lamp, node.weak_lamp->low);
            frame.weak_floor = first ? weak_low : std::min(frame.weak_floor, weak_low);
        }
        first = false;
        if (splice_volts(*node.lamp, node.lamp->high) < frame.top) frame.two_sided = true;
    }
    frame.floor = std::max(frame.floor, frame.top / 100);
    frame.weak_floor = std::max(frame.weak_floor, frame.weak_top / 100);
    double least_limit = std::numeric_limits<double>::infinity();
    for (const Cable& cable : problem.cables)
        least_limit = std::min(least_limit, cable.ampacity);
    for (const Supply& supply : search.supplies)
        least_limit = std::min(least_limit, supply.amps);
    if (rising_amps(run, frame.top) > least_limit) frame.two_sided = true;
}

RunLabels search_run(const SizeProblem& problem, const RunProblem& run, const RunSearch& search,
                     Effort& effort) {
    RunLabels found;
    const auto look_with = [&](const std::vector<int>& candidates) {
        if (draws_steadily(run, search.frame))
            Tree<SteadyLabel>(problem, run, search, steady_frame(search.frame), candidates, found, effort)
                .search();
        else
            Tree<Label>(problem, run, search, search.frame, candidates, found, effort).search();
    };
    if (search.per_length || !run.has_open()) {
        look_with(problem.candidates);
        return found;
    }
    for (const int candidate : problem.candidates)
        look_with({candidate});
    std::stable_sort(found.labels.begin(), found.labels.end(),
                     [](const Label& a, const Label& b) { return a.cost < b.cost; });
    return found;
}

double least_cost(const SizeProblem& problem, const RunProblem& run) {
    double cheapest = std::numeric_limits<double>::infinity();
    for (const int c : problem.candidates)
        cheapest = std::min(cheapest, problem.cables[static_cast<std::size_t>(c)].price);
    const double metres = run.open_metres();
    return metres > 0 ? cheapest * metres : 0;
}

} // namespace rillwatt::search
