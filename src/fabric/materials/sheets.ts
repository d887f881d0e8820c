/** Membranes, coverings, glass, metals and air. */
import { type AirMaterial, aliasesOf, type Material, type SolidRow, sheets, solids } from './value.ts';

const membranes = [
  ['polyethylene sheet, 0.15 mm', 'vapour barrier, poly, PE film, DPM', 50],
  ['polyethylene sheet, 0.25 mm', 'vapour barrier, PE film, DPM, damp proof membrane', 100],
  ['aluminium foil', 'foil, tin foil, foil vapour barrier', 1500],
] as const;

const membranesOfTrade = [
  ['vapour check', 'vapour control layer, VCL, vapour retarder', 5],
  ['vapour check, kraft paper', 'building paper, kraft', 2],
  ['breather membrane', 'roofing underlay, breathable felt, wind barrier, house wrap', 0.05],
  ['bitumen underlay', 'sarking felt, untearable felt, 1F', 50],
] as const;

const coverings: readonly SolidRow[] = [
  [
    'bitumen felt',
    'roofing felt, torch-on felt, flat roof felt',
    0.23,
    1100,
    1000,
    50_000,
    50_000,
    { conductivity: 'isoRead', density: 'isoRead' },
  ],
  [
    'asphalt',
    'mastic asphalt',
    0.7,
    2100,
    1000,
    50_000,
    50_000,
    { conductivity: 'isoRead', density: 'isoRead' },
  ],
  ['rubber sheet', 'EPDM, single ply', 0.17, 1200, 1400, 10_000, 10_000],
  ['PVC sheet', 'vinyl, single ply', 0.17, 1390, 900, 50_000, 50_000],
  ['linoleum', 'lino', 0.17, 1200, 1400, 1000, 800],
  ['carpet', 'textile floor', 0.06, 200, 1300, 5, 5],
];

const glassAndMetals: readonly SolidRow[] = [
  [
    'glass',
    'soda-lime glass, pane, float glass',
    1.0,
    2500,
    750,
    1e6,
    1e6,
    { conductivity: 'isoTimber', density: 'isoTimber', specificHeat: 'isoTimber' },
  ],
  ['steel', 'mild steel, steel beam', 50, 7800, 450, 1e6, 1e6],
  ['stainless steel', 'wall tie, fixing', 17, 7900, 460, 1e6, 1e6],
  ['aluminium', 'aluminium sheet', 160, 2800, 880, 1e6, 1e6],
  ['copper', 'copper sheet', 380, 8900, 380, 1e6, 1e6],
  ['zinc', 'zinc sheet', 110, 7200, 380, 1e6, 1e6],
  ['lead', 'lead sheet, flashing', 35, 11_300, 130, 1e6, 1e6],
];

const air: readonly AirMaterial[] = [
  cavity('still air space', 'air gap, cavity, service void, unventilated', 'unventilated'),
  cavity('slightly ventilated air space', 'weep holes, brick cavity', 'slightly'),
  cavity('ventilated air space', 'batten space, ventilated cavity, rainscreen cavity', 'ventilated'),
];

export const materialsSheets: readonly Material[] = [
  ...sheets('sheets and membranes', 'iso', membranes),
  ...sheets('sheets and membranes', 'practice', membranesOfTrade),
  ...solids('sheets and membranes', 'iso', coverings),
  ...solids('glass and metals', 'iso', glassAndMetals),
  ...air,
];

function cavity(name: string, aliases: string, ventilation: AirMaterial['ventilation']): AirMaterial {
  return { kind: 'air', name, group: 'air', aliases: aliasesOf(aliases), ventilation };
}
