#include "page_style.hpp"

#include <string>

namespace rillwatt {

namespace {

constexpr std::string_view colours = R"css(
:root {
  color-scheme: light dark;
  --paper: #fbfaf5; --sheet: #ffffff; --ink: #1b2733; --ink-soft: #50606c; --hair: #d8d4c6; --hair-strong: #a9a492;
  --water: #0d5a86; --water-wash: #e3eef4; --lamp: #8a5200; --lamp-fill: #e2a336; --lamp-wash: #fbf0d9;
  --alarm: #a1261b; --alarm-wash: #fbe9e5; --good: #2c6a45;
  --rw-paper: var(--paper); --rw-ink: var(--ink); --rw-faint: var(--ink-soft);
}
@media (prefers-color-scheme: dark) {
  :root {
    --paper: #11171d; --sheet: #f7f5ee; --ink: #ebe7dc; --ink-soft: #a9b4bc; --hair: #2e3a44; --hair-strong: #566470;
    --water: #84c4e6; --water-wash: #16293a; --lamp: #f1b955; --lamp-fill: #e2a336; --lamp-wash: #30260f;
    --alarm: #ff9384; --alarm-wash: #3a1a17; --good: #86d0a4;
  }
}
)css";

constexpr std::string_view body_rules = R"css(
* { box-sizing: border-box; }
html { scroll-padding-top: 3.5rem; -webkit-text-size-adjust: 100%; }
body {
  margin: 0; background: var(--paper); color: var(--ink);
  font: 16px/1.5 "Avenir Next", Avenir, "Segoe UI", "Noto Sans", "DejaVu Sans", system-ui, sans-serif;
}
main, header.title, footer { max-width: 62rem; margin: 0 auto; padding: 0 1rem; }
a { color: var(--water); text-underline-offset: .15em; text-decoration-thickness: 1px; }
a:focus-visible, [tabindex]:focus-visible, summary:focus-visible { outline: 3px solid var(--lamp-fill); outline-offset: 2px; }
.skip { position: absolute; left: -100vw; }
.skip:focus { left: 1rem; top: 1rem; background: var(--sheet); color: #1b2733; padding: .5rem 1rem; z-index: 9; }
.unit, .num, td.n, th.n { font-variant-numeric: tabular-nums; }
.soft { color: var(--ink-soft); }
.small { font-size: .84rem; line-height: 1.4; }
.visually-hidden { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
p { margin: .4rem 0 .8rem; max-width: 46rem; }

header.title { padding-top: 2rem; }
header.title .eyebrow { font-size: .8rem; letter-spacing: .14em; text-transform: uppercase; color: var(--water); margin: 0; }
header.title h1 { font-size: clamp(1.7rem, 5vw, 2.6rem); line-height: 1.12; margin: .2rem 0 1rem; font-weight: 600; overflow-wrap: anywhere; }
.titleblock { list-style: none; padding: 0; display: grid; grid-template-columns: repeat(auto-fit, minmax(9.5rem, 1fr)); border: 1.5px solid var(--ink); margin: 0 0 1rem; overflow: hidden; }
.titleblock li { border: 1px solid var(--hair); margin: 0 -1px -1px 0; padding: .4rem .6rem; min-width: 0; }
.titleblock .key { display: block; font-size: .7rem; letter-spacing: .08em; text-transform: uppercase; color: var(--ink-soft); }
.titleblock .value { display: block; font-variant-numeric: tabular-nums; overflow-wrap: anywhere; }

nav.contents { background: var(--paper); border-bottom: 1px solid var(--hair-strong); }
nav.contents ul { display: flex; flex-wrap: wrap; gap: .2rem 1rem; list-style: none; max-width: 62rem; margin: 0 auto; padding: .55rem 1rem; }
nav.contents a { text-decoration: none; white-space: nowrap; font-size: .88rem; }
nav.contents a:hover { text-decoration: underline; }

main { counter-reset: sheet; }
main > section { padding-top: 1.6rem; }
h2 { counter-increment: sheet; break-inside: avoid; display: flex; align-items: center; gap: .7rem; font-size: 1.25rem; font-weight: 600; margin: 0 0 .8rem; break-after: avoid; }
h2::before { content: counter(sheet); flex: none; width: 2rem; height: 2rem; border: 1.5px solid var(--water); border-radius: 50%; color: var(--water); font-size: .95rem; display: grid; place-items: center; font-variant-numeric: tabular-nums; }
h2::after { content: ""; flex: 1; border-top: 1px solid var(--hair-strong); }
h3 { font-size: 1.02rem; font-weight: 600; margin: 1.3rem 0 .4rem; break-after: avoid; overflow-wrap: anywhere; }
)css";

constexpr std::string_view block_rules = R"css(
.panels { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 17rem), 1fr)); gap: 1rem; }
.panel { border: 1px solid var(--hair-strong); border-top: 3px solid var(--water); padding: .7rem .9rem; min-width: 0; overflow-wrap: anywhere; }
.panel.lamp { border-top-color: var(--lamp-fill); }
.panel.alarm { border-top-color: var(--alarm); }
.panel h3 { margin: 0 0 .4rem; }
.panel ol, .panel ul { margin: .2rem 0; padding-left: 1.2rem; }
.panel li { margin: .25rem 0; }
.figures { list-style: none; padding: 0 1px 1px 0; display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 10rem), 1fr)); margin: 0 0 1rem; }
.figures li { border: 1px solid var(--hair); margin: 0 -1px -1px 0; padding: .5rem .7rem; }
.figures .key { display: block; font-size: .78rem; color: var(--ink-soft); }
.figures .value { display: block; font-size: 1.3rem; font-variant-numeric: tabular-nums; }
.figures small { font-size: .8rem; color: var(--ink-soft); display: block; line-height: 1.3; overflow-wrap: anywhere; }

