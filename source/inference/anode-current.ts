import type { Anode } from '../boat/anode.ts';

/**
 * What a kilogram of an anode gives in service, Ah. Zinc: MIL-A-18001K; aluminium (Al-Zn-In): DNV-RP-B401; magnesium: half of the theoretical 2200, "Corrosion Engineering:
 * Principles and Practice", ch. 13. Faraday's law allows at most 820, 2980 and 2205.
 */
const CAPACITY_AH_PER_KG: { readonly [metal in Anode['metal']]: number } = {
  zinc: 780,
  aluminium: 2000,
  magnesium: 1100,
};

/** The mean galvanic current that eats that much metal in that many days, A. */
export function meanCurrentA(metal: Anode['metal'], lostKg: number, days: number): number {
  return (lostKg * CAPACITY_AH_PER_KG[metal]) / (days * 24);
}

/**
 * Whether the metal is wrong for the water: zinc coats over in fresh water and protects nothing; magnesium is eaten fast in salt and brackish water and overprotects, which blisters paint and harms
 * aluminium and wood. Zinc in brackish water only works less. Source: makers' and trade tables (actionhub.com, anodefactory.se); brackish for magnesium from memory.
 */
export function isWrongAlloy({ metal, water }: Pick<Anode, 'metal' | 'water'>): boolean {
  return metal === 'zinc' ? water === 'fresh' : metal === 'magnesium' && water !== 'fresh';
}
