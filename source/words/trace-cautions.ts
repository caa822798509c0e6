import type { Caution } from '../tracing/table.ts';

/** What is said before a look. Engine-room guidance and repair-safety pages where a source is known; else common practice. The maker's manual comes first. */
const CAUTIONS: { readonly [K in Caution]: string } = {
  'engine-off': 'Engine stopped, key out, start battery isolated.',
  hot: 'Hot parts and hot oil burn: let it cool first.',
  rotating: 'Shaft, belts and pulleys turn: hands, sleeves and hair well away; look, do not reach.',
  pressure: 'Never open a cap hot: it scalds.',
  seacock: 'Know where the bung is before a seacock is worked; shut for the look, open again after it.',
  'aluminium-threads': 'Aluminium threads tear: start by hand, stop when it resists.',
  fuel: 'No flame, no switches; open up and let it air.',
  'no-tasting': 'Never taste it: coolant is poison. Gloves for oil and fuel.',
  battery:
    'A spanner across a battery burns and it may burst: watch off, one terminal at a time, no spark near one on charge.',
  'in-the-water': 'Engine key out, somebody on deck; keep out of the water where shore power is near.',
};

export function cautionWords(caution: Caution): string {
  return CAUTIONS[caution];
}

/** Oil in a bilge that pumps itself dry. Rules: 40 CFR 110 (US): any sheen is to be reported; local rules elsewhere. */
export const OILY_BILGE =
  'An automatic pump puts oil and fuel overboard: catch it at its source, soak it up with pads, seal them and take them ashore; no soap on it. A sheen on the water must be reported in many waters: local rules first. Switch the pump to manual only while somebody watches, and back to automatic after.';
