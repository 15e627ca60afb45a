/** Black on white with words for every colour, so that it prints as it reads. */
export const STYLE = `
:root { color-scheme: light; }
body { font: 16px/1.5 system-ui, sans-serif; color: #1a1a1a; background: #fff; max-width: 50rem; margin: 2rem auto; padding: 0 1rem; }
h1 { font-size: 1.4rem; line-height: 1.3; border-left: .4rem solid #555; padding: .2rem 0 .2rem .8rem; }
h2 { font-size: 1.1rem; margin: 2rem 0 .5rem; break-after: avoid; }
p { margin: .5rem 0; }
p.good, p.bad { font-weight: bold; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums; }
th, td { text-align: left; vertical-align: top; padding: .3rem .6rem; border-bottom: 1px solid #ccc; }
thead th { border-bottom: 2px solid #555; }
tbody th { font-weight: normal; }
th:first-child { padding-left: 0; }
.right { text-align: right; }
tr, li { break-inside: avoid; }
ul { padding-left: 1.2rem; }
li { margin: .4rem 0; }
li p { margin: 0; }
.good { color: #0a5c1d; }
.bad { color: #a30f0f; }
.care { color: #7a4b00; }
.quiet { color: #555; }
h1.good { border-color: #0a5c1d; }
h1.bad { border-color: #a30f0f; }
h1.care { border-color: #7a4b00; }
ol.letters { list-style: upper-alpha; }
figure { margin: .6rem 0; }
figcaption { font-size: .9em; color: #555; }
svg { display: block; max-width: 100%; height: auto; }
svg polyline { fill: none; stroke: #1a1a1a; stroke-width: 1; }
svg polyline.hose { stroke-width: 2.5; stroke-linejoin: round; }
svg polyline.pipe { stroke-width: 4; }
svg polyline.dashed { stroke-dasharray: 4 3; }
svg .part { fill: #fff; stroke: #1a1a1a; stroke-width: 1.5; }
svg .full { fill: #1a1a1a; stroke: #1a1a1a; }
svg text { font: 11px system-ui, sans-serif; fill: #1a1a1a; }
.together, figure { break-inside: avoid; }
.page { break-before: page; }
.blank { margin: .8rem 0; }
.field { white-space: nowrap; margin-right: 2rem; }
.line { display: inline-block; min-width: 9em; border-bottom: 1px solid #1a1a1a; }
p:has(+ ul), p:has(+ ol), p:has(+ .blank) { break-after: avoid; }
p { orphans: 3; widows: 3; }
@media screen and (max-width: 30rem) {
  body { margin: 1rem auto; padding: 0 .7rem; }
  table { font-size: .8rem; line-height: 1.35; }
  th, td { padding: .25rem .3rem; }
}
@media print {
  body { margin: 0; max-width: none; font-size: 10.5pt; line-height: 1.35; }
  .wide { overflow: visible; }
  h2 { margin-top: 1.1rem; }
  p { margin: .3rem 0; }
  li { margin: .15rem 0; }
  ul, ol { margin: .3rem 0; }
  th, td { padding: .15rem .6rem; }
}
@page { margin: 18mm; }
`;
