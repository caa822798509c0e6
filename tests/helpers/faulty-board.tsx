import { hostOf } from '../../source/screens/host.ts';
import { openBoard } from '../../source/screens/open.tsx';
import { bad, good } from '../../source/trouble.ts';
import { FILE_UNITS } from '../../source/words/preferred.ts';
import { AT, aDocument, aLoaded } from './a-document.ts';

/** The real board with a throw planted in it, for the terminal tests: where it throws is the first argument. */
const where = process.argv[2];
let reckoned = 0;

try {
  await openBoard({
    outside: {
      now: () => Date.parse(AT),
      zone: 'UTC',
      settings: async () => ({
        lastBoat: null,
        name: null,
        palette: 'day',
        backup: null,
        checkedCopies: [],
        zone: null,
        ...FILE_UNITS,
        set: () => Promise.resolve(planted('key')()),
      }),
      terminal: { interactive: true, columns: 80, colour: true, utf8: true, screenReader: false },
    },
    boat: '/boat',
    host: hostOf(process),
    stands: true,
    none: null,
    machineZone: 'UTC',
    edit: async () => {},
    work: {
      load: async () => good(aLoaded()),
      judge: async () => {
        reckoned += 1;
        if (reckoned === 1) return aDocument();
        if (where === 'timer') setTimeout(planted('timer'), 1);
        if (where === 'rejection')
          setTimeout(() => void Promise.reject(new Error('planted in a rejection')), 1);
        planted('reckoning')();
        return where === 'render' ? aDocument({ items: null as never }) : aDocument();
      },
      begin: async () => bad(),
      changeBoat: async () => bad(),
      sample: async () => bad(),
      save: async () => {
        planted('save')();
        return good([]);
      },
      takeIn: async () => good(''),
      trace: async () => null,
      watch: () => () => {},
    },
  });
} catch (fault) {
  process.stderr.write(`told: ${String(fault)}\n`);
  process.exitCode = 70;
}

function planted(place: string): () => void {
  return () => {
    if (where === place) throw new Error(`planted in a ${place}`);
  };
}
