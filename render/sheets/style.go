package sheets

// style is the one style sheet: black rules on white as from an office printer,
// and the same the other way round where the reader asks for dark.
const style = `:root { --ink: #111; --soft: #555; --rule: #999; --hair: #d4d4d4; --paper: #fff; --band: #f0f0f0; }
@media (prefers-color-scheme: dark) {
  :root { --ink: #e8e8e8; --soft: #aaa; --rule: #777; --hair: #3a3a3a; --paper: #161616; --band: #232323; }
}
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 90rem; padding: 1rem 1.5rem 3rem; background: var(--paper); color: var(--ink);
  font: 0.875rem/1.35 Arial, Helvetica, "Liberation Sans", sans-serif; }
nav ul { list-style: none; margin: 0 0 1rem; padding: 0 0 0.5rem; display: flex; flex-wrap: wrap; gap: 0.25rem 1.25rem; border-bottom: 1px solid var(--rule); }
a { color: inherit; }
.sheet { margin: 0 0 3.5rem; }
.sheet > header { border-top: 3px solid var(--ink); border-bottom: 1px solid var(--ink); padding: 0.4rem 0 0.5rem; }
h1 { font-size: 1.5rem; line-height: 1.15; margin: 0; }
h2 { font-size: 1rem; margin: 1.6rem 0 0.35rem; }
.take { font-weight: bold; margin: 0.1rem 0 0; }
.line { margin: 0; color: var(--soft); }
table { border-collapse: collapse; max-width: 100%; min-width: 30rem; font-variant-numeric: tabular-nums; }
table.wide { width: 100%; }
th, td { text-align: left; vertical-align: top; padding: 0.2rem 1.1rem 0.2rem 0; }
.wide th, .wide td { padding-right: 0.6rem; }
th:last-child, td:last-child { padding-right: 0; }
thead th { vertical-align: bottom; border-bottom: 1px solid var(--ink); font-size: 0.8125rem; }
tbody td { border-bottom: 1px solid var(--hair); overflow-wrap: break-word; }
.n { text-align: right; white-space: nowrap; }
@media print, screen and (min-width: 60.01rem) { .n + :not(.n) { padding-left: 0.6rem; } }
.t { white-space: nowrap; }
thead .n { white-space: normal; }
.group th { padding-top: 0.7rem; border-bottom: 1px solid var(--rule); }
.wide { font-size: 0.8125rem; }
.wide thead th { font-size: 0.75rem; }
.note, .empty { margin: 0.4rem 0 0; color: var(--soft); max-width: 60rem; }
.empty { color: var(--ink); }
.sheet > footer { margin-top: 1.8rem; border-top: 1px solid var(--ink); max-width: 60rem; }
.sheet > footer ul { margin: 0.3rem 0 0; padding-left: 1.1rem; }
.safety { font-weight: bold; margin: 0.6rem 0 0; }
svg { display: block; width: 100%; max-width: 60rem; height: auto; margin: 0.3rem 0 0.6rem; }
svg text { font: 11px Arial, Helvetica, "Liberation Sans", sans-serif; fill: var(--ink); }
svg .axis { stroke: var(--rule); fill: none; }
svg .limit { stroke: var(--ink); stroke-dasharray: 6 4; fill: none; }
svg .curve { stroke: var(--ink); stroke-width: 2; fill: none; }
@media screen and (max-width: 60rem) {
  body { padding: 0.75rem; }
  thead { position: absolute; clip-path: inset(50%); width: 1px; height: 1px; overflow: hidden; }
  table, table.wide, tbody, tr, td, .group th { display: block; width: auto; min-width: 0; }
  tbody tr { border-bottom: 1px solid var(--rule); padding: 0.4rem 0; }
  tbody td, tbody td.n { border: 0; padding: 0.05rem 0 0.05rem 8rem; text-align: left; white-space: normal; }
  tbody td:empty { display: none; }
  tbody td::before { content: attr(data-c); float: left; width: 7.5rem; margin-left: -8rem; color: var(--soft); }
  tbody td:first-child { padding: 0; font-weight: bold; }
  tbody td:first-child::before { display: none; }
  tbody td.t:first-child, tbody td.t:first-child + td.f { display: inline-block; }
  tbody td.t:first-child + td.f { padding: 0 0 0 1rem; color: var(--soft); }
  tbody td.t:first-child + td.f::before { float: none; width: auto; margin: 0; content: attr(data-c) " "; }
  .facts td + td { padding: 0; }
  .facts td + td::before { display: none; }
  tbody tr.group { border: 0; padding: 0; background: var(--band); }
  .group th { padding: 0.3rem 0.4rem; border: 0; }
}
@page { size: A4 landscape; margin: 11mm 11mm 13mm; @bottom-right { content: counter(page) " / " counter(pages); font: 8pt Arial, Helvetica, sans-serif; } }
@media print {
  :root { --ink: #000; --soft: #333; --rule: #666; --hair: #bbb; --paper: #fff; --band: #eee; }
  body { max-width: none; padding: 0; font-size: 8.5pt; }
  nav { display: none; }
  .sheet { margin: 0; break-before: page; }
  .sheet:first-child { break-before: auto; }
  h1 { font-size: 15pt; }
  h2 { font-size: 10pt; margin: 4mm 0 1mm; break-after: avoid; }
  thead th { font-size: 7.5pt; }
  .wide { font-size: 7.5pt; }
  .wide thead th { font-size: 7pt; }
  table { min-width: 0; }
  th, td { padding: 0.4mm 3.5mm 0.4mm 0; }
  .wide th, .wide td { padding-right: 1.8mm; }
  .n + :not(.n) { padding-left: 1.5mm; }
  thead { display: table-header-group; }
  tr, .note { break-inside: avoid; }
  .group { break-after: avoid; }
  .group th { padding-top: 1.6mm; }
  .sheet > footer { break-inside: avoid; }
}
`
