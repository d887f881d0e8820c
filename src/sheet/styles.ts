/** The one style of the sheet: graphite on white, legible from a grey printer and on a phone, no colour alone. */
import { cssString } from './html.ts';
import { short } from './shortNames.ts';

const LONGEST_FOOT = 60; // letters

/** @param name of the house, at the foot of every page */
export const styles = (name: string): string =>
  `${page(short(name, LONGEST_FOOT))}${text}${layout}${drawings}${screens}`;

const page = (name: string) => `
@page{margin:13mm 15mm 14mm;@bottom-left{content:${cssString(name)};font:8pt sans-serif;color:#3d3d3d}@bottom-right{content:"Page " counter(page) " of " counter(pages);font:8pt sans-serif;color:#3d3d3d}}`;

const text = `
*{box-sizing:border-box}
html{color-scheme:only light;background:#fff;color:#14171b;-webkit-text-size-adjust:100%;text-size-adjust:100%}
body{margin:0 auto;max-width:744px;padding:16px 32px 48px;font:16px/1.45 system-ui,-apple-system,"Segoe UI","Liberation Sans",Arial,sans-serif;font-variant-numeric:tabular-nums;overflow-wrap:anywhere}
h1{margin:0;font-size:1.6rem;line-height:1.2;font-weight:600}
.long h1{font-size:1.1rem}
h2{margin:0 0 12px;font-size:1.3rem;line-height:1.25;font-weight:600}
h3{margin:20px 0 4px;font-size:1.05rem;line-height:1.3;font-weight:600}
h4{margin:14px 0 2px;font-size:1rem;font-weight:600}
h2,h3,h4{break-after:avoid}
p,ul,ol{margin:0 0 8px;max-width:44rem}
p,li{orphans:3;widows:3}
ul,ol{padding-left:1.2em}
li{margin-bottom:3px}
.answer{font-size:1.25rem;line-height:1.4;margin:10px 0 6px}
.small{font-size:.875rem}
.lesser{color:#3d4046;fill:#3d4046}
.strong{font-weight:600}
.hash{font:.75rem/1.35 ui-monospace,"Liberation Mono",monospace}`;

const layout = `
.page{border-top:2px solid #14171b;margin-top:40px;padding-top:16px}
.page:first-of-type{border:0;margin:0;padding:0}
.table{overflow-x:auto;margin:0 0 12px}
table{border-collapse:collapse;width:100%;font-size:.875rem;overflow-wrap:break-word}
caption{text-align:left;padding:0 0 4px;color:#3d4046}
th,td{padding:3px 10px 3px 0;text-align:left;vertical-align:top;font-weight:400;border-bottom:1px solid #a5a5a5}
thead th{font-weight:600;border-bottom:1.5px solid #14171b;vertical-align:bottom}
th:last-child,td:last-child{padding-right:0}
.numeric{text-align:right}
.whole{white-space:nowrap}
.sum th,.sum td{font-weight:600;border-bottom:1.5px solid #14171b}
tbody th,caption,bdi{overflow-wrap:anywhere}
tbody th{min-width:7.5em}
tr,caption,figure,.blank,.signature,.short,.signed{break-inside:avoid}
h3+p,h4+p{break-after:avoid}
thead{display:table-header-group}
caption,thead{break-after:avoid}
tbody tr:first-child{break-before:avoid}
.blank{display:flex;gap:10px;align-items:flex-end;max-width:none;margin:6px 0}
.blank>span:first-child{flex:none}
.write{flex:1;min-width:60px;border-bottom:1px solid #14171b;height:1.9em}
td .write{display:block;min-width:72px;height:1.4em}
.photos{display:grid;grid-template-columns:1fr 1fr;gap:14px}
.photos figure{margin:0}
.photos img{display:block;width:100%;max-height:300px;object-fit:contain}
.frame{height:200px;border:1px solid #14171b}
.caption{height:2em;border-bottom:1px solid #14171b}
.signature{display:grid;grid-template-columns:2fr 2fr 1fr;gap:0 16px;margin-bottom:10px}
.signature h4{grid-column:1/-1}`;

