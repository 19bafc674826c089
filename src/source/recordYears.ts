/** Years a daily record can hold; anything else is a damaged date. */
export const FIRST_YEAR = 1600;
export const LAST_YEAR = 2199;
