/** The house's ground and state colours, by day and by night, without its font: the page is one file. */
export const offlineStyle = `
:root{color-scheme:light dark;--ground:light-dark(#f2f4f3,#121516);--surface:light-dark(#fcfdfc,#191d1e);--ink:light-dark(#171b1c,#e4e9e8);--ink2:light-dark(#50595a,#a3adad);--rule:light-dark(#757f7f,#77817f);--good:light-dark(#17623e,#74c99a);--goodwash:light-dark(#e0efe6,#12291d);--look:light-dark(#6b4c00,#e2b95f);--lookwash:light-dark(#f7edcf,#2e2509);--bad:light-dark(#a01640,#ff8fa5);--badwash:light-dark(#f9e3e9,#38131e)}
*{box-sizing:border-box}
body{margin:0;background:var(--ground);color:var(--ink);font:400 1rem/1.45 system-ui,sans-serif;overflow-wrap:break-word}
main{max-width:44rem;margin:0 auto;padding:1.5rem 1rem 3rem;display:grid;gap:1rem}
h1{font-size:1.6rem;line-height:1.2;margin:0}
h2{font-size:1.5rem;line-height:1.2;margin:0}
p,dl,dd,ul{margin:0}
.quiet,dt,li p{color:var(--ink2)}
label{font-weight:600;display:block}
input{font:inherit;color:inherit;background:var(--surface);border:1px solid var(--rule);border-radius:3px;padding:.4rem .5rem;width:100%;min-height:2.2rem}
:focus-visible{outline:2px solid currentColor;outline-offset:2px}
button{font:inherit;font-weight:600;color:inherit;background:var(--surface);border:1px solid var(--rule);border-radius:3px;padding:.4rem .9rem;min-height:2.2rem;cursor:pointer}
#answer,.numbers,.numbers div{display:grid;gap:1rem;justify-items:start}
#answer>*,.numbers div>*{width:100%}
#drop{display:grid;gap:.75rem;padding:1.5rem;border:1px dashed var(--rule);background:var(--surface)}
.verdict{--state:var(--look);--wash:var(--lookwash);display:grid;gap:.75rem;padding:1rem 1.25rem 1.25rem;border-left:4px solid var(--state);background:var(--wash)}
.verdict[data-kind=good]{--state:var(--good);--wash:var(--goodwash)}
.verdict[data-kind=bad]{--state:var(--bad);--wash:var(--badwash)}
.verdict h2{color:var(--state)}
dl{display:grid;grid-template-columns:minmax(7rem,max-content) minmax(0,1fr);gap:.2rem 1rem}
ul{list-style:none;padding:1rem 0 0;border-top:1px solid var(--rule);display:grid;gap:.75rem}
li{display:grid;grid-template-columns:8.5rem minmax(0,1fr);gap:0 1rem}
li[data-state=passed] .state{color:var(--good)}
li[data-state=failed] .state{color:var(--bad);font-weight:600}
li[data-state=unknown] .state{color:var(--look)}
code{font:.85rem/1.4 ui-monospace,monospace;overflow-wrap:anywhere}
.problem{color:var(--bad);font-weight:600}
@media (max-width:34rem){li{grid-template-columns:minmax(0,1fr)}}
@media print{body{background:#fff}}
`;
