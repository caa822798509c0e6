import { describe, expect, test } from 'vitest';
import { consequenceOf, itemsOf } from '../../source/boat/boat.ts';
import { readBoat } from '../../source/boat/read.ts';
import { templateBoat } from '../../source/boat/template.ts';
import { type Template, templates } from '../../source/boat/template-answers.ts';
import { answers, aTemplateBoat } from '../helpers/template-boat.ts';

const all = Object.keys(templates) as Template[];

describe('a new boat from a few answers', () => {
  test.each([
    ['as answered', answers],
    ['in the tropics, with lithium', { ...answers, tropics: true, houseBank: 'lithium' as const }],
    ['alone, with small tanks', { ...answers, crew: 1, fuelTankL: 40, waterTankL: 60 }],
    ['with next to no tanks', { ...answers, fuelTankL: 1, waterTankL: 1 }],
  ])('is a boat file without a trouble, whatever she goes by: %s', (_, given) => {
    for (const template of all)
      expect(readBoat(JSON.stringify(templateBoat({ ...given, template })), 'boat.json')).toMatchObject({
        ok: true,
      });
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

  test.each(all)('says beside every figure where it comes from: %s', (template) => {
    const boat = aTemplateBoat({ template });
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
    expect(reserves(20)).toEqual([15, 18]);
  });

  test('with two diesels has one of each for either engine, and fuel for both', () => {
    const boat = aTemplateBoat({ template: 'twin' });
    expect(boat.fluids.map(({ id, engine }) => [id, engine])).toEqual([
      ['engine-oil-port', 'port'],
      ['gear-oil-port', 'port'],
      ['coolant-port', 'port'],
      ['engine-oil-starboard', 'starboard'],
      ['gear-oil-starboard', 'starboard'],
      ['coolant-starboard', 'starboard'],
      ['fuel', ['port', 'starboard']],
      ['water', undefined],
    ]);
    expect(boat.fluids.at(-2)?.reserve).toBe(60);
    expect(boat.anodes.map(({ unsettles }) => unsettles)).toContainEqual(['raw-water-starboard']);
    expect(boat.spares.find(({ id }) => id === 'impellers')).toMatchObject({
      expected: { perEngineHour: 0.004, engine: 'port' },
      wanted: 4,
    });
    expect(Object.keys(boat.passages[0]!.motoring)).toEqual(['port', 'starboard']);
  });

  test('with an outboard has petrol and its cautions, and no shaft', () => {
    const boat = aTemplateBoat({ template: 'outboard' });
    expect(boat.fluids.map(({ id }) => id)).toEqual(['engine-oil', 'fuel', 'water']);
    expect(boat.fluids[1]?.note).toContain('vapour explodes');
    expect(boat.checks.find(({ id }) => id === 'kill-cord')).toMatchObject({ when: 'leaving' });
    expect(itemsOf(boat).filter(({ id }) => /shaft|gland|pencil/.test(id))).toEqual([]);
  });

  test('under sail only has nothing of an engine, and her rig is vital', () => {
    const boat = aTemplateBoat({ template: 'sail' });
    expect(boat.engines).toEqual([]);
    expect(boat.fluids.map(({ id }) => id)).toEqual(['water']);
    expect(boat.passages[0]!.motoring).toEqual({});
    expect(itemsOf(boat).filter(({ id }) => /engine|raw-water|oil|fuel|belt|filter/.test(id))).toEqual([]);
    expect(boat.checks.find(({ id }) => id === 'rig')).toMatchObject({ consequence: 'vital' });
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

  test('never has one alone go out in more than a crew', () => {
    expect(aTemplateBoat({ limits: { wind: 12, seas: 1 } }).limits).toMatchObject({
      alone: { wind: 12, seas: 1, gust: 24 },
    });
  });
});
