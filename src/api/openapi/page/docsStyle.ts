// The style sheet of /docs: one column of plain print, readable on a phone and in black and white. Its hash is the only style the page may
// have.

export const DOCS_STYLE = `
:root { --ink: #1b1b1b; --pale: #5a5a5a; --line: #b9b4aa; --faint: #f3f1ec; --paper: #fffefb; }
* { box-sizing: border-box; }
html { scroll-padding-top: 1rem; -webkit-text-size-adjust: 100%; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 1rem/1.5 Charter, "Bitstream Charter", Cambria, Georgia, serif; }
main, header, nav, footer { max-width: 46rem; margin: 0 auto; padding: 0 1.1rem; }
header { padding-top: 2rem; }
h1, h2, h3 { line-height: 1.2; font-weight: 600; text-wrap: balance; }
h1 { font-size: 2rem; margin: 0 0 .3rem; }
h2 { font-size: 1.5rem; margin: 0; }
h3 { font-size: 1.15rem; margin: 0 0 .2rem; }
p { margin: .5rem 0; }
a { color: inherit; text-decoration-thickness: 1px; text-underline-offset: .18em; }
a:focus-visible, pre:focus-visible { outline: 3px solid var(--ink); outline-offset: 2px; }
code, pre { font: .86em/1.45 ui-monospace, "DejaVu Sans Mono", Menlo, Consolas, monospace; overflow-wrap: anywhere; }
.small { font-size: .9rem; color: var(--pale); }
nav ol { list-style: none; margin: 0; padding: 0; }
nav li { padding: .5rem 0; border-bottom: 1px solid var(--line); }
nav li li { border: 0; padding: .15rem 0 .15rem 1rem; }
nav li code { color: var(--pale); }
nav .at { display: block; padding-left: 0; }
nav .kinds { margin: .15rem 0 0 1rem; font-size: .94rem; }
.part { display: flex; justify-content: space-between; align-items: baseline; gap: 1rem; }
.part, nav h2 { margin: 3.5rem 0 .4rem; padding-top: .5rem; border-top: 3px double var(--ink); }
.part a { font-size: .9rem; color: var(--pale); }
section { margin: 2.2rem 0 0; padding-top: 1.1rem; border-top: 1px solid var(--line); }
.part + p + section, .part + section { border-top: 0; margin-top: .8rem; padding-top: 0; }
.request { margin: .1rem 0 .7rem; }
.request code { font-size: .95rem; font-weight: 600; }
table { width: 100%; border-collapse: collapse; margin: 1rem 0; font-size: .94rem; }
caption { text-align: left; font-weight: 600; padding: .2rem 0; }
th, td { text-align: left; vertical-align: top; padding: .35rem .7rem .35rem 0; border-bottom: 1px solid var(--line); font-weight: 400; }
thead th { font-size: .82rem; color: var(--pale); padding-bottom: .15rem; }
td:last-child { padding-right: 0; }
tbody th[scope=row] { width: 34%; }
td.kind { width: 26%; color: var(--pale); }
td p { margin: 0; }
.answers th[scope=row] { width: 3.6rem; font-weight: 600; }
.when th { padding-top: 1rem; border-bottom: 1px solid var(--ink); }
.needed { display: block; font-size: .8rem; font-style: italic; }
figure { margin: 1rem 0; }
figcaption { font-size: .9rem; }
pre { margin: .3rem 0 0; padding: .7rem .9rem; background: var(--faint); border-left: 3px solid var(--ink); overflow: auto; max-height: 24rem; overflow-wrap: normal; }
footer { padding-top: 2rem; padding-bottom: 3rem; }
@media (min-width: 64rem) {
  nav > ol { columns: 2; column-gap: 2.4rem; }
  nav > ol > li { break-inside: avoid; }
}
@media (max-width: 36rem) {
  thead { position: absolute; clip-path: inset(50%); width: 1px; height: 1px; overflow: hidden; }
  table, tbody, tr, caption { display: block; }
  tr { padding: .5rem 0; border-bottom: 1px solid var(--line); }
  th, td, tbody th[scope=row], td.kind { display: block; width: auto; padding: 0; border: 0; }
  tbody th[scope=row] code { font-weight: 600; }
  .needed { display: inline; margin-left: .5rem; }
  .answers tr { display: grid; grid-template-columns: 3.2rem 1fr; }
  .answers th[scope=row] { width: auto; }
}
@media print {
  :root { --ink: #000; --pale: #000; --line: #777; --faint: #fff; --paper: #fff; }
  body { font-size: 10pt; }
  main, header, nav, footer { max-width: none; padding: 0; }
  pre { max-height: none; overflow: visible; white-space: pre-wrap; overflow-wrap: anywhere; }
  .part, nav h2 { break-before: page; }
  .part, h2, h3, caption, .request, figcaption { break-after: avoid; }
  tr { break-inside: avoid; }
  nav a { text-decoration: none; }
  .part a { display: none; }
}
`;
