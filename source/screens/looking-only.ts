/** On a page whose folder is for looking only. */
export const LOOKING_ONLY = 'Looking only, nothing can be saved here.';
/** The answer to a key that would have something saved there. */
export const CANNOT_SAVE = 'nothing can be saved: ! says why';
