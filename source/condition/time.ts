export const MS_AN_HOUR = 3_600_000;
export const MS_A_DAY = 24 * MS_AN_HOUR;
