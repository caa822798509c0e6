import { anodeLook, renew } from './anodes.ts';
import { change, dip, leak, topUp } from './fluids.ts';
import type { FormKind } from './form.ts';
import { helped, inflow } from './hunt.ts';
import { arrived, left, plan, stay, weatherNow } from './passage.ts';
import { count, stow, use } from './stores.ts';
import { restore, strike } from './strikes.ts';
import { check, dated, hours, job, remark, service } from './work.ts';

/** Every form there is, by name. A new one is a `FormKind`, a line here, and its key in `form-keys.ts`. */
export const forms = {
  dip,
  'top up': topUp,
  change,
  leak,
  'anode look': anodeLook,
  renew,
  use,
  stow,
  count,
  job,
  service,
  check,
  dated,
  remark,
  'weather now': weatherNow,
  left,
  stay,
  arrived,
  plan,
  hours,
  helped,
  inflow,
  strike,
  restore,
} as const satisfies { readonly [name: string]: FormKind };

export type FormName = keyof typeof forms;
