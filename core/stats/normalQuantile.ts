/**
 * The 0.975 quantile of the standard normal distribution: the z of every 95 % interval of this room.
 * Source: tables of the normal distribution; correctly rounded to the nearest double.
 */
export const NORMAL_QUANTILE_975 = 1.959963984540054;
