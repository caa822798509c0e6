import type { FormKind } from './form.ts';
import { topUp } from './top-up.ts';

export type FormName = 'top up';

/** Every form there is, by name. A new one is a file, a line here, and its key in `bindings.ts`. */
export const forms: { readonly [name in FormName]: FormKind } = { 'top up': topUp };
