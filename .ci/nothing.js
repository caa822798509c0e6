export default () => {};
/** The validator of `conf`, which makes none without a schema. */
export const Ajv2020 = null;