figure { margin: 0; }
figure.drawing { background: var(--paper); border: 1px solid var(--hair-strong); padding: .4rem; overflow: auto; }
figure.drawing svg { display: block; width: 100%; height: auto; max-width: 100%; }
@media screen { /* at its own size, to be read in its frame: chains of lamps would shrink beyond reading */
  figure.drawing svg.rw-diagram { width: auto; min-width: 100%; max-width: none; }
}
figcaption { font-size: .84rem; color: var(--ink-soft); margin: .4rem 0 0; }

table { width: 100%; border-collapse: collapse; margin: .2rem 0 1rem; font-size: .94rem; }
caption { text-align: left; color: var(--ink-soft); font-size: .84rem; padding-bottom: .3rem; }
th, td { text-align: left; vertical-align: top; padding: .34rem .5rem; border-bottom: 1px solid var(--hair); overflow-wrap: break-word; }
tbody th, td a, td .free { overflow-wrap: anywhere; }
tbody th { min-width: 6.5rem; }
th:first-child, td:first-child { padding-left: 0; }
th:last-child, td:last-child { padding-right: 0; }
thead th { font-size: .78rem; font-weight: 600; color: var(--ink-soft); border-bottom: 1.5px solid var(--ink); vertical-align: bottom; }
tbody th { font-weight: 600; }
tbody tr { break-inside: avoid; }
td.n, th.n { text-align: right; }
td.n { white-space: nowrap; }
td .sub, th .sub { display: block; font-weight: 400; font-size: .8rem; line-height: 1.35; color: var(--ink-soft); white-space: normal; }
td.n .sub { overflow-wrap: normal; }
tfoot td, tfoot th { border-bottom: 0; border-top: 1.5px solid var(--ink); font-weight: 600; }
td.blank { border-bottom: 1px solid var(--ink); min-width: 3.2rem; }
td.gauge { width: 42%; min-width: 6rem; padding-top: .5rem; }
ul.plain { list-style: none; margin: 0; padding: 0; }
.bar { display: block; width: 100%; height: 1rem; overflow: visible; }
.bar .ground { fill: var(--water-wash); stroke: var(--hair-strong); stroke-width: 1; vector-effect: non-scaling-stroke; }
.bar .range { stroke: var(--water); stroke-width: 2; vector-effect: non-scaling-stroke; }
.bar .end { stroke: var(--ink-soft); stroke-width: 1.5; vector-effect: non-scaling-stroke; }
.bar .fill { fill: var(--water); }
.bar .fill.over { fill: var(--alarm); }
.bar .mark { stroke: var(--ink); stroke-width: 4; vector-effect: non-scaling-stroke; }
.bar .mark.out { stroke: var(--alarm); }
.bar .limit { stroke: var(--lamp); stroke-width: 1.5; stroke-dasharray: 2 2; vector-effect: non-scaling-stroke; }

.finding { border-left: 4px solid var(--hair-strong); padding: .1rem 0 .1rem .8rem; margin: 0 0 .9rem; break-inside: avoid; overflow-wrap: anywhere; }
.finding.error { border-color: var(--alarm); }
.finding.warning { border-color: var(--lamp-fill); }
.finding p { margin: .15rem 0; }
.word { display: inline-block; font-size: .76rem; font-weight: 700; letter-spacing: .05em; text-transform: uppercase; padding: 0 .4rem; margin-right: .35rem; border: 1px solid currentColor; }
.word.error { color: var(--alarm); } .word.warning { color: var(--lamp); } .word.note { color: var(--water); } .word.good { color: var(--good); }
.rule { font-family: ui-monospace, "DejaVu Sans Mono", monospace; font-size: .82rem; color: var(--ink-soft); }

.tags { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(100%, 18rem), 1fr)); gap: .6rem; padding: 0; list-style: none; margin: .4rem 0; }
.tag { display: grid; grid-template-columns: 1fr 1fr; border: 1px dashed var(--hair-strong); break-inside: avoid; }
.tag div { padding: .35rem .5rem; min-width: 0; overflow-wrap: anywhere; font-size: .8rem; line-height: 1.3; }
.tag div + div { border-left: 1px dashed var(--hair-strong); }
.tag b { display: block; font-size: 1.15rem; font-variant-numeric: tabular-nums; }

