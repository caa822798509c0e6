import { type FormKind, NONE, WHEN } from './form.ts';
import { aboardWords, stockOf } from './stock.ts';

/** What was poured in, and from which of the stores. */
export const topUp: FormKind = {
  title: 'TOP UP',
  offered: ({ kind }) => kind === 'fluid',
  rows(sight, { id }) {
    const stock = stockOf(sight, id);
    return [
      { field: 'amount', label: 'poured in', example: '300 ml, 0.4 qt, 1/4', usual: null },
      {
        field: 'from',
        label: 'from the stores',
        example: 'the beginning of a name, or none',
        usual: stock ? stock.name : NONE.name,
        choices: [NONE, ...sight.boat.loaded.boat.spares],
      },
      { field: 'level', label: 'level after', example: 'full, 1/2, 1.2', usual: 'not looked at' },
      WHEN,
    ];
  },
  entries(typed, { id }, sight) {
    const { from = stockOf(sight, id)?.id ?? NONE.id, ...given } = typed;
    return [{ kind: 'topup', fluid: id, ...given, ...(from === NONE.id ? {} : { from }) }];
  },
  notes(sight, { id }) {
    const stock = stockOf(sight, id);
    return stock ? [`Taken from ${stock.name}: ${aboardWords(sight, stock)}.`] : [];
  },
};
