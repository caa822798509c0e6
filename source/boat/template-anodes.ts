import type { BoatFile } from './boat.ts';
import { COMMON_PRACTICE, type TemplateAnswers } from './template-answers.ts';
import { belonging, type Drive, drivesOf } from './template-drives.ts';

type Anodes = NonNullable<BoatFile['anodes']>;

const ZINC = { metal: 'zinc', water: 'salt' } as const;
const NOTE = `Limit: a third of the metal; makers' books say a half as often. ${COMMON_PRACTICE}`;

export function templateAnodes(answers: TemplateAnswers): Anodes {
  const { template = 'single', tropics = false } = answers;
  const drives = drivesOf(answers);
  if (template === 'sail') return [];
  if (template === 'outboard')
    return drives.map((drive) => ({
      ...belonging(drive, 'leg-anode', 'Anode of the outboard leg'),
      ...ZINC,
      usualLifeDays: 300,
      everyDays: 90,
      minutes: 20,
      note: `Engine stopped, kill cord out. ${NOTE}`,
    }));
  return [
    ...drives.map((drive) => pencil(drive, tropics)),
    ...drives.map((drive) => ({
      ...belonging(drive, 'shaft-anode', 'Shaft anode'),
      ...ZINC,
      usualLifeDays: 300,
      everyDays: 90,
      minutes: 30,
      note: NOTE,
    })),
    {
      id: 'hull-anode',
      name: 'Hull anode',
      ...ZINC,
      usualLifeDays: 365,
      everyDays: 90,
      minutes: 30,
      note: NOTE,
    },
  ];
}

function pencil(drive: Drive, tropics: boolean): Anodes[number] {
  return {
    ...belonging(drive, 'pencil', 'Heat-exchanger pencil anode'),
    ...ZINC,
    usualLifeDays: tropics ? 90 : 120,
    spare: 'pencils',
    unsettles: [`raw-water${drive.mark}`],
    everyDays: 30,
    minutes: 20,
    note: `Seacock shut before it comes out, open again before the engine starts. ${NOTE}`,
  };
}
