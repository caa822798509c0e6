import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { realDisk } from '../../source/files/disk.ts';
import { keepForecast, readForecasts } from '../../source/files/forecasts.ts';
import { aFolder } from '../helpers/a-boat-folder.ts';
import { aForecast, aStep } from '../helpers/a-forecast.ts';

const steps = [aStep('2026-02-03T06:00:00.000Z', '2026-02-03T12:00:00.000Z')];
const issued = (hour: number) => `2026-02-03T${String(hour).padStart(2, '0')}:00:00.000Z`;
const place = { place: 'Aster', headlines: [], steps };

describe('the forecasts in a boat folder', () => {
  it('are read as they were kept, ensembles too, the newest issued last', () => {
    const folder = aFolder();
    const members = [0, 1].map((member) => ({ member, wind: [20 + member], seas: [null] }));
    const kept = [
      aForecast([{ ...place, members }], { issuedAt: issued(6) }),
      aForecast([place], { issuedAt: issued(0) }),
    ];
    for (const one of kept) keepForecast(realDisk, folder, one);
    expect(readForecasts(realDisk, folder)).toEqual({ forecasts: kept.toReversed(), troubles: [] });
  });

  it('are read from the newest back as far as a morning can wait for, and always that one', () => {
    const folder = aFolder();
    const notRead = Array.from({ length: 1000 }, () => ({ where: '', text: 'x'.repeat(2000) }));
    for (let hour = 0; hour < 9; hour += 1)
      keepForecast(realDisk, folder, aForecast([place], { issuedAt: issued(hour), notRead }));
    const hours = readForecasts(realDisk, folder).forecasts.map(({ issuedAt }) => issuedAt);
    expect(hours).toEqual([1, 2, 3, 4, 5, 6, 7, 8].map(issued));
  });

  it('that do not fit what they say are damaged: a member with fewer figures than there are steps', () => {
    const folder = aFolder();
    const short = { ...place, members: [{ member: 0, wind: [] }] };
    const kept = keepForecast(realDisk, folder, aForecast([short]));
    writeFileSync(join(folder, 'forecasts', 'notes.txt'), 'not one of them');
    expect(kept.ok).toBe(true);
    const { forecasts, troubles } = readForecasts(realDisk, folder);
    expect([forecasts.length, troubles.map(({ kind }) => kind)]).toEqual([0, ['forecast damaged']]);
  });
});