.caution { border: 2px solid var(--lamp-fill); background: var(--lamp-wash); padding: .6rem .9rem; margin: 1rem 0; break-inside: avoid; }
.caution ul { margin: .2rem 0; padding-left: 1.1rem; }
[data-part] { cursor: pointer; }
tr.marked > *, .marked:is(li, div) { background: var(--lamp-wash); box-shadow: inset 0 0 0 100vmax color-mix(in srgb, var(--lamp-fill) 12%, transparent); }
tr.marked > :first-child { box-shadow: -4px 0 0 var(--lamp-fill); }
svg .marked { filter: drop-shadow(0 0 1.5px #c97a00) drop-shadow(0 0 4px #f0a000); }
footer { padding-top: 2rem; padding-bottom: 3rem; }
)css";

constexpr std::string_view paper_rules = R"css(
@media (max-width: 21rem) {
  #light thead th, #light td .word { overflow-wrap: anywhere; }
}
@media (min-width: 34.01rem), print { td.volts .sub { white-space: nowrap; } }
@media (min-width: 60rem) and (min-height: 30rem) and (hover: hover) {
  nav.contents { position: sticky; top: 0; z-index: 5; }
}
@media (max-width: 34rem) {
  body { font-size: 15px; }
  table { font-size: .86rem; }
  th, td { padding-left: .3rem; padding-right: .3rem; }
  td.gauge { min-width: 6rem; width: 40%; }
  td .sub, th .sub { font-size: .76rem; }
  #light th, #light td { font-size: .74rem; padding-left: .15rem; padding-right: .15rem; white-space: normal; }
  #light tbody th { min-width: 4rem; }
  #light .word { border: 0; padding: 0; margin: 0; }
  #light thead th { font-size: .68rem; }
  #staking thead th { overflow-wrap: anywhere; }
  .word { font-size: .66rem; padding: 0 .25rem; letter-spacing: 0; }
  figure.drawing svg { min-width: 34rem; }
}
@page { margin: 13mm 12mm; }
@media print {
  :root {
    color-scheme: light;
    --paper: #ffffff; --sheet: #ffffff; --ink: #000000; --ink-soft: #3d3d3d; --hair: #c9c9c9; --hair-strong: #8a8a8a;
    --water: #0d4a6e; --water-wash: #e6eef3; --lamp: #6e4200; --lamp-fill: #c98a1e; --lamp-wash: #ffffff;
    --alarm: #8c1c13; --alarm-wash: #ffffff; --good: #1f5234;
  }
  * { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  body { font-size: 10pt; line-height: 1.38; }
  nav.contents, .skip, .screen { display: none !important; }
  header.title { padding-top: 0; }
  main, header.title, footer { max-width: none; padding-left: 0; padding-right: 0; }
  main > section { padding-top: .9rem; }
  section.sheet { break-before: page; }
  figure.drawing { padding: 0; overflow: visible; break-inside: avoid; }
  figure.drawing svg { max-height: 235mm; min-width: 0; }
  table { font-size: 9pt; }
  thead { display: table-header-group; }
  a { color: inherit; text-decoration: none; }
  td.blank { min-width: 18mm; height: 8mm; }
  .tags { grid-template-columns: 1fr 1fr; }
}
)css";

// Kept byte for byte: the page's content security policy holds its hash.
constexpr std::string_view script = R"js(
(() => {
  const shown = new Map();
  for (const element of document.querySelectorAll('[data-part]')) {
    const name = element.dataset.part;
    if (!shown.has(name)) shown.set(name, []);
    shown.get(name).push(element);
  }
  const status = document.getElementById('marked-part');
  let marked = null;
  let kept = null;
  const mark = name => {
    if (name === marked) return;
    for (const element of shown.get(marked) ?? []) element.classList.remove('marked');
    for (const element of shown.get(name) ?? []) element.classList.add('marked');
    marked = name;
  };
  const partAt = event => event.target.closest?.('[data-part]')?.dataset.part ?? null;
  const keep = name => {
    kept = name === kept ? null : name;
    mark(kept);
    if (status) status.textContent = kept === null ? '' : kept + ' is marked in plan, diagram and tables';
  };
  document.addEventListener('pointerover', event => mark(partAt(event) ?? kept));
  document.addEventListener('focusin', event => mark(partAt(event) ?? kept));
  document.addEventListener('click', event => { if (partAt(event) !== null || kept !== null) keep(partAt(event)); });
  document.addEventListener('keydown', event => {
    if (event.key === 'Escape') keep(null);
    if (event.key === 'Enter' && partAt(event) !== null && event.target.tagName !== 'A') keep(partAt(event));
  });
})();
)js";

std::string joined_style() {
    return std::string(colours) + std::string(body_rules) + std::string(block_rules) +
           std::string(paper_rules);
}

} // namespace

std::string_view page_style() {
    static const std::string style = joined_style();
    return style;
}

std::string_view page_script() { return script; }

std::string_view page_script_hash() { return "yyPgTClUOI/hgmYthmu5f0qCaPm+YtUba5QAQf/Hhv4="; }

} // namespace rillwatt