const drawings = `
figure{margin:6px 0 10px;padding-top:4px}
svg{display:block;max-width:100%;height:auto;overflow:visible}
svg text{font-size:13px;fill:#14171b;font-variant-numeric:tabular-nums}
svg text.lesser{fill:#3d4046}
.rule-words,.band-words,.logger-room{paint-order:stroke;stroke:#fff;stroke-width:5px;stroke-linejoin:round}
.rule-fall{stroke:#666;stroke-dasharray:1 3}
.rule-drawn{stroke:#14171b;stroke-dasharray:6 3}
.rule-interval{stroke:#14171b;stroke-width:1.5}
.rule-stroke{fill:none;stroke:#14171b;stroke-width:4.5;stroke-linecap:round}
.rule-hollow{fill:#fff;stroke:#14171b;stroke-width:1.5}
.rule-notch{fill:#fff;stroke:#14171b;stroke-width:1.5}
.ruler-body{fill:#eee}
.ruler-edge{stroke:#14171b;stroke-width:1.5}
.ruler-line{stroke:#14171b}
.degree{stroke:#c4c4c4}
.band{fill:#e6e6e6;stroke:#8a8a8a}
.band-hollow{fill:#fff;stroke:#666;stroke-dasharray:4 3}
.fitted-hours{fill:#d6d6d6}
.inside,.outside,.fall,.fitted,.bracket{fill:none;stroke-linejoin:round}
.inside{stroke:#000;stroke-width:1.25}
.fall{stroke:#000;stroke-width:2.5}
.outside{stroke:#555;stroke-width:1.25;stroke-dasharray:5 3}
.fitted{stroke:#000;stroke-width:2;stroke-dasharray:10 5}
.night .inside{stroke:#6b6b6b;stroke-width:3.5}
.night .fitted{stroke-width:1.25}
.fall-end{fill:#000}
.moist .inside{stroke-linecap:round}
.bracket{stroke:#14171b}
.band-words{stroke-width:4px}
.strip{fill:#e0e0e0;stroke:#14171b;stroke-linejoin:round}
.strip-opening{fill:#fff}
.strip-neighbour{fill:#fff;stroke-dasharray:3 2}
.cold-roof{fill:none;stroke:#666}
.ground{stroke:#666;stroke-dasharray:8 3}
.leader{stroke:#666;stroke-width:.75}
.leader-end{fill:#14171b}
.logger{fill:#fff;stroke:#14171b;stroke-width:1.5}
svg text.logger-room{fill:#3d4046}
.letters{list-style:none;padding:0}`;

const screens = `
.narrow{display:none}
@media screen and (max-width:743px){.wide{display:none}.narrow{display:block}body{padding:12px 16px 40px}.photos,.signature{grid-template-columns:1fr}.table table{width:max-content;min-width:100%;max-width:44rem}th,td{max-width:16rem}}
@media print{body{max-width:none;padding:0;font-size:10pt;line-height:1.32}p,ul,ol{margin-bottom:4pt;max-width:none}li{margin-bottom:1.5pt}figure{margin:3pt 0 5pt}.answer{font-size:13pt;margin:4pt 0}.small{font-size:8.5pt}h1{font-size:16pt}h2{font-size:13pt;margin-bottom:4pt}h3{font-size:11pt}h4{font-size:10pt;margin-top:6pt}h3{margin-top:7pt}.blank{margin:2pt 0}.write{height:1.7em}.page{break-before:page;border:0;margin:0;padding:0}.page:first-of-type{break-before:auto}.page+.page+.page{break-before:auto;border-top:1.5px solid #14171b;margin-top:14pt;padding-top:6pt}.first{font-size:9.6pt;line-height:1.3}.first .answer{font-size:12.5pt;line-height:1.35}.tight{font-size:8.8pt;line-height:1.25}.long h1{font-size:9pt}.long .answer{font-size:11.5pt}.tight .answer{font-size:11pt}.tight h3{font-size:10pt}.tight figure{margin:1pt 0 2pt}.tight p,.tight ul{margin-bottom:1.5pt}.tight li{margin-bottom:0}.tight .nights .wide svg{height:100px;width:auto}.table{overflow:visible}.section .wide svg{max-height:345px;width:auto;margin:auto}table{font-size:8.5pt}.hash{font-size:7.5pt}}
`;
