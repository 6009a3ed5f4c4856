declare const brand: unique symbol;

/** A value that must not be mixed with another of the same shape. */
export type Brand<Base, Name extends string> = Base & { readonly [brand]: Name };

export type EntryId = Brand<number, 'EntryId'>;
export type ColonyId = Brand<number, 'ColonyId'>;
export type QueenId = Brand<number, 'QueenId'>;
export type YardId = Brand<number, 'YardId'>;
export type GestureId = Brand<number, 'GestureId'>;

/** Mass in grams. */
export type Grams = Brand<number, 'Grams'>;
/** Volume in millilitres. */
export type Millilitres = Brand<number, 'Millilitres'>;
/** Money in minor units (cents), whole. */
export type Minor = Brand<number, 'Minor'>;
