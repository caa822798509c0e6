import { describe, expect, test } from 'vitest';
import { consequenceOf, itemsOf } from '../../source/boat/boat.ts';
import { readBoat } from '../../source/boat/read.ts';
import { templateBoat } from '../../source/boat/template.ts';
import { answers, aTemplateBoat } from '../helpers/template-boat.ts';

describe('a new boat from a few answers', () => {
  test.each([
    ['as answered', answers],
    ['in the tropics, with lithium', { ...answers, tropics: true, houseBank: 'lithium' as const }],
    ['alone, with small tanks', { ...answers, crew: 1, fuelTankL: 40, waterTankL: 60 }],
  ])('is a boat file without a trouble: %s', (_, given) => {
    expect(readBoat(JSON.stringify(templateBoat(given)), 'boat.json')).toMatchObject({ ok: true });
  });

  test('without a passage plans none', () => {
    const { passage: _, ...rest } = answers;
    const read = readBoat(JSON.stringify(templateBoat(rest)), 'boat.json');
    expect(read.ok && read.value.passages).toEqual([]);
    expect(read.ok && read.value.passage).toBeUndefined();
  });

  test('has items of every kind', () => {
    expect(new Set(itemsOf(aTemplateBoat()).map(({ kind }) => kind)).size).toBe(6);
  });

  test('says beside every figure where it comes from', () => {
    const boat = aTemplateBoat();
    const figured = [
      ...boat.engines,
      ...boat.fluids,
      ...boat.anodes,
      ...boat.spares,
      ...boat.services,
      ...boat.passages,
    ];
    for (const { note, name } of figured) expect(note, name).toContain('common practice, no source');
    const limited = boat.checks.filter(({ atLeast, atMost, everyDays }) => atLeast ?? atMost ?? everyDays);
    for (const { note, name } of limited) expect(note, name).toContain('common practice, no source');
    expect(boat.limits).toMatchObject({ note: expect.stringContaining('common practice, no source') });
  });

  test('warns where work can hurt', () => {
    const note = (id: string) => itemsOf(aTemplateBoat()).find((item) => item.id === id)?.note;
    expect(note('coolant')).toContain('it scalds');
    expect(note('gear-oil')).toContain('shaft still');
    expect(note('pencil')).toContain('Seacock shut');
    expect(note('stern-gland')).toContain('Keep hands and clothes clear');
    expect(note('oil-and-filter')).toContain("The maker's manual decides");
  });

  test('keeps in reserve a fifth of the fuel or 12 hours of it, the larger, and 9 litres of water a head', () => {
    const reserves = (fuelTankL: number) =>
      aTemplateBoat({ fuelTankL })
        .fluids.slice(3)
        .map(({ reserve }) => reserve);
    expect(reserves(200)).toEqual([40, 18]);
    expect(reserves(100)).toEqual([30, 18]);
  });

  test('counts fluids and what must work as vital', () => {
    const boat = aTemplateBoat();
    const vital = itemsOf(boat).filter((item) => consequenceOf(boat, item) === 'vital');
    expect(vital.map(({ id }) => id)).toEqual([
      'engine-oil',
      'gear-oil',
      'coolant',
      'fuel',
      'water',
      'start-battery',
      'house-bank',
      'charging',
      'bilge-pump',
      'steering',
      'raw-water',
      'seacocks',
    ]);
  });

  test('looks at the outlook before leaving only where tropical storms come', () => {
    const looks = (tropics: boolean) => aTemplateBoat({ tropics }).checks.map(({ id }) => id);
    expect(looks(true)).toContain('tropical-outlook');
    expect(looks(false)).not.toContain('tropical-outlook');
  });

  test("takes the skipper's own limits in the place of the defaults", () => {
    expect(aTemplateBoat({ limits: { wind: 18 } }).limits).toMatchObject({
      wind: 18,
      gust: 30,
      alone: { wind: 17 },
    });
  });
});
