/** Of the page alone: no font, picture or script from anywhere. Legible at 320 px and on A4. */
export const style = `
:root { color-scheme: light; --ink: #171b1c; --muted: #50595a; --faint: #d0d6d5; --heat: #ad3f0c; }
* { box-sizing: border-box; }
body { margin: 0; color: var(--ink); background: #fff; font: 1rem/1.5 "Source Sans 3", "Segoe UI", system-ui, sans-serif; }
main, header, footer { max-width: 60rem; margin: 0 auto; padding: 0 1rem; overflow-wrap: anywhere; }
header { padding-top: 1.5rem; border-bottom: 1px solid var(--ink); padding-bottom: .75rem; }
footer { border-top: 1px solid var(--ink); margin-top: 2rem; padding-top: .75rem; padding-bottom: 2rem; }
h1 { font-size: 1.8rem; line-height: 1.2; margin: 1.25rem 0 .25rem; }
h2 { font-size: 1.15rem; margin: 2rem 0 .5rem; border-top: 2px solid var(--heat); padding-top: .5rem; }
h3 { font-size: 1rem; margin: 1.25rem 0 .25rem; }
p { margin: .25rem 0; }
.further { color: var(--muted); }
.further::before { content: "\\2002"; }
p.further::before { content: none; }
.notice, .opinions { border-inline-start: 4px solid var(--heat); padding: .25rem 0 .25rem .75rem; margin: 1rem 0; }
dl { margin: .25rem 0; }
dl div { display: flex; flex-wrap: wrap; gap: 0 .75rem; padding: .15rem 0; }
dt { flex: 0 0 14rem; max-width: 100%; font-weight: 600; }
dd { margin: 0; flex: 1 1 14rem; }
.scrolls { overflow-x: auto; margin: .75rem 0; }
.scrolls:focus-visible, a:focus-visible { outline: 3px solid #1f5c8b; outline-offset: 2px; }
table { border-collapse: collapse; font-variant-numeric: tabular-nums; overflow-wrap: normal; }
caption { text-align: start; font-weight: 600; padding: .25rem 0; }
th, td { text-align: start; vertical-align: bottom; padding: .25rem .75rem .25rem 0; border-bottom: 1px solid var(--faint); }
thead th { border-bottom: 1px solid var(--ink); }
th small { display: block; font-weight: 400; color: var(--muted); }
tbody th { font-weight: 400; }
.number { text-align: end; white-space: nowrap; }
figure { margin: 1rem 0; }
svg { width: 100%; max-width: 44rem; height: auto; font-family: inherit; }
code { font-size: .9em; }
a { color: #1f5c8b; }
@page { size: A4; margin: 18mm; }
@media print {
  body { font-size: 9.5pt; }
  .scrolls { overflow: visible; }
  section, figure, tr { break-inside: avoid; }
  h2, h3, caption { break-after: avoid; }
}
`;
